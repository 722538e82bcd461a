// Blocks of plain words: headings, paragraphs, bullets, and the two kinds of room to write: lines and signatures.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { gap, type Row, rowHeight, textStrips } from '../page-flow.ts';
import type { Desk, Plan } from '../plan.ts';
import { ink, ruleInk, type } from '../type-scale.ts';

type Block<Kind extends SheetBlock['kind']> = Extract<SheetBlock, { kind: Kind }>;

export function planHeading(desk: Desk, block: Block<'heading'>): Plan {
  const { pen, frame } = desk;
  const isMain = block.level === 2;
  const style = isMain ? type.heading2 : type.heading3;
  const above = isMain ? 12 : 7;
  const below = isMain ? 3 : 1;
  const row: Row = {
    columns: [
      {
        x: frame.left,
        strips: textStrips(pen, pen.lines(block.text, frame.width, style), style),
        element: () => pen.element(desk.root, `H${block.level}`),
      },
    ],
    padBottom: isMain ? 2.5 : 1,
    ...(isMain ? { after: (_, bottom) => pen.rule(frame.left, bottom, frame.right, bottom, 0.9, ink) } : {}),
  };
  return {
    lead: above + rowHeight(row) + below,
    leansOnNext: true,
    draw: () => {
      desk.flow.space(above);
      desk.flow.row(row);
      desk.flow.space(below);
    },
  };
}

const paragraphStyles = { none: type.body, strong: type.bodyStrong, quiet: type.bodyQuiet } as const;

export function planParagraph(desk: Desk, block: Block<'paragraph'>): Plan {
  const { pen, frame } = desk;
  const style = paragraphStyles[block.emphasis];
  const strips = textStrips(pen, pen.lines(block.text, frame.width, style), style);
  const row: Row = {
    columns: [{ x: frame.left, strips, element: () => pen.element(desk.root, 'P') }],
    mayPart: strips.length > 5,
  };
  const above = 2;
  return {
    // What may be parted begins with a few lines; what may not needs its whole height.
    lead: above + (row.mayPart ? 3 * style.lineHeight : rowHeight(row)),
    leansOnNext: false,
    draw: () => {
      if (strips.length === 0) return;
      desk.flow.space(above);
      desk.flow.row(row);
      desk.flow.space(3);
    },
  };
}

export function planBullets(desk: Desk, block: Block<'bullets'>): Plan {
  const { pen, frame } = desk;
  const indent = 12;
  const items = block.items.map((item) => textStrips(pen, pen.lines(item, frame.width - indent, type.body), type.body));
  const style = type.body;
  const itemGap = 1.5;
  const firstLines = items[0]?.length ?? 0;
  return {
    lead: (firstLines > 5 ? 2 : firstLines) * style.lineHeight + itemGap,
    leansOnNext: false,
    draw: () => {
      if (items.length === 0) return;
      const list = pen.element(desk.root, 'L');
      for (const strips of items) {
        const item = pen.element(list, 'LI');
        desk.flow.row({
          columns: [
            { x: frame.left, strips: textStrips(pen, ['–'], style), element: () => pen.element(item, 'Lbl') },
            { x: frame.left + indent, strips, element: () => pen.element(item, 'LBody') },
          ],
          padBottom: itemGap,
          mayPart: strips.length > 5,
        });
      }
      desk.flow.space(3);
    },
  };
}

export function planBlankLines(desk: Desk, block: Block<'blank-lines'>): Plan {
  const { pen, frame } = desk;
  const lineRoom = 23;
  const label = textStrips(pen, pen.lines(block.label, frame.width, type.bodyQuiet), type.bodyQuiet);
  return {
    lead: label.length * type.bodyQuiet.lineHeight + Math.min(3, block.count) * lineRoom,
    leansOnNext: false,
    draw: (following) => {
      desk.flow.need(label.length * type.bodyQuiet.lineHeight + Math.min(3, block.count) * lineRoom);
      if (label.length > 0)
        desk.flow.row({ columns: [{ x: frame.left, strips: label, element: () => pen.element(desk.root, 'P') }] });
      const fitting = Math.floor((desk.flow.room() - following - 16) / lineRoom);
      const count = block.fillsPage ? Math.max(block.count, fitting) : block.count;
      for (let line = 0; line < count; line += 1) {
        desk.flow.row({
          columns: [{ x: frame.left, strips: [gap(lineRoom)], element: null }],
          after: (_, bottom) => pen.rule(frame.left, bottom - 1, frame.right, bottom - 1, 0.5, ruleInk),
        });
      }
      desk.flow.space(6);
    },
  };
}

export function planSignatures(desk: Desk, block: Block<'signatures'>): Plan {
  const { pen, frame } = desk;
  const gutter = 24;
  const perRow = Math.min(2, Math.max(1, block.labels.length));
  const width = (frame.width - gutter * (perRow - 1)) / perRow;
  const rows: Row[] = [];
  for (let start = 0; start < block.labels.length; start += perRow) {
    const columns = block.labels.slice(start, start + perRow).map((label, index) => ({
      x: frame.left + index * (width + gutter),
      strips: textStrips(pen, pen.lines(label, width, type.smallQuiet), type.smallQuiet),
      down: 34,
      element: () => pen.element(desk.root, 'P'),
    }));
    rows.push({
      columns,
      before: (top) => {
        for (const column of columns) pen.rule(column.x, top + 32, column.x + width, top + 32, 0.7, ink);
      },
    });
  }
  return {
    lead: rows[0] ? rowHeight(rows[0]) : 0,
    leansOnNext: false,
    draw: () => {
      for (const row of rows) desk.flow.row(row);
      desk.flow.space(8);
    },
  };
}
