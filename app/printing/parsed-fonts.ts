// Opens the typefaces once for all sheets: reading their tables anew takes longer than everything else in a sheet together.
import type { SheetFonts } from './load-fonts.ts';

export type ParsedFont = { readonly hasGlyphForCodePoint: (point: number) => boolean };

const parsed = new WeakMap<Buffer, ParsedFont>();

/**
 * Registers the face under its name and hands back what the library made of it. The library takes an already opened font for a new
 * document, and has no public way to ask for one; `_font` is its own name for the font in use.
 */
export function openFont(doc: PDFKit.PDFDocument, name: keyof SheetFonts, bytes: Buffer): ParsedFont {
  const known = parsed.get(bytes);
  doc.registerFont(name, (known ?? bytes) as Buffer);
  doc.font(name);
  if (known !== undefined) return known;
  const { _font } = doc as unknown as { _font: { font: ParsedFont } };
  parsed.set(bytes, _font.font);
  return _font.font;
}
