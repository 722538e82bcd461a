// The sheet for the windscreen: one page, as large as its words allow. Everything shrinks together until it fits; where even the smallest
// size that is read from two metres is too large, the last remarks give way to a line that says how many there are.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { type Column, gap, type Row, rowHeight, type Strip, textStrips } from '../page-flow.ts';
import type { StructureElement } from '../pen.ts';
import type { Desk, Plan } from '../plan.ts';
import { ink, paperWhite, sized, type TextStyle, withColour } from '../type-scale.ts';

type WindowCard = Extract<SheetBlock, { kind: 'window-card' }>;

function style(font: TextStyle['font'], size: number, spacing = 1.16): TextStyle {
  return { font, size, lineHeight: size * spacing, colour: ink, tracking: 0 };
}

/**
 * Sizes in points at full scale. At two metres a letter of 10 mm spans 17 minutes of arc, three times what a good eye needs; capitals here
 * are two thirds of the size. Remarks never fall under 17 points, 4 mm (common practice, no source).
 */
const sizes = {
  number: style('semibold', 96, 1.04),
  name: style('semibold', 40),
  line: style('regular', 28),
  verdict: style('semibold', 46),
  price: style('semibold', 88, 1.08),
  toldTitle: style('semibold', 25),
  told: style('regular', 25, 1.2),
  more: style('regular', 17, 1.25),
} as const;
type Part = keyof typeof sizes;

const smallestTold = 17;
const scales = [1.3, 1.2, 1.1, 1, 0.94, 0.88, 0.82, 0.76, 0.7, smallestTold / sizes.told.size];

/** The style at this scale, made smaller where one line shall hold the text and it is too long. */
function fitted(desk: Desk, part: Part, scale: number, text: string, width: number): TextStyle {
  const base = sized(sizes[part], sizes[part].size * scale);
  const isOneLine = part === 'number' || part === 'price';
  const natural = desk.pen.width(desk.pen.clean(text), base);
  return isOneLine && natural > width ? sized(base, Math.max(26, (base.size * width) / natural)) : base;
}

type Built = { readonly rows: readonly (() => Row)[]; readonly height: number };

function build(desk: Desk, block: WindowCard, scale: number, toldCount: number): Built {
  const { pen, frame, root } = desk;
  const space = 13 * scale;
  const strips = (part: Part, text: string, width: number, colour = ink): Strip[] => {
    const found = withColour(fitted(desk, part, scale, text, width), colour);
    return textStrips(pen, pen.lines(text, width, found), found);
  };
  const plainRow = (tag: string, part: Part, text: string, padBottom = space): (() => Row)[] => {
    const made = strips(part, text, frame.width);
    if (made.length === 0) return [];
    return [() => ({ columns: [{ x: frame.left, strips: made, element: () => pen.element(root, tag) }], padBottom })];
  };
  const sign = sizes.verdict.size * scale;
  const bandEdge = 18;
  const textLeft = frame.left + bandEdge + sign + 16;
  const verdict = strips('verdict', block.verdict, frame.right - bandEdge - textLeft, block.isGood ? ink : paperWhite);
  const band = (): Row => ({
    columns: [{ x: textLeft, strips: verdict, element: () => pen.element(root, 'H2') }],
    padTop: 12 * scale,
    padBottom: 12 * scale,
    before: (top, bottom) => {
      const height = bottom - top;
      const signTop = top + 12 * scale + (sizes.verdict.lineHeight * scale - sign) / 2;
      if (block.isGood) {
        pen.frame(frame.left + 2, top + 2, frame.width - 4, height - 4, 4, ink);
        pen.frame(frame.left + 7, top + 7, frame.width - 14, height - 14, 1, ink);
        pen.tick(frame.left + bandEdge, signTop, sign, 7 * scale, ink);
      } else {
        pen.fill(frame.left, top, frame.width, height, ink);
        pen.cross(frame.left + bandEdge, signTop, sign, 7 * scale, paperWhite);
      }
    },
  });
  const spacer = (height: number) => (): Row => ({ columns: [{ x: 0, strips: [gap(height)], element: null }] });
  const shown = block.told.items.slice(0, toldCount);
  const left = block.told.items.length - shown.length;
  const toldRows = toldList(desk, [...shown, ...(left > 0 ? [`and ${left} more on the readiness sheet`] : [])], scale);
  const rows = [
    ...plainRow('H1', 'number', block.number, 2),
    ...plainRow('P', 'name', block.name, 3),
    ...block.lines.flatMap((line) => plainRow('P', 'line', line, 3)),
    spacer(space),
    band,
    spacer(space),
    ...plainRow('P', 'price', block.price, space),
    ...(shown.length === 0 ? [] : [...plainRow('H2', 'toldTitle', block.told.title, 4), ...toldRows, spacer(space)]),
    ...plainRow('P', 'more', block.more, 0),
  ];
  return { rows, height: rows.reduce((sum, row) => sum + rowHeight(row()), 0) };
}

function toldList({ pen, frame, root }: Desk, items: readonly string[], scale: number): readonly (() => Row)[] {
  const found = sized(sizes.told, Math.max(smallestTold, sizes.told.size * scale));
  const indent = found.size * 0.9;
  const made = { list: null as StructureElement | null };
  const list = () => (made.list ??= pen.element(root, 'L'));
  return items.map((item) => {
    const strips = textStrips(pen, pen.lines(item, frame.width - indent, found), found);
    const body: Column = {
      x: frame.left + indent,
      strips,
      element: () => pen.element(pen.element(list(), 'LI'), 'LBody'),
    };
    return () => ({
      columns: [body],
      padBottom: 5 * scale,
      before: (top) => {
        const size = found.size * 0.34;
        pen.fill(frame.left, top + (found.lineHeight - size) / 2, size, size, ink);
      },
    });
  });
}

/** The largest scale at which all of it fits; at the smallest, as many remarks as fit. */
function largestThatFits(desk: Desk, block: WindowCard, room: number): Built {
  for (const scale of scales) {
    const built = build(desk, block, scale, block.told.items.length);
    if (built.height <= room) return built;
  }
  const scale = scales[scales.length - 1] ?? 1;
  for (let count = block.told.items.length - 1; count > 0; count -= 1) {
    const built = build(desk, block, scale, count);
    if (built.height <= room) return built;
  }
  return build(desk, block, scale, 0);
}

export function planWindowCard(desk: Desk, block: WindowCard): Plan {
  return {
    lead: desk.flow.fullRoom(),
    leansOnNext: false,
    draw: () => {
      for (const row of largestThatFits(desk, block, desk.flow.room()).rows) desk.flow.row(row());
    },
  };
}
