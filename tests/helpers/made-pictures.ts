// Pictures for tests: PNGs that open everywhere, and JPEGs of which only the headers are true (size, colours, how they are turned).
import { PNG } from 'pngjs';

/** One plain colour; another `shade` makes other bytes. */
export function madePng(width: number, height: number, shade = 120): Buffer {
  const picture = new PNG({ width, height });
  picture.data.fill(shade);
  return PNG.sync.write(picture, { colorType: 2 });
}

/** CIPA DC-008: an Exif part that holds nothing but how the picture is turned, in the byte order of Motorola or Intel. */
function exifPart(orientation: number, isMotorola: boolean): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write(isMotorola ? 'MM' : 'II', 'latin1');
  const word = (value: number, at: number) =>
    isMotorola ? tiff.writeUInt16BE(value, at) : tiff.writeUInt16LE(value, at);
  const long = (value: number, at: number) =>
    isMotorola ? tiff.writeUInt32BE(value, at) : tiff.writeUInt32LE(value, at);
  word(42, 2);
  long(8, 4);
  word(1, 8);
  word(0x0112, 10);
  word(3, 12);
  long(1, 14);
  word(orientation, 18);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

export type JpegMaking = {
  readonly width: number;
  readonly height: number;
  readonly colours?: number;
  readonly orientation?: number;
  readonly isMotorola?: boolean;
  /** Makes the bytes differ from another's. */
  readonly remark?: string;
};

/** ITU-T T.81, annex B: a comment, a frame header and the end; no dots in between. */
export function madeJpeg({
  width,
  height,
  colours = 3,
  orientation,
  isMotorola = true,
  remark = '',
}: JpegMaking): Buffer {
  const frame = Buffer.alloc(10 + colours * 3);
  frame.set([0xff, 0xc0], 0);
  frame.writeUInt16BE(frame.length - 2, 2);
  frame.writeUInt8(8, 4);
  frame.writeUInt16BE(height, 5);
  frame.writeUInt16BE(width, 7);
  frame.writeUInt8(colours, 9);
  const comment = Buffer.from(`\xff\xfe\0\0${remark}`, 'latin1');
  comment.writeUInt16BE(comment.length - 2, 2);
  return Buffer.concat([
    Buffer.from([0xff, 0xd8]),
    ...(orientation === undefined ? [] : [exifPart(orientation, isMotorola)]),
    comment,
    frame,
    Buffer.from([0xff, 0xd9]),
  ]);
}
