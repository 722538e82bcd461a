// A JPEG made by code (ITU-T T.81, baseline): squares of 8 dots, each in one colour. Enough to be a true picture to every reader; no encoder
// for photographs.

export type Colour = readonly [red: number, green: number, blue: number];

export type JpegSpec = {
  readonly width: number;
  readonly height: number;
  /** The colour of the square in this column and row. */
  readonly colourAt: (column: number, row: number) => Colour;
  /** As a camera says how it was held (Exif 2.3, 4.6.4: 6 is turned a quarter to the right); without it nothing is said. */
  readonly orientation?: number;
};

function segment(mark: number, body: readonly number[]): number[] {
  const length = body.length + 2;
  return [0xff, mark, length >> 8, length & 0xff, ...body];
}

/** A little-endian TIFF head with one entry: orientation, a short. */
function exif(orientation: number): number[] {
  const text = (words: string) => [...Buffer.from(words, 'latin1')];
  const entry = [0x12, 0x01, 3, 0, 1, 0, 0, 0, orientation, 0, 0, 0];
  return segment(0xe1, [...text('Exif\0\0'), ...text('II*\0'), 8, 0, 0, 0, 1, 0, ...entry, 0, 0, 0, 0]);
}

/** ITU-R BT.601 in full range, as JFIF has it. */
function lumaAndChroma([red, green, blue]: Colour): readonly number[] {
  return [
    0.299 * red + 0.587 * green + 0.114 * blue,
    128 - 0.168736 * red - 0.331264 * green + 0.5 * blue,
    128 + 0.5 * red - 0.418688 * green - 0.081312 * blue,
  ].map((value) => Math.min(255, Math.max(0, Math.round(value))));
}

/** Each square holds its mean and no detail: the category in four bits, its bits, then one bit for "nothing more". */
function scan({ width, height, colourAt }: JpegSpec): number[] {
  let bits = '';
  const before = [0, 0, 0];
  for (let row = 0; row < Math.ceil(height / 8); row += 1)
    for (let column = 0; column < Math.ceil(width / 8); column += 1)
      for (const [index, value] of lumaAndChroma(colourAt(column, row)).entries()) {
        const difference = value - 128 - (before[index] ?? 0);
        before[index] = value - 128;
        const category = difference === 0 ? 0 : Math.floor(Math.log2(Math.abs(difference))) + 1;
        const amount = difference < 0 ? difference + 2 ** category - 1 : difference;
        bits += category.toString(2).padStart(4, '0');
        bits += category === 0 ? '' : amount.toString(2).padStart(category, '0');
        bits += '0';
      }
  const bytes = (bits.match(/.{1,8}/g) ?? []).map((eight) => Number.parseInt(eight.padEnd(8, '1'), 2));
  return bytes.flatMap((byte) => (byte === 0xff ? [0xff, 0] : [byte]));
}

export function makeJpeg(spec: JpegSpec): Buffer {
  const { width, height, orientation } = spec;
  const components = [1, 2, 3];
  const frame = [8, height >> 8, height & 0xff, width >> 8, width & 0xff, 3];
  return Buffer.from([
    ...[0xff, 0xd8],
    ...(orientation === undefined ? [] : exif(orientation)),
    // Every step 8, so that the mean of a square is kept to the unit.
    ...segment(0xdb, [0, ...Array.from({ length: 64 }, () => 8)]),
    ...segment(0xc0, [...frame, ...components.flatMap((id) => [id, 0x11, 0])]),
    // Twelve categories of four bits each; one sign of one bit.
    ...segment(0xc4, [0x00, 0, 0, 0, 12, ...Array.from({ length: 12 }, () => 0), ...Array.from({ length: 12 }).keys()]),
    ...segment(0xc4, [0x10, 1, ...Array.from({ length: 15 }, () => 0), 0]),
    ...segment(0xda, [3, ...components.flatMap((id) => [id, 0x00]), 0, 63, 0]),
    ...scan(spec),
    ...[0xff, 0xd9],
  ]);
}

/** Something to look at: a ground of one colour, a darker frame, and a bright square in the upper left corner, which tells how it is held. */
export function testPicture(width: number, height: number, ground: Colour, orientation?: number): Buffer {
  const [columns, rows] = [Math.ceil(width / 8), Math.ceil(height / 8)];
  const edge: Colour = [ground[0] >> 1, ground[1] >> 1, ground[2] >> 1];
  const colourAt = (column: number, row: number): Colour => {
    if (column < columns / 4 && row < rows / 4) return [250, 250, 240];
    const isEdge = column === 0 || row === 0 || column === columns - 1 || row === rows - 1;
    return isEdge ? edge : ground;
  };
  return makeJpeg({ width, height, colourAt, ...(orientation === undefined ? {} : { orientation }) });
}
