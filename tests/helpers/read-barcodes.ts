// Barcodes of a printed page read back: by zbar over the whole page, by zxing at the place of each figure. Neither made them.
import * as zxing from '@zxing/library';
import type { Sheet, SheetBlock } from '../../app/domain/sheets/sheet.ts';
import { cut, eachPicture, type Picture, readByZbar } from './page-pictures.ts';
import { everyNode, PdfObjects, structureOf } from './pdf-objects.ts';
import { type PlacedWords, placedWords } from './read-pdf.ts';

type Barcode = Extract<SheetBlock, { kind: 'barcode' }>;
/** In points from the upper left corner of the page. */
type Place = {
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

/** What an office scanner makes of a page at its plain setting. */
const dotsPerInch = 150;
const clearEdge = 6;

const formats = {
  code39: zxing.BarcodeFormat.CODE_39,
  code128: zxing.BarcodeFormat.CODE_128,
  datamatrix: zxing.BarcodeFormat.DATA_MATRIX,
} as const;

function readByZxing({ width, height, data }: Picture, symbology: Barcode['symbology']): string | null {
  const source = new zxing.RGBLuminanceSource(new Uint8ClampedArray(data), width, height);
  const hints = new Map<zxing.DecodeHintType, unknown>([
    [zxing.DecodeHintType.POSSIBLE_FORMATS, [formats[symbology]]],
    [zxing.DecodeHintType.TRY_HARDER, true],
  ]);
  const reader = new zxing.MultiFormatReader();
  try {
    return reader.decode(new zxing.BinaryBitmap(new zxing.HybridBinarizer(source)), hints).getText();
  } catch (error) {
    // Thrown for what cannot be read, under several names of the library's own.
    if (error instanceof zxing.Exception) return null;
    throw error;
  }
}

/** Where the figures with these alternate texts stand, after the file's own structure. */
function placesOf(bytes: Uint8Array, barcodes: readonly Barcode[]): readonly (Place | null)[] {
  const file = new PdfObjects(bytes);
  const figures = everyNode(structureOf(file)).filter(({ tag }) => tag === 'Figure');
  return barcodes.map(({ alternateText }) => {
    const figure = figures.find(({ dict }) => dict['/Alt'] === `u:${alternateText}`);
    const [mark] = figure?.reads ?? [];
    if (figure === undefined || mark === undefined) return null;
    const page = file.pages.indexOf(mark.page);
    const height = Number(file.array(file.dictionary(mark.page)['/MediaBox'])[3]);
    const attributes = Object.assign({}, ...file.array(figure.dict['/A']).map((one) => file.dictionary(one)));
    const [left = 0, bottom = 0, right = 0, top = 0] = file.array(attributes['/BBox']).map(Number);
    return { page, left, top: height - top, right, bottom: height - bottom };
  });
}

/** Whether the characters stand under the bars, close by and not beside. */
function standsUnder({ words }: PlacedWords, place: Place, value: string): boolean {
  const below = words.filter(
    ({ page, top, bottom, left, right }) =>
      page === place.page + 1 &&
      (top + bottom) / 2 > place.bottom &&
      top < place.bottom + 8 &&
      right > place.left &&
      left < place.right + 60,
  );
  return below
    .map(({ text }) => text)
    .join(' ')
    .includes(value);
}

/** What zbar finds on each page. */
export function barsOnPages(bytes: Uint8Array): readonly (readonly string[])[] {
  return eachPicture(bytes, { dotsPerInch, isGrey: true }, (_picture, path) => readByZbar(path));
}

/** What does not read as the sheet says it should; empty when every reader agrees. */
export function barcodeProblems(bytes: Uint8Array, sheet: Pick<Sheet, 'blocks' | 'mark'>): readonly string[] {
  const barcodes = sheet.blocks.filter((block): block is Barcode => block.kind === 'barcode');
  const words = placedWords(bytes);
  const scale = dotsPerInch / 72;
  const placed = placesOf(bytes, barcodes);
  const problems = placed.flatMap((place, index) => (place === null ? [`no figure ${index + 1}`] : []));
  for (const page of new Set(placed.flatMap((place) => place?.page ?? []))) {
    const here = barcodes.flatMap((barcode, index) => {
      const place = placed[index];
      return place?.page === page ? [{ barcode, place }] : [];
    });
    eachPicture(bytes, { dotsPerInch, isGrey: true, page: page + 1 }, (picture, path) => {
      for (const { barcode, place } of here) {
        const { left, top, right, bottom } = place;
        const edges = [left - clearEdge, top - clearEdge, right + clearEdge] as const;
        // Words stand close under the bars; a matrix is read whole.
        const end = bottom - (barcode.symbology === 'datamatrix' ? 0 : 2);
        const part = cut(picture, edges[0] * scale, edges[1] * scale, edges[2] * scale, end * scale);
        const read = readByZxing(part, barcode.symbology);
        if (read !== barcode.value) problems.push(`zxing reads ${read} for ${barcode.value}`);
        if (!standsUnder(words, place, barcode.value)) problems.push(`${barcode.value} does not stand under its bars`);
      }
      const linear = here
        .filter(({ barcode }) => barcode.symbology !== 'datamatrix')
        .map(({ barcode }) => barcode.value)
        .concat(sheet.mark === '' ? [] : [sheet.mark]);
      const read = [...readByZbar(path)].sort().join(' ');
      if (read !== linear.sort().join(' ')) problems.push(`zbar reads ${read} for ${linear.join(' ')}`);
    });
  }
  return problems;
}
