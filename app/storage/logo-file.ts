// The dealer's logo in the fleet folder: one picture, PNG or JPEG, beside the records. Judges pictures before they are kept; draws none.
import { readFile, rm } from 'node:fs/promises';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { isThere, syncFolder, writeFileAtomically } from './atomic-file.ts';
import { pathIn } from './fleet-folder.ts';
import { isJpeg, isPng, readJpegHeader, readPngHeader, unpacksTo } from './picture-header.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';
import type { KeyFileSetting } from './vault/key-file.ts';

export const logoFiles = ['logo.png', 'logo.jpg'] as const;
export const logoPattern = /^logo\.(png|jpg)$/;
export const mostLogoBytes = 500_000;
/** Width and height: what a wide band of paper shows at 600 dots per inch, and no more memory than that. */
const mostDots = 4000;

const noPicture = 'This is no picture in PNG or JPEG. Save the logo as one of these, then choose it again.';
const damaged = 'This picture is damaged or cut off. Save the logo again, then choose it.';
const tooManyDots = `The picture is larger than ${mostDots} dots in width or height. Make it smaller, then choose it again.`;
const unusualPng =
  'This PNG is written in an unusual way (interlaced, or not 8 bits a colour). Save it as a plain PNG or as JPEG, then choose it again.';
/** PDF/A-2a as it is kept here has nothing see-through. The page lays such a picture on white before it hands it over. */
const seeThrough =
  'Parts of this PNG may be see-through, which no sheet can hold. Save it on a white ground, then choose it again.';
const inkColours =
  'This JPEG has printing inks for colours. Save it in ordinary colours (RGB) or grey, then choose it again.';

export type LogoForm = {
  readonly fileName: (typeof logoFiles)[number];
  readonly width: number;
  readonly height: number;
};

/** Dots a row hold: grey, colour, palette, grey and see-through, colour and see-through (PNG specification, 11.2.2). */
const channelsOfType: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

function judgePng(bytes: Buffer): LogoForm | string {
  const header = readPngHeader(bytes);
  if (header === null) return damaged;
  const { width, height, colourType, bitsAColour, isInterlaced, isSeeThrough, data } = header;
  const channels = channelsOfType[colourType];
  if (channels === undefined) return damaged;
  if (width > mostDots || height > mostDots) return tooManyDots;
  if (bitsAColour !== 8 || isInterlaced) return unusualPng;
  if (isSeeThrough) return seeThrough;
  return unpacksTo(data, (width * channels + 1) * height) ? { fileName: 'logo.png', width, height } : damaged;
}

function judgeJpeg(bytes: Buffer): LogoForm | string {
  const header = readJpegHeader(bytes);
  if (header === null) return damaged;
  const { width, height, colours } = header;
  if (width > mostDots || height > mostDots) return tooManyDots;
  return colours === 1 || colours === 3 ? { fileName: 'logo.jpg', width, height } : inkColours;
}

/** What picture these bytes are, or a sentence for the person why they are none that can be printed. */
export function judgeLogo(bytes: Buffer): LogoForm | string {
  if (bytes.length > mostLogoBytes)
    return `The picture has ${Math.ceil(bytes.length / 1000)} kB; at most ${mostLogoBytes / 1000} kB fit on every sheet. Make it smaller, then choose it again.`;
  if (isPng(bytes)) return judgePng(bytes);
  if (isJpeg(bytes)) return judgeJpeg(bytes);
  return noPicture;
}

/** Null where there is none, or none that can be printed: a sheet is good without it. */
export async function readLogo(folder: string): Promise<Buffer | null> {
  for (const name of logoFiles) {
    const bytes = await readFile(pathIn(folder, name)).catch(() => null);
    if (bytes !== null && typeof judgeLogo(bytes) !== 'string') return bytes;
  }
  return null;
}

export async function listLogos(folder: string): Promise<string[]> {
  const there = await Promise.all(logoFiles.map(async (name) => ((await isThere(pathIn(folder, name))) ? name : null)));
  return there.flatMap((name) => name ?? []);
}

/** Keeps these bytes, judged before, as the only logo; null takes it away. */
export async function keepLogo(
  { folder, guard }: Pick<KeyFileSetting, 'folder' | 'guard'>,
  logo: { readonly fileName: string; readonly bytes: Buffer } | null,
): Promise<Result<null, StorageProblem>> {
  const refusal = await guard();
  if (refusal) return fail(refusal);
  if (logo !== null) {
    const written = await writeFileAtomically(pathIn(folder, logo.fileName), logo.bytes);
    if (!written.ok) return written;
  }
  try {
    for (const name of logoFiles) if (name !== logo?.fileName) await rm(pathIn(folder, name), { force: true });
    await syncFolder(folder);
    return ok(null);
  } catch (error) {
    return fail(problemFromError(error, 'Taking the logo away'));
  }
}
