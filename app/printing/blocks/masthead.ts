// The head of the first page: what the sheet is, the stock number large, the vehicle, and the few words needed to find it.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { type Column, gap, type Row, rowHeight, textStrips } from '../page-flow.ts';
import type { Desk, Plan } from '../plan.ts';
import { ink, sized, type TextStyle, type } from '../type-scale.ts';

type Masthead = Extract<SheetBlock, { kind: 'masthead' }>;

const largest = 38;
const smallest = 18;

/** The number as large as it fits on one line; below the smallest size it breaks instead. */
function numberStyle(desk: Desk, number: string, width: number): TextStyle {
  const base: TextStyle = { font: 'semibold', size: largest, lineHeight: largest * 1.06, colour: ink, tracking: 0 };
  const natural = desk.pen.width(desk.pen.clean(number), base);
  return natural <= width ? base : sized(base, Math.max(smallest, (largest * width) / natural));
}

function tagColumns(desk: Desk, tags: Masthead['tags'], right: number): Column[] {
  const { pen } = desk;
  const columns: Column[] = [];
  let x = right;
  for (const tag of [...tags].reverse()) {
    const natural = Math.max(
      pen.width(pen.clean(tag.label), type.label),
      pen.width(pen.clean(tag.value), type.tag),
      34,
    );
    const width = Math.min(natural, 118);
    const valueStyle = natural > width ? sized(type.tag, 14) : type.tag;
    x -= width;
    const label = textStrips(pen, pen.lines(tag.label, width, type.label), type.label);
    const value = textStrips(pen, pen.lines(tag.value, width, valueStyle), valueStyle);
    columns.unshift({ x, strips: [...label, ...value], down: 8, element: () => pen.element(desk.root, 'P') });
    x -= 22;
  }
  return columns;
}

export function planMasthead(desk: Desk, block: Masthead, title: string): Plan {
  const { pen, frame } = desk;
  const tags = tagColumns(desk, block.tags, frame.right);
  const textWidth = (tags[0] ? tags[0].x - 24 : frame.right) - frame.left;
  const number = numberStyle(desk, block.number, textWidth);
  const heading: Column = {
    x: frame.left,
    strips: [
      ...textStrips(pen, pen.lines(title, textWidth, type.title), type.title),
      ...textStrips(pen, pen.lines(block.number, textWidth, number), number),
    ],
    element: () => pen.element(desk.root, 'H1'),
  };
  const down = heading.strips.reduce((sum, strip) => sum + strip.height, 1);
  const name: Column = {
    x: frame.left,
    strips: textStrips(pen, pen.lines(block.name, textWidth, type.name), type.name),
    down,
    element: () => pen.element(desk.root, 'P'),
  };
  const row: Row = {
    columns: [heading, name, ...tags, { x: 0, strips: [gap(1)], element: null }],
    padBottom: 7,
    after: (top, bottom) => {
      pen.rule(frame.left, bottom, frame.right, bottom, 1.6, ink);
      for (const tag of tags) pen.rule(tag.x - 11, top + 10, tag.x - 11, bottom - 10, 0.6, ink);
    },
  };
  return {
    lead: rowHeight(row),
    leansOnNext: false,
    draw: () => {
      desk.flow.row(row);
      desk.flow.space(8);
    },
  };
}
