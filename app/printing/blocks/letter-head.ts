// The beginning of a letter: to whom on the left, what identifies it on the right, and below what it is about, as the first heading.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { type Column, gap, type Row, rowHeight, textStrips } from '../page-flow.ts';
import { millimetres } from '../page-frame.ts';
import type { Desk, Plan } from '../plan.ts';
import { type } from '../type-scale.ts';

type LetterHead = Extract<SheetBlock, { kind: 'letter-head' }>;

const addresseeStyle = { ...type.body, size: 11.5, lineHeight: 15.5 };
const aboutStyle = { ...type.heading2, size: 16, lineHeight: 20 };
const addresseeShare = 0.52;
const gutter = 20;
const between = 3;

export function planLetterHead(desk: Desk, block: LetterHead): Plan {
  const { pen, frame } = desk;
  const left = frame.width * addresseeShare - gutter;
  const rightX = frame.left + frame.width * addresseeShare;
  const right = frame.right - rightX;
  const cells = block.rows.map(({ label, value }) => ({
    label: textStrips(pen, pen.lines(label, right, type.label), type.label),
    value: textStrips(pen, pen.lines(value, right, type.bodyStrong), type.bodyStrong),
  }));
  const heightOf = (strips: readonly { readonly height: number }[]) =>
    strips.reduce((sum, { height }) => sum + height, 0);
  let down = 0;
  const rows = cells.flatMap((cell): Column[] => {
    const labelDown = down;
    const valueDown = labelDown + heightOf(cell.label);
    down = valueDown + heightOf(cell.value) + between;
    const element = () => pen.element(desk.root, 'P');
    return [
      { x: rightX, strips: cell.label, down: labelDown, element },
      { x: rightX, strips: cell.value, down: valueDown, element },
    ];
  });
  const addressee: Column = {
    x: frame.left,
    strips: textStrips(pen, pen.lines(block.addressee, left, addresseeStyle), addresseeStyle),
    element: () => pen.element(desk.root, 'P'),
  };
  const head: Row = {
    columns: [addressee, ...rows],
    padTop: millimetres(12),
    padBottom: millimetres(9),
    // The address stands where the window of an envelope shows it, however short it is.
    leastHeight: millimetres(46),
  };
  const about: Row = {
    columns: [
      {
        x: frame.left,
        strips: textStrips(pen, pen.lines(block.about, frame.width, aboutStyle), aboutStyle),
        element: () => pen.element(desk.root, 'H1'),
      },
      { x: 0, strips: [gap(1)], element: null },
    ],
    padBottom: 6,
  };
  return {
    lead: rowHeight(head) + rowHeight(about),
    leansOnNext: false,
    draw: () => {
      desk.flow.row(head);
      desk.flow.row(about);
      desk.flow.space(4);
    },
  };
}
