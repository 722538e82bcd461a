// A few large figures side by side, each under a small label: what a reader looks for first.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { type Column, type Row, rowHeight, textStrips } from '../page-flow.ts';
import type { StructureElement } from '../pen.ts';
import type { Desk, Plan } from '../plan.ts';
import { ink, sized, type } from '../type-scale.ts';

type Figures = Extract<SheetBlock, { kind: 'figures' }>;

const gutter = 14;
const inset = 9;
const smallest = 11;

export function planFigures(desk: Desk, block: Figures): Plan {
  const { pen, frame } = desk;
  const count = Math.max(1, block.items.length);
  const width = (frame.width - gutter * (count - 1)) / count;
  const room = width - inset;
  // One size for all of them, so that they can be compared at a glance.
  const widest = Math.max(1, ...block.items.map(({ value }) => pen.width(pen.clean(value), type.tag)));
  const style = widest <= room ? type.tag : sized(type.tag, Math.max(smallest, (type.tag.size * room) / widest));
  const row = (list: StructureElement): Row => ({
    columns: block.items.flatMap(({ label, value }, index): Column[] => {
      const x = frame.left + index * (width + gutter) + inset;
      const item = pen.element(list, 'LI');
      const labels = textStrips(pen, pen.lines(label, room, type.label), type.label);
      return [
        { x, strips: labels, element: () => pen.element(item, 'Lbl') },
        {
          x,
          strips: textStrips(pen, pen.lines(value, room, style), style),
          down: labels.reduce((sum, strip) => sum + strip.height, 0),
          element: () => pen.element(item, 'LBody'),
        },
      ];
    }),
    padTop: 2,
    padBottom: 3,
    after: (top, bottom) => {
      for (const index of block.items.keys()) {
        const x = frame.left + index * (width + gutter);
        pen.rule(x, top + 2, x, bottom - 2, 1.6, ink);
      }
    },
  });
  const measured = rowHeight({
    columns: block.items.map(({ label, value }) => ({
      x: 0,
      strips: [
        ...textStrips(pen, pen.lines(label, room, type.label), type.label),
        ...textStrips(pen, pen.lines(value, room, style), style),
      ],
      element: null,
    })),
    padTop: 2,
    padBottom: 3,
  });
  return {
    lead: measured,
    leansOnNext: false,
    draw: () => {
      if (block.items.length === 0) return;
      desk.flow.row(row(pen.element(desk.root, 'L')));
      desk.flow.space(9);
    },
  };
}
