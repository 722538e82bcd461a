// The text of a file that was dropped on the page: which encoding it is in, and whether it is text at all. Pure; reading it is the page's.

/** More than any scanner's report; a larger file is something else. */
export const largestFile = 2_000_000;

/** UTF-16 by its mark, else UTF-8, else the Western single-byte set that older devices write. Null where it is no text. */
export function decodeReport(bytes: Uint8Array): string | null {
  const isWide = (first: number, second: number) => bytes[0] === first && bytes[1] === second;
  if (isWide(0xff, 0xfe)) return textOf(new TextDecoder('utf-16le').decode(bytes));
  if (isWide(0xfe, 0xff)) return textOf(new TextDecoder('utf-16be').decode(bytes));
  try {
    return textOf(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return textOf(new TextDecoder('windows-1252').decode(bytes));
  }
}

/** A file with bytes of nought, or one that says in its first characters that it is a document of another kind, is no text. */
function textOf(text: string): string | null {
  const isOther = ['%PDF', 'PK\u0003', '{\\rtf'].some((start) => text.startsWith(start));
  return isOther || text.includes('\u0000') ? null : text;
}
