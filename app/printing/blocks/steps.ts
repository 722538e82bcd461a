// Things to tick off: a box, a number where the order counts, words, remarks, blanks to write in, a place for initials.
import type { SheetBlock, SheetStep } from '../../domain/sheets/sheet.ts';
import { type Column, gap, type Row, rowHeight, type Strip, textStrips } from '../page-flow.ts';
import type { Pen, StructureElement } from '../pen.ts';
import type { Desk, Plan } from '../plan.ts';
import { ink, paperWhite, quietInk, ruleInk, type, withColour } from '../type-scale.ts';

type Steps = Extract<SheetBlock, { kind: 'steps' }>;
type Mark = SheetStep['marks'][number];

const boxSize = 11;
const initialsWidth = 54;
const signSize = 8;
const cellGutter = 16;
/** Room to write by hand above a line. */
const blankHeight = 21;

const markStyles = { none: type.small, strong: type.smallStrong, quiet: type.smallQuiet } as const;

/** Strong remarks side by side with a small sign before each; any that is too long for one line has lines of its own. */
function markStrips(pen: Pen, marks: readonly Mark[], width: number): Strip[] {
  const strips: Strip[] = [];
  let line: { readonly x: number; readonly text: string; readonly mark: Mark }[] = [];
  let x = 0;
  const closeLine = () => {
    if (line.length === 0) return;
    const placed = line;
    strips.push({
      height: type.small.lineHeight,
      paint: (left, top) => {
        for (const one of placed) {
          const isStrong = one.mark.emphasis === 'strong';
          if (isStrong) pen.careSign(left + one.x, top + 2, signSize, ink, paperWhite);
          pen.line(one.text, left + one.x + (isStrong ? signSize + 3 : 0), top, markStyles[one.mark.emphasis]);
        }
      },
    });
    line = [];
    x = 0;
  };
  for (const mark of marks) {
    const style = markStyles[mark.emphasis];
    const lead = mark.emphasis === 'strong' ? signSize + 3 : 0;
    const lines = pen.lines(mark.text, width - lead, style);
    for (const text of lines) {
      const needed = lead + pen.width(text, style);
      if (lines.length > 1 || x + needed > width) closeLine();
      line.push({ x, text, mark });
      x += needed + 12;
    }
    if (lines.length > 1) closeLine();
  }
  closeLine();
  return strips;
}

/** Labels each followed by a line to write on. */
function blankStrips(pen: Pen, blanks: readonly string[], width: number): Strip[] {
  const style = type.smallQuiet;
  const lineLength = Math.min(78, width / 2);
  const strips: Strip[] = [];
  let line: { readonly x: number; readonly label: string }[] = [];
  let x = 0;
  const closeLine = () => {
    const placed = line;
    if (placed.length === 0) return;
    strips.push({
      height: blankHeight,
      paint: (left, top) => {
        for (const { x: offset, label } of placed)
          pen.line(`${label.trimEnd()} `, left + offset, top + blankHeight - style.lineHeight, style);
      },
    });
    line = [];
    x = 0;
  };
  for (const blank of blanks) {
    const label = pen.shortened(blank, width - lineLength - 4, style)[0] ?? '';
    const needed = pen.width(label, style) + 4 + lineLength;
    if (x + needed > width) closeLine();
    line.push({ x, label });
    x += needed + 14;
  }
  closeLine();
  return strips;
}

/** The lines themselves, where `blankStrips` has put the labels; kept apart because they are decoration. */
function blankRules(pen: Pen, blanks: readonly string[], width: number): { x: number; line: number; length: number }[] {
  const style = type.smallQuiet;
  const lineLength = Math.min(78, width / 2);
  const rules: { x: number; line: number; length: number }[] = [];
  let x = 0;
  let line = 0;
  for (const blank of blanks) {
    const label = pen.shortened(blank, width - lineLength - 4, style)[0] ?? '';
    const labelWidth = pen.width(label, style) + 4;
    if (x > 0 && x + labelWidth + lineLength > width) {
      line += 1;
      x = 0;
    }
    rules.push({ x: x + labelWidth, line, length: lineLength });
    x += labelWidth + lineLength + 14;
  }
  return rules;
}

/** What must be true first: a small box and its words, one after the other, led by a word. */
function needStrips(pen: Pen, needs: NonNullable<SheetStep['needs']>, width: number): Strip[] {
  if (needs.length === 0) return [];
  const style = type.small;
  const side = 6.4;
  const lead = 'First: ';
  const strips: Strip[] = [];
  let line: { readonly x: number; readonly text: string; readonly box: boolean | null }[] = [
    { x: 0, text: lead, box: null },
  ];
  let x = pen.width(lead, style) + 7;
  const closeLine = () => {
    const placed = line;
    if (placed.length === 0) return;
    strips.push({
      height: style.lineHeight + 1,
      paint: (left, top) => {
        for (const { x: offset, text, box } of placed) {
          const at = left + offset;
          if (box !== null) pen.frame(at, top + 2.6, side, side, 0.6, ink);
          if (box === true) pen.tick(at, top + 2, side + 1, 1.1, ink);
          pen.line(text, at + (box === null ? 0 : side + 4), top, style);
        }
      },
    });
    line = [];
    x = 0;
  };
  for (const need of needs) {
    const lines = pen.lines(need.text, width - side - 4, style);
    for (const [index, text] of lines.entries()) {
      const needed = side + 4 + pen.width(text, style);
      if (x + needed > width && line.length > 0) closeLine();
      line.push({ x, text: `${text.trimEnd()} `, box: index === 0 ? need.isMet : null });
      x += needed + 12;
    }
  }
  closeLine();
  return strips;
}

type Measured = { readonly step: SheetStep; readonly strips: readonly Strip[]; readonly blankRows: number };

function measureStep(desk: Desk, step: SheetStep, width: number): Measured {
  const { pen } = desk;
  const title = step.state === 'open' ? type.step : withColour({ ...type.step, font: 'regular' }, quietInk);
  const blanks = blankStrips(pen, step.blanks, width);
  return {
    step,
    blankRows: blanks.length,
    strips: [
      ...textStrips(pen, pen.lines(step.text, width, title), title),
      ...textStrips(pen, pen.lines(step.detail, width, type.small), type.small),
      ...markStrips(pen, step.marks, width),
      ...needStrips(pen, step.needs ?? [], width),
      ...blanks,
    ],
  };
}

type Cell = Pick<Row, 'columns'> & {
  readonly before: (top: number) => void;
  readonly after: (top: number, bottom: number) => void;
};

/** Where the parts of a step stand, from the left edge of its cell. */
type Layout = {
  readonly numberIn: number;
  readonly bodyIn: number;
  readonly cellWidth: number;
  readonly width: number;
};

const padTop = 4.5;

function layoutOf(desk: Desk, block: Steps): { readonly layout: Layout; readonly perRow: number } {
  // A plain list of things to tick is short of words: two abreast save half a page.
  const perRow = block.isNumbered || block.hasInitials ? 1 : 2;
  const cellWidth = (desk.frame.width - cellGutter * (perRow - 1)) / perRow;
  const numberIn = boxSize + 7;
  const lastNumber = (block.firstNumber ?? 1) + block.items.length - 1;
  // Room for two digits and a gap, and for more where the count goes on.
  const numberRoom = Math.max(17, desk.pen.width(`${lastNumber}`, type.step) + 6);
  const bodyIn = numberIn + (block.isNumbered ? numberRoom : 0);
  const width = cellWidth - bodyIn - (block.hasInitials ? initialsWidth + 12 : 0);
  return { layout: { numberIn, bodyIn, cellWidth, width }, perRow };
}

function planCell(
  desk: Desk,
  block: Steps,
  { step, strips, blankRows }: Measured,
  place: { readonly left: number; readonly number: number; readonly layout: Layout },
  item: StructureElement,
): Cell {
  const { pen } = desk;
  const { left, layout } = place;
  const number: Column = {
    x: left + layout.numberIn,
    strips: textStrips(pen, [`${place.number}`], step.state === 'open' ? type.step : withColour(type.step, quietInk)),
    element: () => pen.element(item, 'Lbl'),
  };
  const bodyLeft = left + layout.bodyIn;
  const body: Column = { x: bodyLeft, strips, element: () => pen.element(item, 'LBody') };
  const blankTop = strips.slice(0, strips.length - blankRows).reduce((sum, strip) => sum + strip.height, 0);
  const right = left + layout.cellWidth;
  return {
    columns: [...(block.isNumbered ? [number] : []), body],
    before: (top) => {
      const boxTop = top + padTop + 1.5;
      if (step.state !== 'left-out') pen.frame(left + 0.5, boxTop, boxSize, boxSize, 0.9, ink);
      if (step.state === 'done') pen.tick(left + 0.5, boxTop - 1, boxSize + 1, 1.7, ink);
    },
    after: (top, bottom) => {
      for (const rule of blankRules(pen, step.blanks, layout.width)) {
        const y = top + padTop + blankTop + (rule.line + 1) * blankHeight - 2;
        if (y < bottom) pen.rule(bodyLeft + rule.x, y, bodyLeft + rule.x + rule.length, y, 0.6, ink);
      }
      if (block.hasInitials && step.state === 'open')
        pen.rule(right - initialsWidth, bottom - 6, right, bottom - 6, 0.6, ink);
      pen.rule(left, bottom, right, bottom, 0.35, ruleInk);
    },
  };
}

function rowOfCells(cells: readonly Cell[], padBottom: number): Row {
  return {
    // The box is painted around the row, so an empty column keeps the room for it.
    columns: [...cells.flatMap((cell) => cell.columns), { x: 0, strips: [gap(boxSize + 3)], element: null }],
    padTop,
    padBottom,
    before: (top) => {
      for (const cell of cells) cell.before(top);
    },
    after: (top, bottom) => {
      for (const cell of cells) cell.after(top, bottom);
    },
  };
}

export function planSteps(desk: Desk, block: Steps): Plan {
  const { pen, frame, flow } = desk;
  const { layout, perRow } = layoutOf(desk, block);
  const steps = block.items.map((step) => measureStep(desk, step, layout.width));
  const padBottom = block.hasInitials ? 6 : 4;
  const head: Strip = {
    height: type.label.lineHeight,
    paint: (_, top) => {
      const words = 'initials';
      pen.line(words, frame.right - pen.width(words, type.label), top, type.label);
    },
  };
  const firstStrips = steps[0]?.strips ?? [];
  const firstHeight = rowHeight({ columns: [{ x: 0, strips: firstStrips, element: null }], padTop, padBottom });
  const drawAll = () => {
    const list = pen.element(desk.root, 'L');
    for (let start = 0; start < steps.length; start += perRow) {
      const cells = steps.slice(start, start + perRow).map((measured, index) => {
        const left = frame.left + index * (layout.cellWidth + cellGutter);
        const place = { left, number: (block.firstNumber ?? 1) + start + index, layout };
        return planCell(desk, block, measured, place, pen.element(list, 'LI'));
      });
      flow.row(rowOfCells(cells, padBottom));
    }
  };
  return {
    lead: firstHeight + (block.hasInitials ? head.height : 0),
    leansOnNext: false,
    draw: () => {
      if (steps.length === 0) return;
      if (block.hasInitials) {
        flow.need(firstHeight + head.height);
        flow.row({ columns: [{ x: 0, strips: [head], element: null }] });
        flow.whileRepeating(head, drawAll);
      } else drawAll();
      flow.space(4);
    },
  };
}
