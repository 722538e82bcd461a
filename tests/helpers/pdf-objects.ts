// The objects of a PDF as qpdf sees them, with references followed, and the operators of its pages. Knows nothing of the program that wrote it.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export type Dictionary = Record<string, unknown>;
export type PdfStream = { readonly dict: Dictionary; readonly data: Buffer };

function isDictionary(value: unknown): value is Dictionary {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** An open file. What it holds may be changed in place, to see whether a check notices. */
export class PdfObjects {
  readonly version: string;
  readonly objects: Record<string, { value?: unknown; stream?: { dict: Dictionary; data: string } }>;

  constructor(bytes: Uint8Array) {
    const folder = mkdtempSync(join(tmpdir(), 'lotwright-objects-'));
    try {
      const path = join(folder, 'sheet.pdf');
      writeFileSync(path, bytes);
      const words = ['--json=2', '--json-stream-data=inline', '--decode-level=generalized', path];
      const text = execFileSync('qpdf', words, { encoding: 'utf8', maxBuffer: 256_000_000 });
      const { qpdf } = JSON.parse(text) as { qpdf: [{ pdfversion: string }, PdfObjects['objects']] };
      this.version = qpdf[0].pdfversion;
      this.objects = qpdf[1];
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }

  /** What the value stands for: itself, or the object it refers to. */
  resolve(value: unknown): unknown {
    if (typeof value !== 'string' || !/^\d+ \d+ R$/.test(value)) return value;
    const found = this.objects[`obj:${value}`];
    return found?.stream ? found.stream.dict : found?.value;
  }

  dictionary(value: unknown): Dictionary {
    const found = this.resolve(value);
    return isDictionary(found) ? found : {};
  }

  array(value: unknown): unknown[] {
    const found = this.resolve(value);
    return Array.isArray(found) ? found : found === undefined || found === null ? [] : [found];
  }

  stream(value: unknown): PdfStream | null {
    const found = typeof value === 'string' ? this.objects[`obj:${value}`]?.stream : undefined;
    return found ? { dict: found.dict, data: Buffer.from(found.data, 'base64') } : null;
  }

  get trailer(): Dictionary {
    return this.dictionary(this.objects.trailer?.value);
  }

  get catalog(): Dictionary {
    return this.dictionary(this.trailer['/Root']);
  }

  /** References of the pages, in order. */
  get pages(): readonly string[] {
    const walk = (reference: unknown): string[] =>
      this.dictionary(reference)['/Type'] === '/Pages'
        ? this.array(this.dictionary(reference)['/Kids']).flatMap(walk)
        : [String(reference)];
    return walk(this.catalog['/Pages']);
  }

  /** The operators painted on a page, in order. */
  content(page: string): readonly Operator[] {
    const parts = this.array(this.dictionary(page)['/Contents']).length;
    const own = this.dictionary(page)['/Contents'];
    const references = parts > 1 || Array.isArray(own) ? this.array(own) : [own];
    return operatorsOf(references.map((one) => this.stream(one)?.data.toString('latin1') ?? '').join('\n'));
  }

  /** The description of the file in XML. */
  get metadata(): string {
    return this.stream(this.catalog['/Metadata'])?.data.toString('utf8') ?? '';
  }

  /** Every dictionary in the file, those of streams as well. */
  get allDictionaries(): readonly Dictionary[] {
    const found: Dictionary[] = [];
    const walk = (value: unknown) => {
      if (isDictionary(value)) found.push(value);
      if (typeof value === 'object' && value !== null) for (const inner of Object.values(value)) walk(inner);
    };
    for (const { value, stream } of Object.values(this.objects)) walk(stream ? stream.dict : value);
    return found;
  }
}

/** A text of the file without the mark that qpdf puts before it. */
export function textOf(value: unknown): string {
  return typeof value === 'string' ? value.replace(/^u:/, '') : '';
}

export type Operator = { readonly name: string; readonly operands: readonly string[] };

/** Splits a page's content into operators with what stands before each. Strings, arrays and dictionaries are kept as they are written. */
export function operatorsOf(content: string): readonly Operator[] {
  const token =
    /\s+|%[^\n\r]*|\((?:[^()\\]|\\[\s\S]|\((?:[^()\\]|\\[\s\S])*\))*\)|<<(?:[^<>]|<[^<>]*>)*>>|<[0-9A-Fa-f\s]*>|\[(?:[^[\]()]|\((?:[^()\\]|\\[\s\S])*\))*\]|\/[^\s/<>[\]()%]*|[^\s/<>[\]()%]+/y;
  const operators: Operator[] = [];
  let operands: string[] = [];
  let at = 0;
  while (at < content.length) {
    token.lastIndex = at;
    const [found] = token.exec(content) ?? [];
    if (found === undefined) throw new Error(`Content of a page cannot be read at ${content.slice(at, at + 40)}`);
    at += found.length;
    if (/^\s|^%/.test(found)) continue;
    if (/^[a-zA-Z'"][a-zA-Z0-9*]*$/.test(found) && !/^(true|false|null)$/.test(found)) {
      operators.push({ name: found, operands });
      operands = [];
    } else operands.push(found);
  }
  return operators;
}

export type StructureNode = {
  readonly tag: string;
  readonly dict: Dictionary;
  readonly children: readonly StructureNode[];
  /** Marked content that belongs to this element itself, by page and number. */
  readonly marks: readonly { readonly page: string; readonly mcid: number }[];
  /** All marked content in it and below, in reading order. */
  readonly reads: readonly { readonly page: string; readonly mcid: number }[];
};

/** The structure tree in reading order, from its root down. */
export function structureOf(file: PdfObjects): StructureNode {
  const build = (reference: unknown, above: string): StructureNode => {
    const dict = file.dictionary(reference);
    const page = typeof dict['/Pg'] === 'string' ? dict['/Pg'] : above;
    const children: StructureNode[] = [];
    const marks: { page: string; mcid: number }[] = [];
    const reads: { page: string; mcid: number }[] = [];
    for (const kid of file.array(dict['/K'])) {
      const inner = file.dictionary(kid);
      const number = typeof kid === 'number' ? kid : inner['/Type'] === '/MCR' ? inner['/MCID'] : null;
      if (typeof number === 'number') {
        const mark = { page: typeof inner['/Pg'] === 'string' ? inner['/Pg'] : page, mcid: number };
        marks.push(mark);
        reads.push(mark);
      } else {
        const child = build(kid, page);
        children.push(child);
        reads.push(...child.reads);
      }
    }
    const tag = typeof dict['/S'] === 'string' ? dict['/S'].slice(1) : '';
    return { tag, dict, children, marks, reads };
  };
  return build(file.catalog['/StructTreeRoot'], '');
}

export function everyNode(node: StructureNode): readonly StructureNode[] {
  return [node, ...node.children.flatMap(everyNode)];
}
