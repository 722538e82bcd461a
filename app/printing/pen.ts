// The one hand that draws: text, rules and boxes on the current page, each tagged or marked as decoration. Knows the fonts, no block.
import { breakLines } from './break-lines.ts';
import type { SheetFonts } from './load-fonts.ts';
import { openFont, type ParsedFont } from './parsed-fonts.ts';
import type { FontName, TextStyle } from './type-scale.ts';

export type StructureElement = PDFKit.PDFStructureElement;
export type StructureOptions = {
  readonly title?: string;
  readonly alt?: string;
  readonly scope?: 'Column' | 'Row';
  readonly bbox?: readonly [left: number, top: number, right: number, bottom: number];
};

/** Stands for a character that none of the embedded fonts has. */
const missingCharacter = '□';

/** Control characters, joiners, direction marks, soft hyphens, variation selectors: nothing a printed line has a use for. */
const invisible = /(?!\n)[\p{Cc}\p{Cf}\p{Variation_Selector}]/gu;

export class Pen {
  readonly doc: PDFKit.PDFDocument;
  /** True once a character had to be replaced because the fonts lack it. */
  hasMissingCharacters = false;
  private readonly regular: ParsedFont;
  private readonly widths = new Map<string, number>();
  private readonly known = new Map<string, boolean>();

  constructor(doc: PDFKit.PDFDocument, fonts: SheetFonts) {
    this.doc = doc;
    // The faces come from one family and cover the same characters; the regular one answers for all.
    this.regular = openFont(doc, 'regular', fonts.regular);
    openFont(doc, 'semibold', fonts.semibold);
    openFont(doc, 'italic', fonts.italic);
  }

  /** Composed, without invisible and control characters, and without characters that would print as nothing. */
  clean(text: string): string {
    const composed = text.normalize('NFC').replace(/\r\n?/g, '\n').replaceAll('\t', ' ').replace(invisible, '');
    return [...composed].map((character) => this.printable(character)).join('');
  }

  private printable(character: string): string {
    if (character === '\n' || character === ' ') return character;
    let isKnown = this.known.get(character);
    if (isKnown === undefined) {
      isKnown = this.regular.hasGlyphForCodePoint(character.codePointAt(0) ?? 0);
      this.known.set(character, isKnown);
    }
    if (isKnown) return character;
    this.hasMissingCharacters = true;
    return missingCharacter;
  }

  private use({ font, size }: { readonly font: FontName; readonly size: number }): void {
    this.doc.font(font).fontSize(size);
  }

  /** Width in points of text that is clean already; a space at its end takes no room. */
  width(line: string, style: TextStyle): number {
    const text = line.trimEnd();
    const key = `${style.font} ${style.size} ${style.tracking} ${text}`;
    let width = this.widths.get(key);
    if (width === undefined) {
      this.use(style);
      width = this.doc.widthOfString(text) + style.tracking * text.length;
      this.widths.set(key, width);
    }
    return width;
  }

  lines(text: string, width: number, style: TextStyle): readonly string[] {
    return breakLines(this.clean(text), width, (piece) => this.width(piece, style));
  }

  /** At most `most` lines; what does not fit ends in an ellipsis. For running lines only, whose full text stands elsewhere. */
  shortened(text: string, width: number, style: TextStyle, most = 1): readonly string[] {
    const all = this.lines(text, width, style);
    if (all.length <= most) return all;
    const kept = all.slice(0, most);
    let last = `${(kept[most - 1] ?? '').trimEnd()}…`;
    while (this.width(last, style) > width && last.length > 1) last = `${last.slice(0, -2).trimEnd()}…`;
    return [...kept.slice(0, -1), last];
  }

  /** Draws one clean line with its top at `y`; capitals stand in the middle of the line's height. */
  line(text: string, x: number, y: number, style: TextStyle): void {
    if (text === '') return;
    this.use(style);
    const capitals = 0.66 * style.size;
    const baseline = y + (style.lineHeight + capitals) / 2;
    this.doc
      .fillColor(style.colour)
      .text(text, x, baseline, { lineBreak: false, baseline: 'alphabetic', characterSpacing: style.tracking });
  }

  /** Everything painted inside is decoration: screen readers pass over it. */
  decoration(paint: () => void, kind: 'Layout' | 'Pagination' = 'Layout', edge: 'Top' | 'Bottom' | null = null): void {
    const attached = edge === null ? {} : { attached: [edge] };
    this.doc.markContent('Artifact', { type: kind, ...attached });
    paint();
    this.doc.endMarkedContent();
  }

  element(parent: StructureElement, tag: string, options: StructureOptions = {}): StructureElement {
    const child = this.doc.struct(tag, options as PDFKit.Mixins.StructureElementOptions);
    parent.add(child);
    return child;
  }

  rule(x1: number, y1: number, x2: number, y2: number, thickness: number, colour: string): void {
    this.doc.moveTo(x1, y1).lineTo(x2, y2).lineWidth(thickness).strokeColor(colour).stroke();
  }

  fill(x: number, y: number, width: number, height: number, colour: string): void {
    this.doc.rect(x, y, width, height).fill(colour);
  }

  frame(x: number, y: number, width: number, height: number, thickness: number, colour: string): void {
    this.doc.rect(x, y, width, height).lineWidth(thickness).strokeColor(colour).stroke();
  }

  tick(x: number, y: number, size: number, thickness: number, colour: string): void {
    this.doc
      .moveTo(x + size * 0.14, y + size * 0.55)
      .lineTo(x + size * 0.4, y + size * 0.82)
      .lineTo(x + size * 0.9, y + size * 0.14)
      .lineWidth(thickness)
      .strokeColor(colour)
      .stroke();
  }

  cross(x: number, y: number, size: number, thickness: number, colour: string): void {
    this.doc
      .moveTo(x + size * 0.15, y + size * 0.15)
      .lineTo(x + size * 0.85, y + size * 0.85)
      .moveTo(x + size * 0.85, y + size * 0.15)
      .lineTo(x + size * 0.15, y + size * 0.85)
      .lineWidth(thickness)
      .strokeColor(colour)
      .stroke();
  }

  /** A filled triangle with an exclamation mark, the general sign for "take care". */
  careSign(x: number, y: number, size: number, colour: string, markColour: string): void {
    this.doc
      .moveTo(x + size / 2, y)
      .lineTo(x + size, y + size * 0.9)
      .lineTo(x, y + size * 0.9)
      .closePath()
      .fill(colour);
    this.doc.rect(x + size * 0.455, y + size * 0.32, size * 0.09, size * 0.3).fill(markColour);
    this.doc.rect(x + size * 0.455, y + size * 0.69, size * 0.09, size * 0.09).fill(markColour);
  }
}
