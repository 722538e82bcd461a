// Opens the typefaces once for all sheets: reading their tables anew takes longer than everything else in a sheet together.
import type { SheetFonts } from './load-fonts.ts';

type Glyph = { codePoints: readonly number[] };
export type ParsedFont = {
  readonly hasGlyphForCodePoint: (point: number) => boolean;
  getGlyph: (id: number, codePoints?: readonly number[]) => Glyph;
};

const parsed = new WeakMap<Buffer, ParsedFont>();

/**
 * The library keeps each glyph with the characters it was first asked for. A letter that was first met as a part of another one (the B in
 * a Greek Beta) was asked for without any, and would then be read back as nothing from every later sheet. It takes them up here.
 */
function keepCharacters(font: ParsedFont): void {
  const getGlyph = font.getGlyph.bind(font);
  font.getGlyph = (id, codePoints = []) => {
    const glyph = getGlyph(id, codePoints);
    if (glyph.codePoints.length === 0 && codePoints.length > 0) glyph.codePoints = codePoints;
    return glyph;
  };
}

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
  keepCharacters(_font.font);
  parsed.set(bytes, _font.font);
  return _font.font;
}
