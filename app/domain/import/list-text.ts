// The bytes of a purchase list as text: which encoding they are in, told by their first bytes and by what reads without a fault.

export type ListEncoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
export type ListText = { readonly text: string; readonly encoding: ListEncoding };

/** Above this a file is refused: far more than 2,000 purchases take. In bytes. */
export const largestListBytes = 5_000_000;

/** Every second byte zero, as plain letters in UTF-16 without a mark have it. Judged by the first 400 bytes. */
function zerosAt(bytes: Uint8Array, parity: 0 | 1): boolean {
  const size = Math.min(bytes.length - (bytes.length % 2), 400);
  if (size < 4) return false;
  let zeros = 0;
  for (let at = parity; at < size; at += 2) if (bytes[at] === 0) zeros += 1;
  return zeros / (size / 2) > 0.7;
}

function encodingOf(bytes: Uint8Array): ListEncoding | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (zerosAt(bytes, 1)) return 'utf-16le';
  if (zerosAt(bytes, 0)) return 'utf-16be';
  return null;
}

/**
 * Reads with the mark of the encoding where there is one, else as UTF-8 where it reads without a fault, else as Windows-1252, which
 * spreadsheets of Western Europe write (common practice, no source). Null: there are zero bytes left, so it is no text.
 * Source of the encodings and of their marks: WHATWG Encoding Standard, sections 4.2 and 6.
 */
export function readListText(bytes: Uint8Array): ListText | null {
  const marked = encodingOf(bytes);
  const decode = (encoding: ListEncoding, fatal: boolean) => new TextDecoder(encoding, { fatal }).decode(bytes);
  let found: ListText;
  if (marked !== null) found = { text: decode(marked, false), encoding: marked };
  else {
    try {
      found = { text: decode('utf-8', true), encoding: 'utf-8' };
    } catch {
      found = { text: decode('windows-1252', false), encoding: 'windows-1252' };
    }
  }
  return found.text.includes('\u0000') ? null : found;
}
