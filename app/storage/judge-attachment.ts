// What a file that somebody adds to a vehicle is, told by its bytes and never by its name, or why it is not taken. Changes no byte.
import {
  type AttachmentKind,
  mostAttachmentBytes,
  printEdgeDots,
  smallEdgeDots,
} from '../domain/vehicle/attachment.ts';
import { jpegIsOnItsSide } from './jpeg-turn.ts';
import { isJpeg, isPng, readJpegHeader, readPngHeader } from './picture-header.ts';

export type AttachmentForm = {
  readonly kind: AttachmentKind;
  /** As it is looked at, upright; null for a PDF. */
  readonly widthDots: number | null;
  readonly heightDots: number | null;
};

/** What a page can unpack without running out of memory: four bytes a dot. */
const mostDots = 250_000_000;

const damaged = 'This file is damaged or cut off. Copy it again from where it came, then add it.';
const heic =
  'This is a HEIC picture, which not every computer can show. Set the phone’s camera to “Most compatible”, or save the picture as JPEG, then add it.';
const unknown =
  'This is neither a photograph in JPEG or PNG nor a PDF. Save it as one of these, then add it. What it is goes by the file itself, not by its name.';

const heicBrands = ['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1', 'avif'];

function isHeic(bytes: Buffer): boolean {
  return bytes.toString('latin1', 4, 8) === 'ftyp' && heicBrands.includes(bytes.toString('latin1', 8, 12));
}

function pictureForm(kind: 'jpeg' | 'png', size: { width: number; height: number } | null): AttachmentForm | string {
  if (size === null) return damaged;
  if (size.width * size.height > mostDots)
    return `The picture has ${Math.round((size.width * size.height) / 1_000_000)} million dots; at most ${mostDots / 1_000_000} million can be shown. Make it smaller, then add it.`;
  return { kind, widthDots: size.width, heightDots: size.height };
}

/** ISO 32000-1, 7.5.2 and 7.5.5: the header at the beginning, the end mark within the last 1024 bytes. */
function judgePdf(bytes: Buffer): AttachmentForm | string {
  if (bytes.subarray(-1024).lastIndexOf('%%EOF') < 0) return damaged;
  return { kind: 'pdf', widthDots: null, heightDots: null };
}

function uprightJpeg(bytes: Buffer) {
  const header = readJpegHeader(bytes);
  if (header === null || !jpegIsOnItsSide(bytes)) return header;
  return { width: header.height, height: header.width };
}

/** What it is, or a sentence for the person. */
export function judgeAttachment(bytes: Buffer): AttachmentForm | string {
  if (bytes.length > mostAttachmentBytes)
    return `The file has ${Math.ceil(bytes.length / 1_000_000)} MB; at most ${mostAttachmentBytes / 1_000_000} MB are kept. Make it smaller, then add it.`;
  if (isJpeg(bytes)) return pictureForm('jpeg', uprightJpeg(bytes));
  if (isPng(bytes)) return pictureForm('png', readPngHeader(bytes));
  if (bytes.subarray(0, 5).equals(Buffer.from('%PDF-'))) return judgePdf(bytes);
  return isHeic(bytes) ? heic : unknown;
}

/** Whether this is what the page makes of a picture: a JPEG in ordinary colours, no larger than it has to be. */
export function isCopyOfPicture(bytes: Buffer, size: 'small' | 'print'): boolean {
  const header = isJpeg(bytes) ? readJpegHeader(bytes) : null;
  if (header === null || ![1, 3].includes(header.colours)) return false;
  return Math.max(header.width, header.height) <= (size === 'small' ? smallEdgeDots : printEdgeDots);
}
