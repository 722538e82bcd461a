// The answer, large. Ready: a tick in a double frame. Not ready: white on black with a cross. Told apart without colour.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { type Row, rowHeight, textStrips } from '../page-flow.ts';
import type { Desk, Plan } from '../plan.ts';
import { ink, paperWhite, type, withColour } from '../type-scale.ts';

type Verdict = Extract<SheetBlock, { kind: 'verdict' }>;

const edge = 14;
const signSize = 26;

export function planVerdict(desk: Desk, block: Verdict): Plan {
  const { pen, frame } = desk;
  const textLeft = frame.left + edge + signSize + 12;
  const colour = block.isGood ? ink : paperWhite;
  const style = withColour(type.verdict, colour);
  const band: Row = {
    columns: [
      {
        x: textLeft,
        strips: textStrips(pen, pen.lines(block.text, frame.right - edge - textLeft, style), style),
        element: () => pen.element(desk.root, 'H2'),
      },
    ],
    padTop: 7,
    padBottom: 7,
    before: (top, bottom) => {
      const height = bottom - top;
      const signTop = top + (Math.min(height, type.verdict.lineHeight + 14) - signSize) / 2;
      if (block.isGood) {
        pen.frame(frame.left + 1, top + 1, frame.width - 2, height - 2, 2, ink);
        pen.frame(frame.left + 4, top + 4, frame.width - 8, height - 8, 0.6, ink);
        pen.tick(frame.left + edge, signTop, signSize, 4, ink);
      } else {
        pen.fill(frame.left, top, frame.width, height, ink);
        pen.cross(frame.left + edge, signTop, signSize, 4, paperWhite);
      }
    },
  };
  const reasonWidth = frame.right - edge - textLeft;
  const reasons = block.reasons.map((reason) => textStrips(pen, pen.lines(reason, reasonWidth, type.body), type.body));
  const rowOf = (index: number, element: () => ReturnType<typeof pen.element>): Row => ({
    columns: [{ x: textLeft, strips: reasons[index] ?? [], element }],
    padTop: index === 0 ? 5 : 1,
    padBottom: index === reasons.length - 1 ? 6 : 1,
    after: (top, bottom) => {
      if (block.isGood) return;
      pen.rule(frame.left + 0.5, top, frame.left + 0.5, bottom, 1, ink);
      pen.rule(frame.right - 0.5, top, frame.right - 0.5, bottom, 1, ink);
      if (index === reasons.length - 1) pen.rule(frame.left, bottom - 0.5, frame.right, bottom - 0.5, 1, ink);
      pen.fill(textLeft - 11, top + (index === 0 ? 5 : 1) + 5, 4, 4, ink);
    },
  });
  return {
    lead: rowHeight(band) + (reasons[0]?.length ?? 0) * type.body.lineHeight,
    leansOnNext: false,
    draw: () => {
      desk.flow.row(band);
      if (reasons.length > 0) {
        const list = pen.element(desk.root, 'L');
        for (const index of reasons.keys())
          desk.flow.row(rowOf(index, () => pen.element(pen.element(list, 'LI'), 'LBody')));
      }
      desk.flow.space(9);
    },
  };
}
