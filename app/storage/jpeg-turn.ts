// Whether a JPEG lies on its side: cameras write the dots as the sensor has them and say in the Exif part how to turn them. Reads only that.

/** CIPA DC-008 (Exif), 4.6.4: tag 0x0112; the values 5 to 8 swap width and height. */
const orientationTag = 0x0112;
const exifBegin = Buffer.from('Exif\0\0', 'latin1');

function orientationIn(tiff: Buffer): number {
  const order = tiff.toString('latin1', 0, 2);
  if (order !== 'II' && order !== 'MM') return 1;
  const word = (at: number) => (order === 'II' ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const first = order === 'II' ? tiff.readUInt32LE(4) : tiff.readUInt32BE(4);
  if (first + 2 > tiff.length) return 1;
  const count = word(first);
  for (let entry = 0; entry < count; entry += 1) {
    const at = first + 2 + entry * 12;
    if (at + 12 > tiff.length) return 1;
    if (word(at) === orientationTag) return word(at + 8);
  }
  return 1;
}

export function jpegIsOnItsSide(bytes: Buffer): boolean {
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at] === 0xff) {
    const mark = bytes.readUInt8(at + 1);
    // The picture itself begins: nothing is said about turning after that.
    if (mark === 0xda) return false;
    if (mark === 0xff) {
      at += 1;
      continue;
    }
    const end = at + 2 + bytes.readUInt16BE(at + 2);
    const part = bytes.subarray(at + 4, end);
    if (mark === 0xe1 && part.length >= 14 && part.subarray(0, 6).equals(exifBegin)) {
      const orientation = orientationIn(part.subarray(6));
      return orientation >= 5 && orientation <= 8;
    }
    at = end;
  }
  return false;
}
