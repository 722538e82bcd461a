// Fills a field with the colour and hatch of a cause, as vectors cut to the field, so that it survives a black-and-white printer.
import type { StripLook } from '../domain/sheets/strip-of-days.ts';
import type { Pen } from './pen.ts';
import { ink, paperWhite } from './type-scale.ts';

/** Distance of the lines of a hatch, in points; 2.6 pt is just under a millimetre. */
const spacing = 2.6;
const lineWidth = 0.45;

type Field = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

function slanted(doc: PDFKit.PDFDocument, { x, y, width, height }: Field, isRising: boolean): void {
  const step = spacing * Math.SQRT2;
  // Lines sit on the page's own grid, so that the hatch runs on from one field to the next.
  const first = Math.floor((x - height) / step) * step;
  for (let at = first; at < x + width + height; at += step) {
    if (isRising) doc.moveTo(at, y + height).lineTo(at + height, y);
    else doc.moveTo(at, y).lineTo(at + height, y + height);
  }
}

function level(doc: PDFKit.PDFDocument, { x, y, width, height }: Field): void {
  for (let at = y + spacing / 2; at < y + height; at += spacing) doc.moveTo(x, at).lineTo(x + width, at);
}

function upright(doc: PDFKit.PDFDocument, { x, y, width, height }: Field): void {
  const first = Math.ceil(x / spacing) * spacing;
  for (let at = first; at < x + width; at += spacing) doc.moveTo(at, y).lineTo(at, y + height);
}

function dots(doc: PDFKit.PDFDocument, { x, y, width, height }: Field): void {
  const firstX = Math.ceil(x / spacing) * spacing;
  for (let atX = firstX; atX < x + width; atX += spacing)
    for (let atY = y + spacing / 2; atY < y + height; atY += spacing) doc.circle(atX, atY, 0.55);
}

/** One field. 'open' stays white with an outline. */
export function paintHatch(pen: Pen, look: StripLook, field: Field): void {
  const { doc } = pen;
  const { x, y, width, height } = field;
  if (width <= 0) return;
  if (look.hatch === 'open') {
    pen.frame(x + 0.3, y + 0.3, Math.max(0.1, width - 0.6), height - 0.6, 0.6, ink);
    return;
  }
  pen.fill(x, y, width, height, look.colour);
  if (look.hatch === 'plain') return;
  doc.save();
  doc.rect(x, y, width, height).clip();
  const line = look.hasLightLines ? paperWhite : ink;
  if (look.hatch === 'dotted') {
    dots(doc, field);
    doc.fill(line);
  } else {
    if (look.hatch === 'rising' || look.hatch === 'crossed') slanted(doc, field, true);
    if (look.hatch === 'falling' || look.hatch === 'crossed') slanted(doc, field, false);
    if (look.hatch === 'level' || look.hatch === 'grid') level(doc, field);
    if (look.hatch === 'upright' || look.hatch === 'grid') upright(doc, field);
    doc.lineWidth(lineWidth).strokeColor(line).stroke();
  }
  doc.restore();
}
