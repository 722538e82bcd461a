// The fleet as a list: what each vehicle waits for, whose move it is, and its hold strip under one axis for all. Money only when given.
import type { Shop } from '../fleet/shop.ts';
import { type Cents, showCents } from '../shared/cents.ts';
import type { Day } from '../shared/day.ts';
import type { Identifier } from '../shared/identifier.ts';
import { type DayForm, showDay, showDaysIn } from '../shared/show-day.ts';
import { causesInOrder, standingNames } from '../time/cause.ts';
import type { HeldDays } from '../time/held-days.ts';
import { frameFleetSheet, vehicles as vehiclesOf } from './fleet-frame.ts';
import type { Sheet, SheetBlock } from './sheet.ts';
import type { Printing } from './sheet-frame.ts';
import { joined, plain, quiet, strong } from './sheet-words.ts';
import { stripAxis, stripOfDays } from './strip-of-days.ts';

/** A vehicle as far as the list tells of it; a row of the lot, already without what the role may not see, is one. */
export type FleetListRow = {
  readonly id: Identifier;
  readonly identity: {
    readonly stockNumber: string;
    readonly modelYear: number | null;
    readonly make: string;
    readonly model: string;
    readonly colour: string;
    readonly location: string;
  };
  readonly boughtOn: Day;
  readonly held: HeldDays;
  readonly nextMove: { readonly who: string; readonly what: string } | null;
  readonly isReady: boolean;
  readonly forecast: { readonly likelyOn: Day; readonly safeOn: Day } | null;
  readonly money: { readonly marginLeftCents: Cents | null; readonly breakEvenOn: Day | null } | null;
};

const byNumber = new Intl.Collator('en', { numeric: true });
const left = (title: string, share: number) => ({ title, share, align: 'left' }) as const;
const right = (title: string, share: number) => ({ title, share, align: 'right' }) as const;

/** Longer remarks would make the rows so high that the strips no longer read as one picture; the whole stands at the vehicle. */
const longestRemark = 44;

function shortened(remark: string): string {
  if (remark.length <= longestRemark) return remark;
  const cut = remark.slice(0, longestRemark);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), longestRemark / 2)).replace(/[\s,;:.]+$/, '')} …`;
}

function nameOf({ identity }: FleetListRow): string {
  const { modelYear, make, model } = identity;
  return [modelYear, make, model].filter((part) => part !== null && part !== '').join(' ');
}

function standsAt(row: FleetListRow, dayForm: DayForm) {
  const { standing, what, expectedOn } = row.held.now;
  const until = expectedOn === null ? '' : `by ${showDay(expectedOn, dayForm)}`;
  const words = joined([
    standingNames[standing],
    shortened(showDaysIn(what, dayForm)),
    standing === 'sold' ? '' : until,
  ]);
  return standing === 'idle' ? strong(words) : plain(words);
}

function nextOf({ nextMove, held }: FleetListRow) {
  if (nextMove === null || held.now.standing === 'sold') return quiet('');
  return plain(nextMove.who);
}

function readyBy({ forecast, isReady, held }: FleetListRow, dayForm: DayForm) {
  if (held.now.standing === 'sold') return quiet('');
  if (isReady) return strong('ready');
  return forecast === null ? quiet('not known') : plain(showDay(forecast.likelyOn, dayForm));
}

/** Those the longest held first among what is in stock, sold ones last. Equal ones by stock number. */
function inOrder(rows: readonly FleetListRow[]): readonly FleetListRow[] {
  const isSold = (row: FleetListRow) => Number(row.held.now.standing === 'sold');
  return rows.toSorted(
    (a, b) =>
      isSold(a) - isSold(b) ||
      b.held.heldDays - a.held.heldDays ||
      byNumber.compare(a.identity.stockNumber, b.identity.stockNumber),
  );
}

/**
 * The list of these vehicles as of today. Whether money, forecasts and the margin's end are told depends on whether the rows hold them.
 * Landscape, so that the strips have room for a day each.
 */
export function fleetListSheet(given: readonly FleetListRow[], shop: Shop, today: Day, printed: Printing): Sheet {
  const { currency, dayForm } = shop.dealer;
  const rows = inOrder(given);
  const strips = rows.map((row) =>
    stripOfDays(
      {
        boughtOn: row.boughtOn,
        held: row.held,
        ready: row.isReady ? null : row.forecast,
        breakEvenOn: row.money?.breakEvenOn ?? null,
      },
      dayForm,
    ),
  );
  const seesMoney = rows.some(({ money }) => money !== null);
  const seesForecast = rows.some(({ forecast }) => forecast !== null);
  const causes = causesInOrder.filter((cause) => rows.some(({ held }) => (held.byCause[cause] ?? 0) > 0));
  const count = (is: (row: FleetListRow) => boolean) => String(rows.filter(is).length);
  const axis = stripAxis(strips, today, dayForm);
  const hasBefore = rows.some(({ boughtOn }) => boughtOn < axis.from);
  const open = rows.filter(({ held }) => held.now.standing !== 'sold').length;
  const blocks: SheetBlock[] = [
    {
      kind: 'masthead',
      number: vehiclesOf(rows.length),
      name: `${open === rows.length ? 'In stock' : `${open} in stock, ${rows.length - open} sold`}, as of ${showDay(today, dayForm)}, the longest held first`,
      tags: [
        { label: 'Ready', value: count(({ isReady, held }) => isReady && held.now.standing !== 'sold') },
        { label: 'Idle today', value: count(({ held }) => held.now.standing === 'idle') },
        { label: 'Waiting outside', value: count(({ held }) => isOutside(held.now.standing)) },
      ],
    },
    {
      kind: 'strip-legend',
      causes,
      marks: [
        'today',
        ...(strips.some(({ likelyOn }) => likelyOn !== null) ? (['forecast'] as const) : []),
        ...(seesMoney ? (['breakEven'] as const) : []),
        ...(hasBefore ? (['before'] as const) : []),
      ],
    },
    {
      kind: 'table',
      caption: 'Vehicles with what each waits for and a hold strip: a cell a day from purchase to today by cause',
      columns: [
        left('Stock number', 8),
        left('Vehicle', 21),
        right('Days held', 5),
        left('Stands at', 29),
        left('Next move', 11),
        ...(seesForecast ? [left('Likely ready', 12)] : []),
        ...(seesMoney ? [right(`Margin left, ${currency}`, 10)] : []),
      ],
      rows: rows.map((row) => [
        strong(row.identity.stockNumber),
        plain(joined([nameOf(row), row.identity.location])),
        plain(String(row.held.heldDays)),
        standsAt(row, dayForm),
        nextOf(row),
        ...(seesForecast ? [readyBy(row, dayForm)] : []),
        ...(seesMoney ? [marginCell(row.money?.marginLeftCents ?? null)] : []),
      ]),
      whenEmpty: 'No vehicle is in stock.',
      rowRoom: 'text',
      strips: {
        title: 'Hold strip',
        share: seesMoney ? 56 : 64,
        axis,
        items: strips,
      },
    },
  ];
  return frameFleetSheet('fleet-list', 'Fleet list', shop, printed, {
    subject: showDay(today, dayForm),
    orientation: 'landscape',
    blocks,
    footer:
      'Every day is charged to one cause; the causes add up to the days held. A day likely ready is a forecast, not a promise.',
  });
}

function marginCell(cents: Cents | null) {
  if (cents === null) return quiet('no price set');
  return cents < 0 ? strong(showCents(cents)) : plain(showCents(cents));
}

const outside: readonly string[] = ['transit', 'part', 'code', 'sublet', 'paper'];

function isOutside(standing: string): boolean {
  return outside.includes(standing);
}
