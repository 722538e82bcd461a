// Pages as pictures, rendered by poppler, and parts cut out of them. Uncompressed on the way, because packing takes longer than painting.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Rows from the top; one byte a pixel in grey, three in colour. */
export type Picture = {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3;
  readonly data: Buffer;
};

type Wanted = {
  readonly dotsPerInch: number;
  readonly isGrey: boolean;
  /** Counted from 1; all, if left out. */
  readonly page?: number;
};

/** A picture in the plain form of the netpbm tools: a head of words, then the bytes. */
function readNetpbm(bytes: Buffer): Picture {
  const [head = '', kind, width, height] =
    /^(P[56])\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString('latin1', 0, 64)) ?? [];
  if (head === '') throw new Error('The renderer gave a picture of another form.');
  return {
    width: Number(width),
    height: Number(height),
    channels: kind === 'P5' ? 1 : 3,
    data: bytes.subarray(head.length),
  };
}

/** Renders the pages and hands each over with its file, which is gone afterwards. */
export function eachPicture<Outcome>(
  bytes: Uint8Array,
  { dotsPerInch, isGrey, page }: Wanted,
  use: (picture: Picture, path: string) => Outcome,
): readonly Outcome[] {
  const folder = mkdtempSync(join(tmpdir(), 'lotwright-pictures-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, bytes);
    const only = page === undefined ? [] : ['-f', `${page}`, '-l', `${page}`];
    const words = ['-r', `${dotsPerInch}`, ...(isGrey ? ['-gray'] : []), ...only, file, join(folder, 'page')];
    execFileSync('pdftoppm', words, { stdio: 'pipe' });
    const pageNumber = (name: string) => Number(/(\d+)\.p[gp]m$/.exec(name)?.[1]);
    return readdirSync(folder)
      .filter((name) => /\.p[gp]m$/.test(name))
      .sort((a, b) => pageNumber(a) - pageNumber(b))
      .map((name) => use(readNetpbm(readFileSync(join(folder, name))), join(folder, name)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What zbar, a barcode reader with no part in this program, finds in Code 39 and Code 128. Its tool says 4 for nothing found. */
export function readByZbar(path: string): readonly string[] {
  const words = ['--quiet', '--raw', '-Sdisable', '-Scode39.enable', '-Scode128.enable', path];
  try {
    const found = execFileSync('zbarimg', words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
    return found.split('\n').filter((line) => line !== '');
  } catch (error) {
    if (error instanceof Error && 'status' in error && error.status === 4) return [];
    throw new Error('zbarimg did not run. On Debian or Ubuntu: apt-get install -y zbar-tools', { cause: error });
  }
}

/** The part between two points of the picture, as far as it reaches. */
export function cut(picture: Picture, left: number, top: number, right: number, bottom: number): Picture {
  const { channels } = picture;
  const [fromX, fromY] = [Math.max(0, Math.floor(left)), Math.max(0, Math.floor(top))];
  const width = Math.min(picture.width, Math.ceil(right)) - fromX;
  const height = Math.min(picture.height, Math.ceil(bottom)) - fromY;
  const data = Buffer.alloc(width * height * channels);
  for (let y = 0; y < height; y += 1) {
    const start = ((fromY + y) * picture.width + fromX) * channels;
    picture.data.copy(data, y * width * channels, start, start + width * channels);
  }
  return { width, height, channels, data };
}
