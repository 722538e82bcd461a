// The legend of the hold strips: each cause with its colour and hatch and its name, then what the marks mean. Side by side, as many as fit.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { legendWords, stripLookOf } from '../../domain/sheets/strip-of-days.ts';
import type { Strip } from '../page-flow.ts';
import type { Desk, Plan } from '../plan.ts';
import { paintHatch } from '../strip-hatch.ts';
import { ink, ruleInk, type } from '../type-scale.ts';

type Legend = Extract<SheetBlock, { kind: 'strip-legend' }>;

const swatch = { width: 16, height: 8 };
const between = 12;
const style = type.small;

type Entry = { readonly words: string; readonly paintSign: ((x: number, y: number) => void) | null };

function entriesOf({ pen }: Desk, block: Legend): readonly Entry[] {
  const causes = legendWords.causes.filter(({ cause }) => block.causes.includes(cause));
  return [
    ...causes.map(
      ({ cause, name }): Entry => ({
        words: name,
        paintSign: (x, y) => {
          paintHatch(pen, stripLookOf(cause), { x, y, ...swatch });
          pen.frame(x, y, swatch.width, swatch.height, 0.3, ruleInk);
        },
      }),
    ),
    ...block.marks.map((mark): Entry => ({ words: legendWords[mark], paintSign: null })),
  ];
}

export function planStripLegend(desk: Desk, block: Legend): Plan {
  const { pen, frame, flow, root } = desk;
  const lines: { readonly x: number; readonly text: string; readonly entry: Entry }[][] = [[]];
  let x = 0;
  for (const entry of entriesOf(desk, block)) {
    const lead = entry.paintSign === null ? 0 : swatch.width + 4;
    const pieces = pen.lines(entry.words, frame.width - lead, style);
    const text = pieces.join(' ');
    const needed = lead + pen.width(text, style);
    if (x > 0 && x + needed > frame.width) {
      lines.push([]);
      x = 0;
    }
    lines.at(-1)?.push({ x, text, entry });
    x += needed + between;
  }
  const strips = lines.map(
    (line): Strip => ({
      height: style.lineHeight + 1.5,
      paint: (left, top) => {
        for (const one of line) {
          const sign = one.entry.paintSign;
          sign?.(left + one.x, top + 2);
          pen.line(one.text, left + one.x + (sign === null ? 0 : swatch.width + 4), top, { ...style, colour: ink });
        }
      },
    }),
  );
  const height = strips.reduce((sum, strip) => sum + strip.height, 0);
  return {
    lead: height,
    leansOnNext: false,
    draw: () => {
      flow.row({
        columns: [{ x: frame.left, strips, element: () => pen.element(root, 'P') }],
        padTop: 1,
        padBottom: 3,
      });
    },
  };
}
