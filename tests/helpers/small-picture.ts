// A page as a small picture to keep and to compare: half the dots in each direction, sixteen steps of each colour.
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { eachPicture, type Picture } from './page-pictures.ts';

const dotsPerInch = 80;
const step = 51;

/**
 * Rendered at 100 dpi, then each square of four dots made one. Averaging takes out most of what renderers do differently at the edges of
 * letters, and the few steps of colour make the files small.
 */
function halved({ width, height, data }: Picture): PNG {
  const small = new PNG({ width: Math.floor(width / 2), height: Math.floor(height / 2) });
  for (let y = 0; y < small.height; y += 1)
    for (let x = 0; x < small.width; x += 1) {
      const to = (y * small.width + x) * 4;
      for (let channel = 0; channel < 3; channel += 1) {
        let sum = 0;
        for (const [right, down] of [
          [0, 0],
          [1, 0],
          [0, 1],
          [1, 1],
        ] as const)
          sum += data[((y * 2 + down) * width + x * 2 + right) * 3 + channel] ?? 255;
        small.data[to + channel] = Math.round(sum / 4 / step) * step;
      }
      small.data[to + 3] = 255;
    }
  return small;
}

export function smallPictures(bytes: Uint8Array): readonly PNG[] {
  return eachPicture(bytes, { dotsPerInch, isGrey: false }, halved);
}

export function packed(picture: PNG): Buffer {
  return PNG.sync.write(picture, { colorType: 2, inputHasAlpha: true, deflateLevel: 9 });
}

/** Side of the squares in which differences are counted, in dots of the small picture: 8 mm of paper. */
const square = 16;

/** In the square where the two differ most, the share of dots that differ; 1 where they are not of the same size. */
export function largestDifference(one: PNG, other: PNG): number {
  if (one.width !== other.width || one.height !== other.height) return 1;
  const options = { threshold: 0.25, includeAA: true, windowSize: square };
  return pixelmatch(one.data, other.data, null, one.width, one.height, options) / square ** 2;
}
