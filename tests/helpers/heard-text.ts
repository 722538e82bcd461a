// What a printed sheet says, line by line as a screen reader goes through it, and what stands at the edges of each page. Read from the file's
// own objects, so that the same file gives the same lines whatever tools are installed.
import { fontsOnPage, markedTexts, paintedOn, unicodeMap } from './page-content.ts';
import { PdfObjects, type StructureNode, structureOf, textOf } from './pdf-objects.ts';

/** Head, foot and repeated heads of tables: what a screen reader passes over. */
function edgeText(file: PdfObjects, page: string): string {
  const maps = new Map(
    [...fontsOnPage(file, page)].map(([name, font]) => [
      name,
      unicodeMap(file.stream(font['/ToUnicode'])?.data.toString('latin1') ?? ''),
    ]),
  );
  return paintedOn(file.content(page))
    .painted.filter(({ isArtifact, codes }) => isArtifact && codes.length > 0)
    .map(({ font, codes }) => codes.map((code) => maps.get(font ?? '')?.get(code) ?? '').join(''))
    .join(' | ');
}

export function heardText(bytes: Uint8Array): string {
  const file = new PdfObjects(bytes);
  const texts = new Map(file.pages.map((page) => [page, markedTexts(file, page)]));
  const lines: string[] = [];
  const walk = (node: StructureNode, depth: number) => {
    const own = node.marks.map(({ page, mcid }) => texts.get(page)?.get(mcid) ?? '').join(' ');
    const instead = '/Alt' in node.dict ? `[${textOf(node.dict['/Alt'])}]` : '';
    lines.push([`${'  '.repeat(depth)}${node.tag}`, own.trim(), instead].filter((part) => part !== '').join(' '));
    for (const child of node.children) walk(child, depth + 1);
  };
  for (const child of structureOf(file).children) walk(child, 0);
  for (const [index, page] of file.pages.entries())
    lines.push('', `Edges of page ${index + 1}: ${edgeText(file, page)}`);
  return `${lines.join('\n')}\n`;
}
