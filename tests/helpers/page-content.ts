// What a page says, piece by piece: painted things with the marks around them, text decoded through the typefaces' own maps.
import type { Operator, PdfObjects } from './pdf-objects.ts';

/** The characters of each code of a typeface, from its map (ISO 32000-1, 9.10.3). */
export function unicodeMap(map: string): ReadonlyMap<number, string> {
  const found = new Map<number, string>();
  const textOf = (hex: string) => Buffer.from(hex.replace(/\s/g, ''), 'hex').swap16().toString('utf16le');
  for (const [, part = ''] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, code = '', text = ''] of part.matchAll(/<([0-9A-Fa-f\s]+)>\s*<([0-9A-Fa-f\s]*)>/g))
      found.set(Number.parseInt(code, 16), textOf(text));
  for (const [, part = ''] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from = '', , list = ''] of part.matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*\[([^\]]*)\]/g))
      for (const [index, [, text = '']] of [...list.matchAll(/<([0-9A-Fa-f\s]*)>/g)].entries())
        found.set(Number.parseInt(from, 16) + index, textOf(text));
  return found;
}

export type Painted = {
  readonly operator: string;
  /** The number of the marked content that it is in; null outside. */
  readonly mcid: number | null;
  readonly isArtifact: boolean;
  /** One inside the other is neither read nor passed over for certain. */
  readonly isNestedWrongly: boolean;
  readonly font: string | null;
  readonly codes: readonly number[];
};

const painting = new Set([
  'S',
  's',
  'f',
  'F',
  'f*',
  'B',
  'B*',
  'b',
  'b*',
  'sh',
  'Do',
  'Tj',
  'TJ',
  "'",
  '"',
  'BI',
  'EI',
]);

function codesOf(operands: readonly string[]): readonly number[] {
  return [...operands.join(' ').matchAll(/<([0-9A-Fa-f]+)>/g)].flatMap(([, hex = '']) =>
    (hex.match(/.{4}/g) ?? []).map((code) => Number.parseInt(code, 16)),
  );
}

type Mark = { readonly mcid: number | null; readonly isArtifact: boolean };

/** Everything that leaves ink, in the order it is painted; and how many marks were left open or closed too often. */
export function paintedOn(operators: readonly Operator[]): {
  readonly painted: readonly Painted[];
  readonly unclosed: number;
} {
  const painted: Painted[] = [];
  const marks: Mark[] = [];
  let excess = 0;
  let font: string | null = null;
  for (const { name, operands } of operators) {
    if (name === 'BDC' || name === 'BMC') {
      const mcid = /\/MCID\s+(\d+)/.exec(operands[1] ?? '')?.[1];
      marks.push({ mcid: mcid === undefined ? null : Number(mcid), isArtifact: operands[0] === '/Artifact' });
    } else if (name === 'EMC') {
      if (marks.pop() === undefined) excess += 1;
    } else if (name === 'Tf') font = operands[0] ?? null;
    else if (painting.has(name)) {
      const mcid = marks.findLast((mark) => mark.mcid !== null)?.mcid ?? null;
      const isArtifact = marks.some((mark) => mark.isArtifact);
      const isText = name === 'Tj' || name === 'TJ';
      painted.push({
        operator: name,
        mcid,
        isArtifact,
        isNestedWrongly: isArtifact && mcid !== null,
        font: isText ? font : null,
        codes: isText ? codesOf(operands) : [],
      });
    }
  }
  return { painted, unclosed: marks.length + excess };
}

/** Typefaces of a page by their names in its content. */
export function fontsOnPage(file: PdfObjects, page: string): ReadonlyMap<string, Record<string, unknown>> {
  const fonts = file.dictionary(file.dictionary(file.dictionary(page)['/Resources'])['/Font']);
  return new Map(Object.entries(fonts).map(([name, font]) => [name, file.dictionary(font)]));
}

/** The text of each marked content of a page. */
export function markedTexts(file: PdfObjects, page: string): ReadonlyMap<number, string> {
  const maps = new Map(
    [...fontsOnPage(file, page)].map(([name, font]) => [
      name,
      unicodeMap(file.stream(font['/ToUnicode'])?.data.toString('latin1') ?? ''),
    ]),
  );
  const texts = new Map<number, string>();
  for (const { mcid, font, codes } of paintedOn(file.content(page)).painted) {
    if (mcid === null || font === null) continue;
    const text = codes.map((code) => maps.get(font)?.get(code) ?? '').join('');
    texts.set(mcid, (texts.get(mcid) ?? '') + text);
  }
  return texts;
}
