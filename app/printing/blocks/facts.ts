// Facts in a grid of three columns: a small label over each value.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { type Column, type Row, textStrips } from '../page-flow.ts';
import type { StructureElement } from '../pen.ts';
import type { Desk, Plan } from '../plan.ts';
import { type } from '../type-scale.ts';

type Facts = Extract<SheetBlock, { kind: 'facts' }>;

const perRow = 3;
const gutter = 14;

export function planFacts(desk: Desk, block: Facts): Plan {
  const { pen, frame } = desk;
  const width = (frame.width - gutter * (perRow - 1)) / perRow;
  const value = { ...type.bodyStrong, size: 11, lineHeight: 14 };
  const cells = block.rows.map((row, index) => ({
    x: frame.left + (index % perRow) * (width + gutter),
    label: textStrips(pen, pen.lines(row.label, width, type.label), type.label),
    value: textStrips(pen, pen.lines(row.value, width, value), value),
  }));
  const rows: ((list: StructureElement) => Row)[] = [];
  for (let start = 0; start < cells.length; start += perRow) {
    rows.push((list) => ({
      columns: cells.slice(start, start + perRow).flatMap((cell): Column[] => {
        const item = { made: null as StructureElement | null };
        const itemElement = () => (item.made ??= pen.element(list, 'LI'));
        const down = cell.label.reduce((sum, strip) => sum + strip.height, 0);
        return [
          { x: cell.x, strips: cell.label, element: () => pen.element(itemElement(), 'Lbl') },
          { x: cell.x, strips: cell.value, down, element: () => pen.element(itemElement(), 'LBody') },
        ];
      }),
      padBottom: 4,
    }));
  }
  const measured = rows.length * (type.label.lineHeight + value.lineHeight + 4);
  return {
    lead: measured,
    leansOnNext: false,
    draw: () => {
      const list = pen.element(desk.root, 'L');
      for (const row of rows) desk.flow.row(row(list));
      desk.flow.space(4);
    },
  };
}
