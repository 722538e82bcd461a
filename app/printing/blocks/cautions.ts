// Cautions that follow each other, two abreast in framed fields with a sign. The first of an odd number takes the full width.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { type Column, type Row, rowHeight, type Strip, textStrips } from '../page-flow.ts';
import type { Desk, Plan } from '../plan.ts';
import { ink, paperWhite, type } from '../type-scale.ts';

type Caution = Extract<SheetBlock, { kind: 'caution' }>;

const gutter = 6;
const signSize = 15;
const inset = signSize + 13;
const fine = { ...type.small, size: 8.5, lineHeight: 10.8 };

function fieldStrips(desk: Desk, block: Caution, width: number): Strip[] {
  const { pen } = desk;
  const concerns = block.concerns === '' ? '' : `Here: ${block.concerns}`;
  return [
    ...textStrips(pen, pen.lines(block.title, width, type.bodyStrong), type.bodyStrong),
    ...textStrips(pen, pen.lines(block.text, width, fine), fine),
    ...textStrips(pen, pen.lines(concerns, width, type.smallItalic), type.smallItalic),
  ];
}

function planRow(desk: Desk, blocks: readonly Caution[]): Row {
  const { pen, frame } = desk;
  const width = (frame.width - gutter * (blocks.length - 1)) / blocks.length;
  const columns = blocks.map((block, index): Column => {
    const x = frame.left + index * (width + gutter);
    return {
      x: x + inset,
      strips: fieldStrips(desk, block, width - inset - 6),
      element: () => pen.element(desk.root, 'P'),
    };
  });
  return {
    columns,
    padTop: 3.5,
    padBottom: 4.5,
    before: (top, bottom) => {
      for (const column of columns) {
        const x = column.x - inset;
        pen.frame(x + 0.4, top + 0.4, width - 0.8, bottom - top - 0.8, 0.8, ink);
        pen.fill(x, top, 3, bottom - top, ink);
        pen.careSign(x + 8, top + 5, signSize, ink, paperWhite);
      }
    },
  };
}

const gutterAbove = 2.5;

export function planCautions(desk: Desk, blocks: readonly Caution[]): Plan {
  const isOdd = blocks.length % 2 === 1;
  const groups: Caution[][] = isOdd ? [blocks.slice(0, 1)] : [];
  for (let start = isOdd ? 1 : 0; start < blocks.length; start += 2) groups.push(blocks.slice(start, start + 2));
  const rows = groups.map((group) => planRow(desk, group));
  return {
    lead: rows[0] ? gutterAbove + rowHeight(rows[0]) : 0,
    leansOnNext: false,
    draw: () => {
      for (const row of rows) {
        desk.flow.space(gutterAbove);
        desk.flow.row(row);
        desk.flow.space(2.5);
      }
    },
  };
}
