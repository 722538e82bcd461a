// A table: head repeated on every page it reaches, rows kept whole, hairlines between them. Numbers stand right.
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { type Column, gap, type Row, rowHeight, type Strip, textStrips } from '../page-flow.ts';
import type { StructureElement } from '../pen.ts';
import type { Desk, Plan } from '../plan.ts';
import { ink, ruleInk, type TextStyle, type } from '../type-scale.ts';
import { paintStrip, paintStripAxis, stripAxisHeight, stripHeight } from './hold-strip.ts';

type Table = Extract<SheetBlock, { kind: 'table' }>;
type Cell = Table['rows'][number][number];
type Field = { readonly x: number; readonly width: number; readonly align: 'left' | 'right' };

const gutter = 10;
const writingRoom = 28;
const cellStyles = { none: type.small, strong: type.smallStrong, quiet: type.smallQuiet } as const;

function fieldsOf(desk: Desk, block: Table): readonly Field[] {
  const { frame } = desk;
  const shares = block.columns.reduce((sum, column) => sum + column.share, block.strips?.share ?? 0);
  const usable = frame.width - gutter * (block.columns.length - (block.strips ? 0 : 1));
  let x = frame.left;
  return block.columns.map((column) => {
    const width = (usable * column.share) / shares;
    const field = { x, width, align: column.align };
    x += width + gutter;
    return field;
  });
}

function cellStrips(desk: Desk, text: string, style: TextStyle, field: Field): Strip[] {
  const { pen } = desk;
  const lines = pen.lines(text, field.width, style);
  if (field.align === 'left') return textStrips(pen, lines, style);
  return lines.map((line) => ({
    height: style.lineHeight,
    paint: (x, y) => pen.line(line, x + field.width - pen.width(line, style), y, style),
  }));
}

type StripColumn = {
  readonly x: number;
  readonly width: number;
  readonly paintAxis: (top: number) => void;
  readonly head: (tableRow: StructureElement, down: number) => Column;
  readonly cell: (index: number, tableRow: StructureElement | null) => Column;
};

/** The column of strips takes what the others leave; its head is the axis, with its title under it only for a screen reader. */
function stripColumn(desk: Desk, block: Table, fields: readonly Field[]): StripColumn | null {
  const { pen, frame } = desk;
  const { strips } = block;
  if (strips === undefined) return null;
  const last = fields.at(-1);
  const x = last === undefined ? frame.left : last.x + last.width + gutter;
  const width = frame.right - x;
  const paintAxis = (top: number) => paintStripAxis(pen, strips.axis, { x, y: top, width, height: stripAxisHeight });
  return {
    x,
    width,
    paintAxis,
    head: (tableRow, down) => ({
      x,
      down,
      strips: [{ height: stripAxisHeight, paint: (_, top) => paintAxis(top) }],
      element: () => {
        const head = pen.element(tableRow, 'TH', { scope: 'Column', alt: strips.title });
        return head;
      },
    }),
    cell: (index, tableRow) => {
      const strip = strips.items[index];
      return {
        x,
        strips: [
          {
            height: stripHeight,
            paint: (_, top) => {
              if (strip) paintStrip(pen, strip, strips.axis, { x, y: top, width, height: stripHeight });
            },
          },
        ],
        element:
          tableRow === null
            ? null
            : (left, top) =>
                pen.element(pen.element(tableRow, 'TD'), 'Figure', {
                  alt: strip?.alternateText ?? '',
                  bbox: [left, top, left + width, top + stripHeight],
                }),
      };
    },
  };
}

export function planTable(desk: Desk, block: Table): Plan {
  const { pen, frame } = desk;
  if (block.rows.length === 0) {
    const strips = textStrips(pen, pen.lines(block.whenEmpty, frame.width, type.bodyQuiet), type.bodyQuiet);
    const row: Row = {
      columns: [{ x: frame.left, strips, element: () => pen.element(desk.root, 'P') }],
      padTop: 3,
      padBottom: 3,
    };
    return { lead: rowHeight(row), leansOnNext: false, draw: () => strips.length > 0 && desk.flow.row(row) };
  }
  const fields = fieldsOf(desk, block);
  const drawn = stripColumn(desk, block, fields);
  const heads = block.columns.map((column, index) => {
    const field = fields[index] ?? { x: frame.left, width: frame.width, align: 'left' };
    return { field, strips: cellStrips(desk, column.title, type.label, field) };
  });
  const headPad = { top: 3, bottom: 2.5 };
  const headLines = Math.max(...heads.map(({ strips }) => strips.length));
  const headText = Math.max(headLines * type.label.lineHeight, drawn === null ? 0 : stripAxisHeight);
  const headHeight = headPad.top + headText + headPad.bottom;
  const paintHeadRule = (top: number) =>
    pen.rule(frame.left, top + headHeight, frame.right, top + headHeight, 0.7, ink);

  const headRow = (table: StructureElement): Row => {
    const tableRow = pen.element(table, 'TR');
    return {
      columns: [
        ...heads.map(
          ({ field, strips }): Column => ({
            x: field.x,
            strips,
            // Heads stand on the line, however many lines each has.
            down: headText - strips.length * type.label.lineHeight,
            element: () => pen.element(tableRow, 'TH', { scope: 'Column' }),
          }),
        ),
        ...(drawn === null ? [] : [drawn.head(tableRow, headText + headPad.bottom - stripAxisHeight)]),
      ],
      padTop: headPad.top,
      padBottom: headPad.bottom,
      leastHeight: headHeight,
      after: paintHeadRule,
    };
  };
  const repeatedHead: Strip = {
    height: headHeight,
    paint: (_, top) => {
      for (const { field, strips } of heads) {
        let y = top + headPad.top + headText - strips.length * type.label.lineHeight;
        for (const strip of strips) {
          strip.paint(field.x, y);
          y += strip.height;
        }
      }
      drawn?.paintAxis(top + headHeight - stripAxisHeight);
      paintHeadRule(top);
    },
  };
  const rowOf = (cells: readonly Cell[], at: number, tableRow: StructureElement | null): Row => ({
    columns: [
      ...fields.map((field, index): Column => {
        const cell = cells[index];
        const strips = cell ? cellStrips(desk, cell.text, cellStyles[cell.emphasis], field) : [];
        return { x: field.x, strips, element: tableRow === null ? null : () => pen.element(tableRow, 'TD') };
      }),
      ...(drawn === null ? [] : [drawn.cell(at, tableRow)]),
      { x: 0, strips: [gap(type.small.lineHeight)], element: null },
    ],
    padTop: 3,
    padBottom: 3.5,
    leastHeight: block.rowRoom === 'writing' ? writingRoom : 0,
    after: (_, bottom) => {
      pen.rule(frame.left, bottom, frame.right, bottom, 0.35, ruleInk);
      if (block.rowRoom === 'text') return;
      for (const [index, field] of fields.entries())
        if ((cells[index]?.text ?? '') === '')
          pen.rule(field.x, bottom - 6, field.x + field.width, bottom - 6, 0.6, ink);
    },
  });
  const firstHeight = rowHeight(rowOf(block.rows[0] ?? [], 0, null));
  return {
    lead: headHeight + firstHeight,
    leansOnNext: false,
    draw: () => {
      const table = pen.element(desk.root, 'Table', { title: block.caption });
      desk.flow.need(headHeight + firstHeight);
      desk.flow.row(headRow(table));
      desk.flow.whileRepeating(repeatedHead, () => {
        for (const [index, cells] of block.rows.entries()) desk.flow.row(rowOf(cells, index, pen.element(table, 'TR')));
      });
      desk.flow.space(5);
    },
  };
}
