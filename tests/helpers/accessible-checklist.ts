// PDF/UA-1 (ISO 14289-1:2014) as a list of checks of a file's own objects, after a public validation profile; each with a way to break it,
// so that it is known to notice. Nothing here asks how the file was made.
// Not checked, because only a person can judge it: whether alternate texts say what barcodes, strips and photographs mean, the order makes sense to a
// listener, headings say what stands under them, nothing is told by colour or place alone, contrast is enough.
import type { Sheet } from '../../app/domain/sheets/sheet.ts';
import { fontsOnPage, markedTexts, paintedOn, unicodeMap } from './page-content.ts';
import { type Dictionary, everyNode, type PdfObjects, type StructureNode, structureOf, textOf } from './pdf-objects.ts';
import { bare, wordsInOrder } from './words-in-order.ts';

export type Check = {
  readonly item: string;
  /** What is wrong, each in a few words; none when all is well. */
  readonly problems: (file: PdfObjects, sheet: Sheet) => readonly string[];
  readonly spoil: (file: PdfObjects) => void;
};

const standardTags = new Set(
  'Document Part Sect Div P H1 H2 H3 H4 H5 H6 L LI Lbl LBody Table TR TH TD THead TBody Span Figure Caption Link Note'.split(
    ' ',
  ),
);

const nodesOf = (file: PdfObjects) => everyNode(structureOf(file)).slice(1);
const tagged = (file: PdfObjects, tag: string) => nodesOf(file).filter((node) => node.tag === tag);
const attributes = (file: PdfObjects, node: StructureNode): Dictionary =>
  Object.assign({}, ...file.array(node.dict['/A']).map((one) => file.dictionary(one)));
const when = (isWrong: boolean, problem: string) => (isWrong ? [problem] : []);
const firstOf = (file: PdfObjects, tag: string): StructureNode => {
  const [found] = tagged(file, tag);
  if (found === undefined) throw new Error(`Nothing to break: the file has no ${tag}.`);
  return found;
};

function replaceContent(file: PdfObjects, change: (content: string) => string): void {
  const reference = file.dictionary(file.pages[0])['/Contents'];
  const stream = file.objects[`obj:${String(reference)}`]?.stream;
  if (stream === undefined) throw new Error('The first page has no content.');
  const old = Buffer.from(stream.data, 'base64').toString('latin1');
  stream.data = Buffer.from(change(old), 'latin1').toString('base64');
}

export function replaceMetadata(file: PdfObjects, from: RegExp, to: string): void {
  const stream = file.objects[`obj:${String(file.catalog['/Metadata'])}`]?.stream;
  if (stream === undefined) throw new Error('The file has no metadata.');
  stream.data = Buffer.from(Buffer.from(stream.data, 'base64').toString('utf8').replace(from, to)).toString('base64');
}

const ofFile: readonly Check[] = [
  {
    item: 'the file says that it is PDF 1.7 or older',
    problems: ({ version }) => when(!/^1\.[0-7]$/.test(version), `version ${version}`),
    spoil: (file) => Object.assign(file, { version: '2.0' }),
  },
  {
    item: 'the description says PDF/UA-1 under its own prefix',
    problems: ({ metadata }) =>
      when(
        !/xmlns:pdfuaid="http:\/\/www\.aiim\.org\/pdfua\/ns\/id\/"[\s\S]*<pdfuaid:part>1<\/pdfuaid:part>/.test(
          metadata,
        ),
        'not declared',
      ),
    spoil: (file) => replaceMetadata(file, /<pdfuaid:part>1/, '<pdfuaid:part>2'),
  },
  {
    item: 'the catalogue says that the file is marked, and does not say that it is suspect',
    problems: (file) => {
      const info = file.dictionary(file.catalog['/MarkInfo']);
      return [...when(info['/Marked'] !== true, 'not marked'), ...when(info['/Suspects'] === true, 'suspect')];
    },
    spoil: (file) => Object.assign(file.dictionary(file.catalog['/MarkInfo']), { '/Marked': false }),
  },
  {
    item: 'a language is given for the whole file',
    problems: (file, { language }) => when(textOf(file.catalog['/Lang']) !== language, textOf(file.catalog['/Lang'])),
    spoil: (file) => Reflect.deleteProperty(file.catalog, '/Lang'),
  },
  {
    item: 'the title stands in the description and is shown instead of the file name',
    problems: (file) => [
      ...when(!/<dc:title>[\s\S]*?<rdf:li[^>]*>\s*[^\s<]/.test(file.metadata), 'no title'),
      ...when(file.dictionary(file.catalog['/ViewerPreferences'])['/DisplayDocTitle'] !== true, 'not shown'),
    ],
    spoil: (file) => Object.assign(file.dictionary(file.catalog['/ViewerPreferences']), { '/DisplayDocTitle': false }),
  },
  {
    item: 'on every page the order of tabulation follows the structure',
    problems: (file) =>
      file.pages.flatMap((page, index) => when(file.dictionary(page)['/Tabs'] !== '/S', `page ${index + 1}`)),
    spoil: (file) => Object.assign(file.dictionary(file.pages[0]), { '/Tabs': '/R' }),
  },
  {
    item: 'nothing is locked away from reading programs',
    problems: ({ trailer }) => when('/Encrypt' in trailer, 'encrypted'),
    spoil: ({ trailer }) => Object.assign(trailer, { '/Encrypt': '1 0 R' }),
  },
  {
    item: 'there are no links, fields or scripts that would have to be tagged as well',
    problems: (file) => [
      ...file.pages.flatMap((page) => when(file.array(file.dictionary(page)['/Annots']).length > 0, 'annotations')),
      ...when(
        '/AcroForm' in file.catalog || '/OpenAction' in file.catalog || '/AA' in file.catalog,
        'fields or actions',
      ),
    ],
    spoil: (file) => Object.assign(file.catalog, { '/OpenAction': {} }),
  },
];

function parentsOf(file: PdfObjects): ReadonlyMap<number, readonly unknown[]> {
  const tree = file.dictionary(file.dictionary(file.catalog['/StructTreeRoot'])['/ParentTree']);
  const numbers = file.array(tree['/Nums']);
  const found = new Map<number, readonly unknown[]>();
  for (let index = 0; index < numbers.length; index += 2)
    found.set(Number(numbers[index]), file.array(numbers[index + 1]));
  return found;
}

const ofStructure: readonly Check[] = [
  {
    item: 'the structure begins with the document and uses standard tags only',
    problems: (file) => [
      ...when(
        structureOf(file)
          .children.map(({ tag }) => tag)
          .join() !== 'Document',
        'no document at the root',
      ),
      ...nodesOf(file).flatMap(({ tag }) => when(!standardTags.has(tag), tag)),
    ],
    spoil: (file) => Object.assign(firstOf(file, 'P').dict, { '/S': '/Paragraph' }),
  },
  {
    item: 'everything on a page is either content of the structure or marked as decoration',
    problems: (file) =>
      file.pages.flatMap((page, index) => {
        const { painted, unclosed } = paintedOn(file.content(page));
        return [
          ...when(unclosed > 0, `page ${index + 1}: marks not closed`),
          ...painted
            .filter(({ mcid, isArtifact, isNestedWrongly }) => (mcid === null && !isArtifact) || isNestedWrongly)
            .map(({ operator }) => `page ${index + 1}: ${operator}`),
        ];
      }),
    spoil: (file) => replaceContent(file, (content) => `${content}\n0 0 10 10 re f\n`),
  },
  {
    item: 'every marked content stands once in the structure, and knows its element',
    problems: (file) => {
      const inTree = structureOf(file).reads.map(({ page, mcid }) => `${page} ${mcid}`);
      const parents = parentsOf(file);
      const onPages = file.pages.flatMap((page) => {
        const { painted } = paintedOn(file.content(page));
        const owners = parents.get(Number(file.dictionary(page)['/StructParents'])) ?? [];
        return [...new Set(painted.flatMap(({ mcid }) => mcid ?? []))].map((mcid) => ({
          key: `${page} ${mcid}`,
          hasOwner: '/S' in file.dictionary(owners[mcid]),
        }));
      });
      const known = new Set(inTree);
      return [
        ...when(known.size !== inTree.length, 'something stands twice'),
        ...onPages.flatMap(({ key, hasOwner }) => when(!known.has(key) || !hasOwner, key)),
      ];
    },
    spoil: (file) => Object.assign(firstOf(file, 'P').dict, { '/K': [] }),
  },
  {
    item: 'headings begin with the first level, and none is skipped',
    problems: (file) => {
      const levels = nodesOf(file).flatMap(({ tag }) => (/^H[1-6]$/.test(tag) ? [Number(tag[1])] : []));
      return [
        ...when(levels.filter((level) => level === 1).length !== 1, 'not one first heading'),
        ...levels.flatMap((level, index) =>
          when(level > (levels[index - 1] ?? 0) + 1, `${level} is heading ${index + 1}`),
        ),
      ];
    },
    spoil: (file) => Object.assign(firstOf(file, 'H1').dict, { '/S': '/H2' }),
  },
  {
    item: 'tables have a row of heads with their scope, and as many cells in every row',
    problems: (file) =>
      tagged(file, 'Table').flatMap((table) => {
        const [first, ...rest] = table.children;
        const heads = first?.children ?? [];
        return [
          ...when(
            table.children.some(({ tag }) => tag !== 'TR'),
            'something else than rows',
          ),
          ...when(heads.length === 0 || heads.some(({ tag }) => tag !== 'TH'), 'no heads'),
          ...heads.flatMap((head) => when(attributes(file, head)['/Scope'] !== '/Column', 'a head without scope')),
          ...rest.flatMap(({ children }, index) =>
            when(
              children.length !== heads.length || children.some(({ tag }) => tag !== 'TD' && tag !== 'TH'),
              `row ${index + 1}`,
            ),
          ),
        ];
      }),
    spoil: (file) => Object.assign(firstOf(file, 'TH').dict, { '/A': null }),
  },
  {
    item: 'lists consist of items, and items of a label and a body',
    problems: (file) => [
      ...tagged(file, 'L').flatMap(({ children }) =>
        when(children.length === 0 || children.some(({ tag }) => tag !== 'LI'), 'a list'),
      ),
      ...tagged(file, 'LI').flatMap(({ children }) =>
        when(!['LBody', 'Lbl LBody'].includes(children.map(({ tag }) => tag).join(' ')), 'an item'),
      ),
    ],
    spoil: (file) => Object.assign(firstOf(file, 'LBody').dict, { '/S': '/P' }),
  },
  {
    item: 'barcodes, strips and photographs are figures with a text instead and a place',
    problems: (file, { blocks }) => {
      const figures = tagged(file, 'Figure');
      const wanted = blocks.flatMap((block) => {
        if (block.kind === 'barcode') return [block.alternateText];
        if (block.kind === 'hold-strip') return [block.strip.alternateText];
        if (block.kind === 'pictures') return block.items.map(({ alternateText }) => alternateText);
        return block.kind === 'table' ? (block.strips?.items ?? []).map(({ alternateText }) => alternateText) : [];
      });
      const alternates = figures.map(({ dict }) => textOf(dict['/Alt']));
      return [
        ...when(
          alternates.join('\n') !== wanted.join('\n') || wanted.some((text) => text.trim() === ''),
          alternates.join(),
        ),
        ...figures.flatMap((node) =>
          when(file.array(attributes(file, node)['/BBox']).length !== 4, 'a figure without place'),
        ),
      ];
    },
    spoil: (file) => Reflect.deleteProperty(firstOf(file, 'Figure').dict, '/Alt'),
  },
];

const ofText: readonly Check[] = [
  {
    item: 'typefaces are embedded and every sign that is shown maps to characters',
    problems: (file) =>
      file.pages.flatMap((page, index) => {
        const fonts = fontsOnPage(file, page);
        const maps = new Map(
          [...fonts].map(([name, font]) => [
            name,
            unicodeMap(file.stream(font['/ToUnicode'])?.data.toString('latin1') ?? ''),
          ]),
        );
        const unembedded = [...fonts.values()].filter((font) => {
          const inner = file.dictionary(file.array(font['/DescendantFonts'])[0]);
          return file.stream(file.dictionary(inner['/FontDescriptor'])['/FontFile2']) === null;
        });
        const unmapped = paintedOn(file.content(page)).painted.flatMap(({ font, codes }) =>
          codes.filter((code) => font === null || !maps.get(font)?.get(code)),
        );
        return [
          ...when(fonts.size === 0, `page ${index + 1}: no typeface`),
          ...unembedded.map(() => `page ${index + 1}: not embedded`),
          ...unmapped.map((code) => `page ${index + 1}: sign ${code}`),
        ];
      }),
    spoil: (file) => {
      const [font] = fontsOnPage(file, file.pages[0] ?? '').values();
      Reflect.deleteProperty(font ?? {}, '/ToUnicode');
    },
  },
  {
    item: 'what is read comes in the order of the blocks, with nothing left out',
    problems: (file, sheet) => {
      const texts = new Map(file.pages.map((page) => [page, markedTexts(file, page)]));
      const heard = bare(
        structureOf(file)
          .reads.map(({ page, mcid }) => texts.get(page)?.get(mcid) ?? '')
          .join(' '),
      );
      let at = 0;
      return wordsInOrder(sheet).filter((words) => {
        const found = heard.indexOf(words, at);
        if (found >= 0) at = found + words.length;
        return found < 0;
      });
    },
    spoil: (file) => {
      const [document] = structureOf(file).children;
      Object.assign(document?.dict ?? {}, { '/K': file.array(document?.dict['/K']).toReversed() });
    },
  },
];

export const accessibleChecklist: readonly Check[] = [...ofFile, ...ofStructure, ...ofText];
