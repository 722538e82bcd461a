// Barcodes that follow each other, side by side as vectors, with what they say under them. What cannot be coded is printed as words only.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { type BarcodePattern, barcodePattern } from '../barcode-pattern.ts';
import { type Column, type Row, rowHeight, textStrips } from '../page-flow.ts';
import { millimetres } from '../page-frame.ts';
import { paintPattern } from '../paint-pattern.ts';
import type { Desk, Plan } from '../plan.ts';
import { type } from '../type-scale.ts';

type Barcode = Extract<SheetBlock, { kind: 'barcode' }>;

/** Wanted and least width of one module: 0.33 mm reads from 150 dpi; below 0.19 mm an office printer smears it (common practice, no source). */
const moduleWidth = millimetres(0.33);
const leastModule = millimetres(0.19);
const matrixModule = millimetres(0.6);
const barHeight = millimetres(11);
const between = 10;

type Field = { readonly width: number; readonly columns: (x: number) => readonly Column[] };

function planField(desk: Desk, block: Barcode): Field {
  const { pen, frame } = desk;
  const pattern = barcodePattern(block.symbology, block.value);
  const wanted = pattern?.isLinear === true ? moduleWidth : matrixModule;
  const module = pattern === null ? 0 : Math.min(wanted, frame.width / pattern.width);
  const isDrawn = pattern !== null && module >= leastModule;
  const words = block.label === '' ? block.value : `${block.label}  ${block.value}`;
  const natural = pen.width(pen.clean(words), type.barcodeText) + 1;
  const width = Math.min(frame.width, Math.max(isDrawn ? pattern.width * module : 0, natural));
  const text = textStrips(pen, pen.lines(words, width, type.barcodeText), type.barcodeText);
  const height = isDrawn ? (pattern.isLinear ? barHeight : pattern.height * module) : 0;
  const indent = isDrawn ? module * (pattern.isLinear ? 10 : 1) : 0;
  return {
    width,
    columns: (x) => [
      ...(isDrawn ? [figure(desk, block, pattern, module, height, x)] : []),
      {
        x: x + (indent + natural > width ? 0 : indent),
        strips: text,
        down: height + 2,
        element: () => pen.element(desk.root, 'P'),
      },
    ],
  };
}

function figure(
  { pen, root }: Desk,
  block: Barcode,
  pattern: BarcodePattern,
  module: number,
  height: number,
  x: number,
): Column {
  const width = pattern.width * module;
  return {
    x,
    strips: [
      {
        height,
        paint: (left, top) => paintPattern(pen, pattern, { left, top }, module, height),
      },
    ],
    element: (left, top) =>
      pen.element(root, 'Figure', { alt: block.alternateText, bbox: [left, top, left + width, top + height] }),
  };
}

export function planBarcodes(desk: Desk, blocks: readonly Barcode[]): Plan {
  const { frame } = desk;
  const rows: Row[] = [];
  let columns: Column[] = [];
  let x = frame.left;
  const closeRow = () => {
    if (columns.length > 0) rows.push({ columns, padTop: 2, padBottom: 3 });
    columns = [];
    x = frame.left;
  };
  for (const block of blocks) {
    const field = planField(desk, block);
    if (x + field.width > frame.right + 0.01) closeRow();
    // The quiet zone of a code may reach to the edge of the text; its first bar then stands ten modules in.
    columns.push(...field.columns(x));
    x += field.width + between;
  }
  closeRow();
  return {
    lead: rows[0] ? rowHeight(rows[0]) : 0,
    leansOnNext: false,
    draw: () => {
      for (const row of rows) desk.flow.row(row);
      desk.flow.space(4);
    },
  };
}
