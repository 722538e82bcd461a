// What the headers of a PNG or JPEG say: size in dots, colours, whether it is whole. Draws nothing and judges nothing.
import { inflateSync } from 'node:zlib';

const pngBegin = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const jpegBegin = Buffer.from([0xff, 0xd8, 0xff]);
const jpegEnd = Buffer.from([0xff, 0xd9]);

export type PngHeader = {
  readonly width: number;
  readonly height: number;
  readonly bitsAColour: number;
  /** PNG specification, 11.2.2: grey, colour, palette, grey and see-through, colour and see-through. */
  readonly colourType: number;
  readonly isInterlaced: boolean;
  readonly isSeeThrough: boolean;
  /** The packed rows, one after the other. */
  readonly data: Buffer;
};

export type JpegHeader = { readonly width: number; readonly height: number; readonly colours: number };

export function isPng(bytes: Buffer): boolean {
  return bytes.subarray(0, 8).equals(pngBegin);
}

export function isJpeg(bytes: Buffer): boolean {
  return bytes.subarray(0, 3).equals(jpegBegin);
}

/** Null for what is damaged or cut off. `bytes` begin as a PNG does. */
export function readPngHeader(bytes: Buffer): PngHeader | null {
  const parts: Buffer[] = [];
  let at = pngBegin.length;
  let isEnded = false;
  let isSeeThrough = [4, 6].includes(bytes[25] ?? 0);
  while (at + 12 <= bytes.length && !isEnded) {
    const length = bytes.readUInt32BE(at);
    const name = bytes.toString('latin1', at + 4, at + 8);
    if (at + 12 + length > bytes.length) return null;
    if (name === 'IDAT') parts.push(bytes.subarray(at + 8, at + 8 + length));
    isSeeThrough ||= name === 'tRNS';
    isEnded = name === 'IEND';
    at += 12 + length;
  }
  if (!isEnded || bytes.length < 33) return null;
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  if (width === 0 || height === 0) return null;
  return {
    width,
    height,
    bitsAColour: bytes.readUInt8(24),
    colourType: bytes.readUInt8(25),
    isInterlaced: bytes.readUInt8(28) !== 0,
    isSeeThrough,
    data: Buffer.concat(parts),
  };
}

/** Whether the packed rows come out at `size` bytes or more. */
export function unpacksTo(data: Buffer, size: number): boolean {
  try {
    return inflateSync(data, { maxOutputLength: size + 1 }).length >= size;
  } catch {
    return false;
  }
}

/** ITU-T T.81, annex B: the frame header says the size and how many colours. Null for what is damaged or cut off. */
export function readJpegHeader(bytes: Buffer): JpegHeader | null {
  let at = 2;
  while (at + 10 <= bytes.length && bytes[at] === 0xff) {
    const mark = bytes.readUInt8(at + 1);
    const isFrame = mark >= 0xc0 && mark <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(mark);
    if (isFrame) {
      const [height, width, colours] = [
        bytes.readUInt16BE(at + 5),
        bytes.readUInt16BE(at + 7),
        bytes.readUInt8(at + 9),
      ];
      if (width === 0 || height === 0 || bytes.lastIndexOf(jpegEnd) < at) return null;
      return { width, height, colours };
    }
    at += mark === 0xff ? 1 : 2 + bytes.readUInt16BE(at + 2);
  }
  return null;
}
