// Hold strips as vectors: a run of days in colour and hatch, the forecast hollow, today and the used-up margin marked, the axis above.
// Used for one vehicle over the whole width and, by the table, for a column of them.

import { addDays, type Day, dayFromNumber, dayNumber } from '../../domain/shared/day.ts';
import { monthName, showMonth } from '../../domain/shared/show-day.ts';
import type { SheetBlock } from '../../domain/sheets/sheet.ts';
import { daysBeforeAxis, type StripAxis, type StripOfDays, stripLookOf } from '../../domain/sheets/strip-of-days.ts';
import type { Pen } from '../pen.ts';
import type { Desk, Plan } from '../plan.ts';
import { paintHatch } from '../strip-hatch.ts';
import { ink, paperWhite, quietInk, ruleInk, type TextStyle, type } from '../type-scale.ts';

type HoldStripBlock = Extract<SheetBlock, { kind: 'hold-strip' }>;
type Place = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

const axisText: TextStyle = { ...type.label, font: 'regular', size: 6.8, lineHeight: 8, tracking: 0 };
/** Height of the axis above a column of strips: the months, and the days of the weeks where they fit. */
export const stripAxisHeight = 17;
/** The least height at which a strip's marks can still be told apart. */
export const stripHeight = 13;
const markHeight = 3;

type Scale = { readonly first: number; readonly end: number; readonly at: (number: number) => number };

function scaleOf(axis: StripAxis, { x, width }: Pick<Place, 'x' | 'width'>): Scale {
  const first = dayNumber(axis.from);
  const end = Math.max(first + 1, dayNumber(axis.to) + 1);
  return { first, end, at: (number) => x + ((number - first) * width) / (end - first) };
}

/** 1970-01-05, the fifth day, was a Monday. */
const isMonday = (number: number) => (number - 4) % 7 === 0;

function monthStarts({ first, end }: Scale): { readonly number: number; readonly day: Day }[] {
  const found: { number: number; day: Day }[] = [];
  for (let number = first; number < end; number += 1) {
    const day = dayFromNumber(number);
    if (day.endsWith('-01')) found.push({ number, day });
  }
  return found;
}

/** Months with their names, Mondays with their day where there is room, a triangle over today. Decoration: strips tell their days in words. */
export function paintStripAxis(pen: Pen, axis: StripAxis, { x, y, width }: Place): void {
  const scale = scaleOf(axis, { x, width });
  const bottom = y + stripAxisHeight;
  const starts = monthStarts(scale);
  const firstStart = starts[0] ? scale.at(starts[0].number) : x + width;
  // Without its year a month keeps its letters in every form: a bare 03 above days in digits would say nothing.
  const nameOf = (day: Day) => (day.slice(5, 7) === '01' ? showMonth(day, axis.dayForm) : monthName(day));
  if (firstStart - x > 16) pen.line(nameOf(axis.from), x + 1, y, axisText);
  for (const { number, day } of starts) {
    const at = scale.at(number);
    pen.rule(at, y + 1, at, bottom, 0.5, ruleInk);
    const name = nameOf(day);
    if (at + 3 + pen.width(name, axisText) <= x + width) pen.line(name, at + 2.5, y, axisText);
  }
  const week = scale.at(scale.first + 7) - x;
  const todayAt = scale.at(dayNumber(axis.today)) + (scale.at(scale.first + 1) - x) / 2;
  for (let number = scale.first; number < scale.end; number += 1) {
    if (!isMonday(number)) continue;
    const at = scale.at(number);
    pen.rule(at, bottom - 2, at, bottom, 0.4, ruleInk);
    const words = String(Number(dayFromNumber(number).slice(8)));
    const isFree = Math.abs(at + 4 - todayAt) > 7 && at + 9 <= x + width;
    if (week >= 12 && isFree) pen.line(words, at + 1, y + 7.5, axisText);
  }
  pen.doc
    .moveTo(todayAt - 2.6, bottom - 5)
    .lineTo(todayAt + 2.6, bottom - 5)
    .lineTo(todayAt, bottom)
    .closePath()
    .fill(ink);
}

function openAhead(pen: Pen, scale: Scale, bar: Place, from: number, to: Day, isSafe: boolean): void {
  const start = Math.max(from, scale.first);
  const end = Math.min(dayNumber(to) + 1, scale.end);
  if (end <= start) return;
  const inset = isSafe ? bar.height * 0.28 : 0.35;
  const [left, right] = [scale.at(start), scale.at(end)];
  const { doc } = pen;
  doc.save();
  doc
    .lineWidth(0.6)
    .strokeColor(quietInk)
    .dash(isSafe ? 0.9 : 2, { space: isSafe ? 1.2 : 1.2 });
  doc.moveTo(left, bar.y + inset).lineTo(right, bar.y + inset);
  // What runs past the end of the axis stays open there.
  if (dayNumber(to) < scale.end) doc.lineTo(right, bar.y + bar.height - inset);
  else doc.moveTo(right, bar.y + bar.height - inset);
  doc.lineTo(left, bar.y + bar.height - inset).stroke();
  doc.restore();
}

export function paintStrip(pen: Pen, strip: StripOfDays, axis: StripAxis, place: Place): void {
  const scale = scaleOf(axis, place);
  const bar: Place = { ...place, y: place.y + markHeight, height: place.height - markHeight - 1 };
  const { doc } = pen;
  for (const { number } of monthStarts(scale)) {
    const at = scale.at(number);
    pen.rule(at, place.y, at, place.y + place.height, 0.3, ruleInk);
  }
  let held = 0;
  for (const { cause, from, days } of strip.stretches) {
    held += days;
    const start = Math.max(dayNumber(from), scale.first);
    const end = Math.min(dayNumber(from) + days, scale.end);
    if (end <= start) continue;
    const [left, right] = [scale.at(start), scale.at(end)];
    paintHatch(pen, stripLookOf(cause), { x: left, y: bar.y, width: right - left, height: bar.height });
    if (start > scale.first) pen.rule(left, bar.y, left, bar.y + bar.height, 0.35, ink);
  }
  const ahead = Math.max(dayNumber(addDays(strip.boughtOn, held)), dayNumber(axis.today));
  if (strip.likelyOn !== null) openAhead(pen, scale, bar, ahead, strip.likelyOn, false);
  if (strip.safeOn !== null) {
    const after = strip.likelyOn === null ? ahead : Math.max(ahead, dayNumber(strip.likelyOn) + 1);
    openAhead(pen, scale, bar, after, strip.safeOn, true);
  }
  const today = scale.at(dayNumber(axis.today) + 0.5);
  pen.rule(today, place.y, today, place.y + place.height, 0.6, ink);
  if (strip.soldOn !== null && dayNumber(strip.soldOn) >= scale.first && dayNumber(strip.soldOn) < scale.end) {
    const at = scale.at(dayNumber(strip.soldOn));
    pen.rule(at, place.y + 1, at, place.y + place.height, 1.6, ink);
  }
  if (strip.breakEvenOn !== null) {
    const at = scale.at(dayNumber(strip.breakEvenOn) + 1);
    if (at >= place.x && at <= place.x + place.width + 0.01) paintBreakEven(pen, at, place);
  }
  const before = daysBeforeAxis(strip, axis);
  if (before > 0) {
    const words = `‹ ${before}`;
    const width = pen.width(words, axisText) + 3;
    doc.rect(place.x, bar.y + 0.4, width, bar.height - 0.8).fill(paperWhite);
    pen.line(words, place.x + 1, bar.y + (bar.height - axisText.lineHeight) / 2, { ...axisText, colour: ink });
  }
}

/** White around the mark, so that it stands out from whatever it lies on. */
export function paintBreakEven(pen: Pen, at: number, { y, height }: Pick<Place, 'y' | 'height'>): void {
  pen.rule(at, y + markHeight, at, y + height, 2, paperWhite);
  pen.rule(at, y + markHeight, at, y + height, 0.9, ink);
  pen.doc
    .moveTo(at - 3, y - 0.5)
    .lineTo(at + 3, y - 0.5)
    .lineTo(at, y + 4.5)
    .closePath()
    .fill(ink);
}

const largeStrip = 24;

export function planHoldStrip(desk: Desk, block: HoldStripBlock): Plan {
  const { pen, frame, root } = desk;
  const height = stripAxisHeight + largeStrip;
  const place = (top: number, part: number): Place => ({ x: frame.left, y: top, width: frame.width, height: part });
  return {
    lead: height + 4,
    leansOnNext: false,
    draw: () => {
      desk.flow.row({
        columns: [
          {
            x: frame.left,
            strips: [
              {
                height,
                paint: (_, top) => {
                  paintStripAxis(pen, block.axis, place(top, stripAxisHeight));
                  paintStrip(pen, block.strip, block.axis, place(top + stripAxisHeight, largeStrip));
                },
              },
            ],
            element: (left, top) =>
              pen.element(root, 'Figure', {
                alt: block.strip.alternateText,
                bbox: [left, top, left + frame.width, top + height],
              }),
          },
        ],
        padTop: 2,
        padBottom: 4,
      });
      desk.flow.space(4);
    },
  };
}
