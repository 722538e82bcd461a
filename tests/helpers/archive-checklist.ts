// PDF/A-2a (ISO 19005-2:2011) as a list of checks of a file's own objects, as far as a program without the standard's own test can decide;
// each with a way to break it. Level A asks for tags as well: those are the business of the accessible checklist.
import { type Check, replaceMetadata } from './accessible-checklist.ts';
import { fontsOnPage, paintedOn } from './page-content.ts';
import { type Dictionary, type PdfObjects, textOf } from './pdf-objects.ts';

const when = (isWrong: boolean, problem: string) => (isWrong ? [problem] : []);

/** Advance widths of a TrueType program in thousandths of an em, by glyph (tables head, hhea and hmtx). */
function widthsOfProgram(program: Buffer): readonly number[] {
  const table = (name: string) => {
    for (let index = 0; index < program.readUInt16BE(4); index += 1) {
      const entry = 12 + index * 16;
      if (program.toString('latin1', entry, entry + 4) === name)
        return program.subarray(program.readUInt32BE(entry + 8));
    }
    throw new Error(`The typeface has no table ${name}.`);
  };
  const unitsPerEm = table('head').readUInt16BE(18);
  const count = table('hhea').readUInt16BE(34);
  const metrics = table('hmtx');
  return Array.from({ length: count }, (_, glyph) => (metrics.readUInt16BE(glyph * 4) * 1000) / unitsPerEm);
}

/** Widths as the file gives them, by code; the array form of the two that there are. */
function widthsOfFile(file: PdfObjects, font: Dictionary): ReadonlyMap<number, number> {
  const given = file.array(font['/W']);
  const widths = new Map<number, number>();
  for (let index = 0; index < given.length; index += 2)
    for (const [offset, width] of file.array(given[index + 1]).entries())
      widths.set(Number(given[index]) + offset, Number(width));
  return widths;
}

function descendants(file: PdfObjects): readonly Dictionary[] {
  return file.allDictionaries.filter((one) => /^\/CIDFontType/.test(String(one['/Subtype'])));
}

function fontProblems(file: PdfObjects): readonly string[] {
  return file.pages.flatMap((page) => {
    const fonts = fontsOnPage(file, page);
    const { painted } = paintedOn(file.content(page));
    return [...fonts].flatMap(([name, font]) => {
      const inner = file.dictionary(file.array(font['/DescendantFonts'])[0]);
      const program = file.stream(file.dictionary(inner['/FontDescriptor'])['/FontFile2']);
      if (program === null) return [`${String(font['/BaseFont'])} not embedded`];
      const real = widthsOfProgram(program.data);
      const given = widthsOfFile(file, inner);
      const used = new Set(painted.filter((one) => one.font === name).flatMap(({ codes }) => codes));
      return [...used].flatMap((code) =>
        when(Math.abs((given.get(code) ?? 1000) - (real[code] ?? real.at(-1) ?? 0)) > 1, `width of sign ${code}`),
      );
    });
  });
}

export const archiveChecklist: readonly Check[] = [
  {
    item: 'the description says PDF/A-2, level A',
    problems: ({ metadata }) =>
      when(
        !/xmlns:pdfaid="http:\/\/www\.aiim\.org\/pdfa\/ns\/id\/"[\s\S]*<pdfaid:part>2<[\s\S]*<pdfaid:conformance>A</.test(
          metadata,
        ),
        'not declared',
      ),
    spoil: (file) => replaceMetadata(file, /<pdfaid:part>2/, '<pdfaid:part>9'),
  },
  {
    item: 'properties that PDF/A does not know, those of PDF/UA, are described',
    problems: ({ metadata }) =>
      when(
        !/<pdfaSchema:namespaceURI>http:\/\/www\.aiim\.org\/pdfua\/ns\/id\/<[\s\S]*<pdfaSchema:prefix>pdfuaid<[\s\S]*<pdfaProperty:name>part</.test(
          metadata,
        ),
        'no description',
      ),
    spoil: (file) => replaceMetadata(file, /pdfaProperty:name>part/, 'pdfaProperty:name>whole'),
  },
  {
    item: 'title, author, program and day are the same in the description and in the older entries',
    problems: (file) => {
      const info = file.dictionary(file.trailer['/Info']);
      const plain = (found: string | undefined) =>
        (found ?? '').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
      const inXml = (pattern: RegExp) => plain(pattern.exec(file.metadata)?.[1]);
      const day = textOf(file.resolve(info['/CreationDate'])).replace(/\D/g, '').slice(0, 14);
      return [
        ...when(inXml(/<dc:title>[\s\S]*?<rdf:li[^>]*>([^<]*)</) !== textOf(file.resolve(info['/Title'])), 'title'),
        ...when(inXml(/<dc:creator>[\s\S]*?<rdf:li>([^<]*)</) !== textOf(file.resolve(info['/Author'])), 'author'),
        ...when(inXml(/<xmp:CreatorTool>([^<]*)</) !== textOf(file.resolve(info['/Creator'])), 'program'),
        ...when(inXml(/<xmp:CreateDate>([^<]*)</).replace(/\D/g, '') !== day || day.length !== 14, `day ${day}`),
      ];
    },
    spoil: (file) => Object.assign(file.dictionary(file.trailer['/Info']), { '/Title': 'u:another' }),
  },
  {
    item: 'the file has an identity and no lock',
    problems: ({ trailer }) => [...when(!('/ID' in trailer), 'no ID'), ...when('/Encrypt' in trailer, 'encrypted')],
    spoil: ({ trailer }) => Reflect.deleteProperty(trailer, '/ID'),
  },
  {
    item: 'one output intent says by a profile what the colours mean',
    problems: (file) => {
      const intents = file.array(file.catalog['/OutputIntents']).map((one) => file.dictionary(one));
      const profile = file.stream(intents[0]?.['/DestOutputProfile']);
      if (intents.length !== 1 || profile === null) return ['no output intent'];
      const { dict, data } = profile;
      return [
        ...when(intents[0]?.['/S'] !== '/GTS_PDFA1', 'of another standard'),
        ...when(textOf(intents[0]?.['/OutputConditionIdentifier']) === '', 'without a name'),
        ...when(dict['/N'] !== 3 || data.toString('latin1', 16, 24) !== 'RGB XYZ ', 'not of three colours'),
        ...when(data.readUInt32BE(0) !== data.length || data.toString('latin1', 36, 40) !== 'acsp', 'not a profile'),
      ];
    },
    spoil: (file) => Reflect.deleteProperty(file.catalog, '/OutputIntents'),
  },
  {
    item: 'colours are red, green and blue, or grey',
    problems: (file) =>
      file.pages.flatMap((page) =>
        file.content(page).flatMap(({ name, operands }) => {
          const isOther = /^(k|K|sh|ri)$/.test(name) || (/^cs$/i.test(name) && operands[0] !== '/DeviceRGB');
          return when(isOther, `${operands.join(' ')} ${name}`);
        }),
      ),
    spoil: (file) => {
      const stream = file.objects[`obj:${String(file.dictionary(file.pages[0])['/Contents'])}`]?.stream;
      if (stream) stream.data = Buffer.from('0 0 0 1 k').toString('base64');
    },
  },
  {
    item: 'typefaces are embedded, and signs are as wide as the file says',
    problems: fontProblems,
    spoil: (file) => Object.assign(descendants(file)[0] ?? {}, { '/W': [] }),
  },
  {
    item: 'a list of the characters of a typeface is complete or, as here, left out',
    problems: (file) => file.allDictionaries.flatMap((one) => when('/CIDSet' in one, 'a list')),
    spoil: (file) => Object.assign(file.allDictionaries[0] ?? {}, { '/CIDSet': '1 0 R' }),
  },
  {
    item: 'glyphs are found by their own numbers',
    problems: (file) => descendants(file).flatMap((font) => when(font['/CIDToGIDMap'] !== '/Identity', 'a map')),
    spoil: (file) => Reflect.deleteProperty(descendants(file)[0] ?? {}, '/CIDToGIDMap'),
  },
  {
    item: 'nothing is see-through',
    problems: (file) =>
      file.allDictionaries.flatMap((one) =>
        when(['/SMask', '/ca', '/CA', '/BM'].some((key) => key in one) || one['/S'] === '/Transparency', 'see-through'),
      ),
    spoil: (file) => Object.assign(file.dictionary(file.pages[0]), { '/Group': { '/S': '/Transparency' } }),
  },
  {
    item: 'images have three colours or grey, eight bits each, and are not smoothed',
    problems: (file) =>
      file.allDictionaries
        .filter((one) => one['/Subtype'] === '/Image')
        .flatMap((one) => [
          ...when(!['/DeviceRGB', '/DeviceGray'].includes(String(one['/ColorSpace'])), String(one['/ColorSpace'])),
          ...when(one['/BitsPerComponent'] !== 8, `${String(one['/BitsPerComponent'])} bits`),
          ...when(one['/Interpolate'] === true, 'smoothed'),
        ]),
    spoil: (file) =>
      Object.assign(file.allDictionaries[0] ?? {}, { '/Subtype': '/Image', '/ColorSpace': '/DeviceCMYK' }),
  },
  {
    item: 'nothing lies outside the file, and nothing in it moves, plays or runs',
    problems: (file) =>
      file.allDictionaries.flatMap((one) =>
        [
          ...['/EF', '/JS', '/URI', '/AA', '/XFA', '/OPI', '/FFilter', '/Alternates'].filter((key) => key in one),
          ...[one['/S'], one['/Subtype'], one['/Type']].filter((value) =>
            /^\/(JavaScript|Launch|Sound|Movie|GoToR|ImportData|PS|Filespec|3D|RichMedia)$/.test(String(value)),
          ),
        ].map(String),
      ),
    spoil: (file) => Object.assign(file.catalog, { '/OpenAction': { '/S': '/JavaScript', '/JS': 'u:1' } }),
  },
];

/** Of the bytes themselves, which no list of objects tells: the head, packing that is forbidden, and what comes after the end. */
export function byteProblems(bytes: Buffer): readonly string[] {
  const second = bytes.subarray(bytes.indexOf('\n') + 1);
  return [
    ...when(!/^%PDF-1\.[4-7]\n$/.test(bytes.toString('latin1', 0, 9)), 'the first line'),
    ...when(second[0] !== 0x25 || [1, 2, 3, 4].some((index) => (second[index] ?? 0) < 128), 'the second line'),
    ...when(bytes.includes('/LZWDecode') || bytes.includes('/Crypt'), 'packing'),
    ...when(!/%%EOF\s?$/.test(bytes.toString('latin1', bytes.length - 8)), 'the end'),
  ];
}
