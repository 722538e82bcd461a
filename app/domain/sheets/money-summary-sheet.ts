// Ageing and money of the whole stock for the manager: what is tied up and how old, what falls due, where the days went, what was
// earned, and the usual measures with what each does not say. For whoever may see money only.
import type { MoneyOverview } from '../fleet/money-overview.ts';
import type { Dealer, Shop } from '../fleet/shop.ts';
import { type Cents, showCents, sumCents } from '../shared/cents.ts';
import { showDay, showDaysIn, showMonth } from '../shared/show-day.ts';
import { plural } from '../shared/text.ts';
import type { Cause } from '../time/cause.ts';
import { frameFleetSheet, vehicles } from './fleet-frame.ts';
import type { Sheet, SheetBlock } from './sheet.ts';
import type { Printing } from './sheet-frame.ts';
import { plain, quiet, strong } from './sheet-words.ts';

const left = (title: string, share: number) => ({ title, share, align: 'left' }) as const;
const right = (title: string, share: number) => ({ title, share, align: 'right' }) as const;
const heading = (text: string): SheetBlock => ({ kind: 'heading', level: 2, text });
const remark = (text: string): SheetBlock => ({ kind: 'paragraph', text, emphasis: 'quiet' });

function share(part: number, whole: number): string {
  return whole <= 0 ? '–' : `${Math.round((100 * part) / whole)} %`;
}

function ageingBlocks({ ageing, tiedUpCents, open }: MoneyOverview, currency: string): SheetBlock[] {
  return [
    heading('How old the stock is'),
    {
      kind: 'table',
      caption: 'Vehicles in stock and money tied up in them by days held',
      columns: [
        left('Days held', 30),
        right('Vehicles', 15),
        right('Of all', 12),
        right(`Tied up, ${currency}`, 28),
        right('Of all', 15),
      ],
      rows: [
        ...ageing.map((band) => [
          plain(band.toDays === null ? `${band.fromDays} and more` : `${band.fromDays} to ${band.toDays}`),
          plain(String(band.vehicles)),
          quiet(share(band.vehicles, open)),
          plain(showCents(band.tiedUpCents)),
          quiet(share(band.tiedUpCents, tiedUpCents)),
        ]),
        [strong('All'), strong(String(open)), quiet(''), strong(showCents(tiedUpCents)), quiet('')],
      ],
      whenEmpty: '',
      rowRoom: 'text',
    },
    remark(
      'The bands are the shop’s own. Tied up is what has been spent on a vehicle so far, not what it would bring.',
    ),
  ];
}

function ratio(value: number | null, decimals: number): string {
  return value === null ? 'cannot be said' : value.toFixed(decimals);
}

function measureBlocks({ measures }: MoneyOverview): SheetBlock[] {
  const { overDays } = measures;
  const rows = [
    [
      'Days’ supply',
      ratio(measures.daysSupply, 0),
      `${measures.inStock} in stock ÷ (${measures.sold} sold ÷ ${overDays} days). By the day: divided by a month’s sales it would be months. An average; it hides the vehicle that nobody wants behind those that sell at once.`,
    ],
    [
      'Turn a year',
      ratio(measures.turn, 1),
      `Cost of what was sold in ${overDays} days, brought to 365, ÷ average stock at cost. Never with selling prices, which flatter it. The average is of two days only, at what each vehicle has cost by now.`,
    ],
    [
      'Days to turn once',
      ratio(measures.daysToSell, 0),
      '365 ÷ turn. Weighted by money, so not the days that a vehicle is held.',
    ],
    [
      'Gross return',
      ratio(measures.grossReturn, 2),
      `Gross profit of these ${overDays} days for each 1 of average stock. Of the period, not of a year; before overhead and interest that is not charged to a vehicle.`,
    ],
  ] as const;
  return [
    heading(`Measures over the last ${overDays} days`),
    {
      kind: 'table',
      caption: 'Measures of the stock, how each is reckoned, and what it does not say',
      columns: [left('Measure', 20), right('Value', 14), left('How it is reckoned, and what it does not say', 66)],
      rows: rows.map(([name, value, trap]) => [plain(name), strong(value), quiet(trap)]),
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}

function dueBlocks({ due, dueThrough, names }: MoneyOverview, { currency, dayForm }: Dealer): SheetBlock[] {
  const numbers = new Map(names.map(({ id, stockNumber }) => [id, stockNumber]));
  const total = showCents(sumCents(due.map(({ cents }) => cents)));
  return [
    heading(`Due to lenders by ${showDay(dueThrough, dayForm)}${due.length === 0 ? '' : `: ${total}`}`),
    {
      kind: 'table',
      caption: 'Payments on the principal that fall due, by day',
      columns: [left('Due on', 18), left('Stock number', 18), left('What', 40), right(`Amount, ${currency}`, 24)],
      rows: due.flatMap(({ payments }) =>
        payments.map((one) => [
          plain(showDay(one.dueOn, dayForm)),
          strong(numbers.get(one.vehicleId) ?? ''),
          plain(showDaysIn(one.what, dayForm)),
          plain(showCents(one.cents)),
        ]),
      ),
      whenEmpty: 'No payment to a lender falls due.',
      rowRoom: 'text',
    },
    remark('If nothing is sold before. A vehicle that is sold is paid off at once; interest is not in these amounts.'),
  ];
}

const waitsOutside: readonly Cause[] = ['transit', 'part', 'code', 'sublet', 'paper'];

function dayBlocks({ months, all }: MoneyOverview, { currency, dayForm }: Dealer): SheetBlock[] {
  const cells = (of: typeof all) => {
    const outside = waitsOutside.reduce((sum, cause) => sum + (of.byCause[cause] ?? 0), 0);
    const ready = of.byCause.ready ?? 0;
    return [of.vehicles, of.heldDays, outside, of.heldDays - outside - ready - of.idleDays, ready, of.idleDays];
  };
  return [
    heading(`Where the days went: ${all.idleDays} of ${all.heldDays} idle`),
    {
      kind: 'table',
      caption:
        'Days held by month of purchase: waiting for others, in the shop’s own hands, ready, idle, and what the idle days cost',
      columns: [
        left('Bought in', 18),
        right('Vehicles', 11),
        right('Days held', 12),
        right('Waiting outside', 13),
        right('In the shop', 13),
        right('Ready', 10),
        right('Idle', 10),
        right(`Idle cost, ${currency}`, 18),
      ],
      rows: [
        ...months.map((month) => [
          plain(showMonth(month.month, dayForm)),
          ...cells(month).map((days) => plain(String(days))),
          plain(showCents(month.idleCents)),
        ]),
        [strong('All so far'), ...cells(all).map((days) => strong(String(days))), strong(showCents(all.idleCents))],
      ],
      whenEmpty: '',
      rowRoom: 'text',
    },
    remark(
      'Late months look better than they are: their vehicles are still held. Idle cost is the share of interest and lot cost.',
    ),
  ];
}

function soldBlocks({ sold, measures }: MoneyOverview, { currency, dayForm }: Dealer): SheetBlock[] {
  const made = sumCents(sold.map(({ madeCents }) => madeCents));
  const cell = (cents: Cents) => (cents < 0 ? strong(showCents(cents)) : plain(showCents(cents)));
  return [
    heading(
      `Sold in ${measures.overDays} days: ${vehicles(sold.length)}${sold.length === 0 ? '' : `, margin ${showCents(made)}`}`,
    ),
    {
      kind: 'table',
      caption: 'Vehicles sold, the margin made and the margin planned',
      columns: [
        left('Sold on', 14),
        left('Stock number', 14),
        left('Vehicle', 30),
        right('Days held', 10),
        right(`Made, ${currency}`, 16),
        right(`Planned, ${currency}`, 16),
      ],
      rows: sold.map((one) => [
        plain(showDay(one.soldOn, dayForm)),
        strong(one.stockNumber),
        plain(one.title),
        plain(String(one.heldDays)),
        cell(one.madeCents),
        one.plannedCents === null ? quiet('none set') : plain(showCents(one.plannedCents)),
      ]),
      whenEmpty: 'Nothing was sold.',
      rowRoom: 'text',
    },
  ];
}

function letGoBlocks({ letGo, notWeighed }: MoneyOverview, currency: string): SheetBlock[] {
  const rest =
    notWeighed === 0 ? '' : ` ${plural(notWeighed, 'vehicle', 'vehicles')} cannot be weighed for want of an input.`;
  return [
    heading('Better let go than finished'),
    {
      kind: 'table',
      caption: 'Vehicles for which selling to the trade now is better than finishing, and by how much',
      columns: [left('Stock number', 20), left('Vehicle', 50), right(`Better by, ${currency}`, 30)],
      rows: letGo.map((one) => [strong(one.stockNumber), plain(one.title), plain(showCents(one.betterByCents))]),
      whenEmpty: 'None.',
      rowRoom: 'text',
    },
    remark(`Reckoned from the prices and forecasts in the records.${rest}`),
  ];
}

/** The summary of a reckoned overview, as of its day. All of it is money: only for whoever may see that. */
export function moneySummarySheet(overview: MoneyOverview, shop: Shop, printed: Printing): Sheet {
  const { today, open, tiedUpCents } = overview;
  const { currency, dayForm } = shop.dealer;
  const old = overview.ageing.slice(Math.floor(overview.ageing.length / 2));
  const blocks: SheetBlock[] = [
    {
      kind: 'masthead',
      number: showCents(tiedUpCents),
      name: `${currency} tied up in ${vehicles(open)}, as of ${showDay(today, dayForm)}`,
      tags: [],
    },
    {
      kind: 'facts',
      rows: [
        { label: 'Owed to lenders', value: showCents(overview.owedToLendersCents) },
        { label: 'One more day costs', value: showCents(overview.nextDayCents) },
        {
          label: `Held ${old[0]?.fromDays ?? 0} days or more`,
          value: vehicles(old.reduce((sum, band) => sum + band.vehicles, 0)),
        },
      ],
    },
    ...ageingBlocks(overview, currency),
    ...measureBlocks(overview),
    ...dueBlocks(overview, shop.dealer),
    ...letGoBlocks(overview, currency),
    ...dayBlocks(overview, shop.dealer),
    ...soldBlocks(overview, shop.dealer),
  ];
  return frameFleetSheet('money-summary', 'Ageing and money', shop, printed, {
    subject: showDay(today, dayForm),
    orientation: 'portrait',
    blocks,
    footer: 'For the manager’s eyes. A reckoning from the records, no balance and no tax return.',
  });
}
