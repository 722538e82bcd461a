// Photographs two abreast, none cut and none stretched, each with its caption under it. Where a file is missing the paper says so.
import type { SheetBlock, SheetPicture } from '../../domain/sheets/sheet.ts';
import type { OpenImage } from '../open-image.ts';
import { type Column, type Row, rowHeight, textStrips } from '../page-flow.ts';
import { millimetres } from '../page-frame.ts';
import type { Desk, Plan } from '../plan.ts';
import { ruleInk, type } from '../type-scale.ts';

type Pictures = Extract<SheetBlock, { kind: 'pictures' }>;

const perRow = 2;
const gutter = 14;
/** Three rows of them fit on a page of either paper, with their captions. */
const highest = millimetres(66);
const captionGap = 3;
const missing = 'The file of this photograph is missing or damaged.';

function figure({ pen, root }: Desk, image: OpenImage, item: SheetPicture, x: number, room: number): Column {
  const scale = Math.min(room / image.width, highest / image.height);
  const [width, height] = [image.width * scale, image.height * scale];
  return {
    x,
    strips: [
      {
        height,
        paint: (left, top) => {
          pen.doc.image(image, left, top, { width, height });
          // So that a light picture has an edge on white paper.
          pen.frame(left, top, width, height, 0.35, ruleInk);
        },
      },
    ],
    element: (left, top) =>
      pen.element(root, 'Figure', { alt: item.alternateText, bbox: [left, top, left + width, top + height] }),
  };
}

function planPicture(desk: Desk, item: SheetPicture, x: number, room: number): readonly Column[] {
  const { pen, root, pictures } = desk;
  const image = pictures.get(item.sha256);
  const words = textStrips(pen, pen.lines(item.caption, room, type.small), type.small);
  const caption = (down: number): Column => ({ x, strips: words, down, element: () => pen.element(root, 'P') });
  if (image === undefined) {
    const told = textStrips(pen, pen.lines(missing, room, type.smallItalic), type.smallItalic);
    const down = told.reduce((sum, strip) => sum + strip.height, captionGap);
    return [{ x, strips: told, element: () => pen.element(root, 'P') }, caption(down)];
  }
  const shown = figure(desk, image, item, x, room);
  return [shown, caption((shown.strips[0]?.height ?? 0) + captionGap)];
}

export function planPictures(desk: Desk, { items }: Pictures): Plan {
  const { frame, flow } = desk;
  const room = (frame.width - gutter * (perRow - 1)) / perRow;
  const rows: Row[] = [];
  for (let start = 0; start < items.length; start += perRow)
    rows.push({
      columns: items
        .slice(start, start + perRow)
        .flatMap((item, index) => planPicture(desk, item, frame.left + index * (room + gutter), room)),
      padTop: 4,
      padBottom: 6,
    });
  return {
    lead: rows[0] ? rowHeight(rows[0]) : 0,
    leansOnNext: false,
    draw: () => {
      for (const row of rows) flow.row(row);
    },
  };
}
