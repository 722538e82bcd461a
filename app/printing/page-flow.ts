// Places rows down the page and starts new pages. A row is kept whole unless it is taller than a page. Knows no block and no words.
import type { Pen, StructureElement } from './pen.ts';
import type { TextStyle } from './type-scale.ts';

/** Something of fixed height that is painted at a place. */
export type Strip = { readonly height: number; readonly paint: (x: number, y: number) => void };

export type Column = {
  readonly x: number;
  readonly strips: readonly Strip[];
  /** Distance from the row's top to the first strip. */
  readonly down?: number;
  /** The element that the column's content belongs to, made when the place is known; null for decoration. */
  readonly element: ((x: number, y: number) => StructureElement) | null;
};

export type Row = {
  readonly columns: readonly Column[];
  readonly padTop?: number;
  readonly padBottom?: number;
  readonly leastHeight?: number;
  /** May be parted between strips at the end of a page, as long paragraphs are. */
  readonly mayPart?: boolean;
  readonly before?: (top: number, bottom: number) => void;
  readonly after?: (top: number, bottom: number) => void;
};

export function textStrips(pen: Pen, lines: readonly string[], style: TextStyle): Strip[] {
  return lines.map((line) => ({ height: style.lineHeight, paint: (x, y) => pen.line(line, x, y, style) }));
}

export function gap(height: number): Strip {
  return { height, paint: () => undefined };
}

function stripsHeight(strips: readonly Strip[]): number {
  return strips.reduce((sum, strip) => sum + strip.height, 0);
}

export function rowHeight(row: Row): number {
  const content = Math.max(0, ...row.columns.map((column) => (column.down ?? 0) + stripsHeight(column.strips)));
  return Math.max(row.leastHeight ?? 0, (row.padTop ?? 0) + content + (row.padBottom ?? 0));
}

type Pending = { readonly column: Column; rest: readonly Strip[]; element: StructureElement | null; isBegun: boolean };

export class PageFlow {
  y: number;
  private readonly pen: Pen;
  private readonly top: number;
  private readonly bottom: number;
  /** Paints what is repeated on each new page (a table's head) and says how high it is. */
  private repeated: Strip | null = null;

  constructor(pen: Pen, top: number, bottom: number) {
    this.pen = pen;
    this.top = top;
    this.bottom = bottom;
    this.y = top;
  }

  private get isAtTop(): boolean {
    return this.y <= this.top + (this.repeated?.height ?? 0) + 0.01;
  }

  room(): number {
    return this.bottom - this.y;
  }

  fullRoom(): number {
    return this.bottom - this.top - (this.repeated?.height ?? 0);
  }

  breakPage(): void {
    this.pen.doc.addPage();
    this.y = this.top;
    const { repeated } = this;
    if (repeated === null) return;
    this.pen.decoration(() => repeated.paint(0, this.y), 'Pagination');
    this.y += repeated.height;
  }

  /** Starts a new page unless this much still fits; what fits on no page does not break twice. */
  need(height: number): void {
    if (height > this.room() && !this.isAtTop) this.breakPage();
  }

  /** Space that vanishes at the top of a page. */
  space(height: number): void {
    if (!this.isAtTop) this.y = Math.min(this.y + height, this.bottom);
  }

  whileRepeating(strip: Strip, draw: () => void): void {
    this.repeated = strip;
    draw();
    this.repeated = null;
  }

  row(row: Row): void {
    const height = rowHeight(row);
    const isPartable = row.mayPart === true || height > this.fullRoom();
    if (!isPartable) {
      this.need(height);
      this.part(row, this.begin(row), height);
      return;
    }
    const pending = this.begin(row);
    do {
      // Two lines at least on each side of a break, where the strips are lines.
      const least = (row.padTop ?? 0) + Math.max(...pending.map(({ rest }) => stripsHeight(rest.slice(0, 2))), 0);
      this.need(least);
      this.part(row, pending, null);
    } while (pending.some(({ rest }) => rest.length > 0));
  }

  private begin(row: Row): Pending[] {
    return row.columns.map((column) => ({ column, rest: column.strips, element: null, isBegun: false }));
  }

  /** Paints as much of each column as fits, or all of it at the given height. */
  private part(row: Row, pending: readonly Pending[], height: number | null): void {
    const top = this.y;
    const contentTop = top + (row.padTop ?? 0);
    const taken = pending.map(({ column, rest, isBegun }) => {
      const start = contentTop + (isBegun ? 0 : (column.down ?? 0));
      return height === null ? take(rest, this.bottom - (row.padBottom ?? 0) - start) : rest;
    });
    const reached = pending.map(({ column, isBegun }, index) => {
      const start = contentTop + (isBegun ? 0 : (column.down ?? 0));
      return start + stripsHeight(taken[index] ?? []);
    });
    const bottom = height === null ? Math.max(...reached) + (row.padBottom ?? 0) : top + height;
    if (row.before) this.pen.decoration(() => row.before?.(top, bottom));
    for (const [index, one] of pending.entries()) this.paintColumn(one, taken[index] ?? [], contentTop);
    if (row.after) this.pen.decoration(() => row.after?.(top, bottom));
    this.y = bottom;
  }

  private paintColumn(one: Pending, strips: readonly Strip[], contentTop: number): void {
    const { column } = one;
    const start = contentTop + (one.isBegun ? 0 : (column.down ?? 0));
    if (column.element !== null && one.element === null) one.element = column.element(column.x, start);
    one.isBegun = true;
    one.rest = one.rest.slice(strips.length);
    if (strips.length === 0) return;
    const paint = () => {
      let y = start;
      for (const strip of strips) {
        strip.paint(column.x, y);
        y += strip.height;
      }
    };
    if (one.element === null) this.pen.decoration(paint);
    else one.element.add(paint);
  }
}

/** The strips that fit; one at least, so that a strip taller than any page cannot stop the flow. */
function take(strips: readonly Strip[], room: number): readonly Strip[] {
  let height = 0;
  let count = 0;
  for (const strip of strips) {
    if (height + strip.height > room + 0.01 && count > 0) break;
    height += strip.height;
    count += 1;
    if (height > room) break;
  }
  return strips.slice(0, count);
}
