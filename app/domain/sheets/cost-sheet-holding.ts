// Parts of the cost sheet: what holding came to under the vehicle's own terms, payments to the lender, and cores owed and returned.
import type { Shop } from '../fleet/shop.ts';
import { dayCountNames } from '../money/day-count.ts';
import { type VehicleHolding, vehicleHolding } from '../money/vehicle-holding.ts';
import { type Cents, showCents } from '../shared/cents.ts';
import { type DayForm, showDay, showDaysIn } from '../shared/show-day.ts';
import { plural } from '../shared/text.ts';
import type { VehicleReckoning } from '../vehicle/reckon.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { SheetBlock } from './sheet.ts';
import { plain, quiet, strong } from './sheet-words.ts';

/** '8.4 %' for 84,000 parts per million. */
export function showRate(ppm: number): string {
  return `${(ppm / 10_000).toLocaleString('en', { maximumFractionDigits: 4 })} %`;
}

function spanTable({ funding, fundingCost }: VehicleHolding, dayForm: DayForm): SheetBlock[] {
  if (funding === null || fundingCost === null) return [];
  const { plan, draw } = funding;
  const rows = fundingCost.spans.map((span) => [
    plain(showDay(span.from, dayForm)),
    plain(showDay(span.to, dayForm)),
    plain(`${span.days}`),
    plain(showCents(span.balanceCents)),
    span.ratePpm === 0 ? quiet('free') : plain(showRate(span.ratePpm)),
  ]);
  return [
    {
      kind: 'paragraph',
      text: `${plan.name}: ${showCents(draw.principalCents)} drawn on ${showDay(draw.drawnOn, dayForm)}, ${dayCountNames[plan.dayCount]}, ${plural(plan.freeDays, 'day', 'days')} free.`,
      emphasis: 'none',
    },
    {
      kind: 'table',
      caption: 'Nights with one balance and one rate',
      columns: [
        { title: 'From', share: 22, align: 'left' },
        { title: 'To', share: 22, align: 'left' },
        { title: 'Nights', share: 14, align: 'right' },
        { title: 'Balance', share: 24, align: 'right' },
        { title: 'Rate a year', share: 18, align: 'right' },
      ],
      rows,
      whenEmpty: 'No night has passed since the draw.',
      rowRoom: 'text',
    },
  ];
}

function sumTable(holding: VehicleHolding, heldDays: number, shop: Shop): SheetBlock {
  const { rates } = shop;
  const line = (what: string, how: string, cents: Cents) => [plain(what), quiet(how), plain(showCents(cents))];
  const { funding, fundingCost } = holding;
  return {
    kind: 'table',
    caption: 'What holding came to',
    columns: [
      { title: 'Holding', share: 40, align: 'left' },
      { title: 'Reckoned from', share: 40, align: 'left' },
      { title: 'Amount', share: 20, align: 'right' },
    ],
    rows: [
      ...(funding === null || fundingCost === null
        ? []
        : [
            line(`Interest under ${funding.plan.name}`, 'the nights above, rounded once', fundingCost.interestCents),
            line(`Fee of ${funding.plan.name}`, 'once, at the draw', fundingCost.drawFeeCents),
          ]),
      line(
        'Interest on own money',
        `${showRate(rates.fundingRatePpm)} a year, ${dayCountNames[rates.dayCount]}, on what no plan lent`,
        holding.ownInterestCents,
      ),
      line(
        'Lot',
        `${plural(heldDays, 'day', 'days')} at ${showCents(rates.overheadCentsPerDay)}`,
        holding.overheadCents,
      ),
      [strong('Holding together'), plain(''), strong(showCents(holding.totalCents))],
    ],
    whenEmpty: '',
    rowRoom: 'text',
  };
}

function paymentTable({ costs, today }: VehicleReckoning, isSold: boolean, dayForm: DayForm): SheetBlock[] {
  if (costs.payments.length === 0) return [];
  const rows = costs.payments.map((payment) => {
    const isDue = payment.dueOn <= today;
    return [
      isDue ? plain(showDay(payment.dueOn, dayForm)) : strong(showDay(payment.dueOn, dayForm)),
      plain(showDaysIn(payment.what, dayForm)),
      plain(showCents(payment.cents)),
      plain(showCents(payment.balanceAfterCents)),
      isDue ? quiet('was due') : strong('will be due'),
    ];
  });
  return [
    { kind: 'heading', level: 3, text: isSold ? 'Payments to the lender before the sale' : 'Payments to the lender' },
    {
      kind: 'table',
      caption: 'Payments on the principal, and what is owed after each',
      columns: [
        { title: 'On', share: 18, align: 'left' },
        { title: 'What', share: 34, align: 'left' },
        { title: 'Amount', share: 16, align: 'right' },
        { title: 'Owed after it', share: 16, align: 'right' },
        { title: '', share: 16, align: 'left' },
      ],
      rows,
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}

export function holdingBlocks(vehicle: Vehicle, reckoning: VehicleReckoning, shop: Shop): SheetBlock[] {
  const { held, today } = reckoning;
  const { sale } = vehicle;
  const until = sale?.paidOffOn ?? sale?.soldOn ?? today;
  const holding = vehicleHolding(vehicle, shop, { until, heldDays: held.heldDays });
  return [
    { kind: 'heading', level: 2, text: 'Holding' },
    ...spanTable(holding, shop.dealer.dayForm),
    sumTable(holding, held.heldDays, shop),
    ...paymentTable(reckoning, sale !== null, shop.dealer.dayForm),
  ];
}

/** Cores: what was charged on each part, and whether the old unit has gone back. */
export function coreBlocks({ parts }: Vehicle, dayForm: DayForm): SheetBlock[] {
  const charged = parts.filter((part) => part.coreChargeCents > 0 && part.returnedOn === null);
  if (charged.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Cores' },
    {
      kind: 'table',
      caption: 'Core charges, and whether the old unit has gone back',
      columns: [
        { title: 'Part', share: 36, align: 'left' },
        { title: 'Supplier', share: 24, align: 'left' },
        { title: 'Charge', share: 16, align: 'right' },
        { title: 'Old unit', share: 24, align: 'left' },
      ],
      rows: charged.map((part) => [
        plain(part.what),
        quiet(part.supplier),
        plain(showCents(part.coreChargeCents * part.quantity)),
        part.coreReturnedOn !== null
          ? plain(`returned ${showDay(part.coreReturnedOn, dayForm)}`)
          : part.receivedOn === null
            ? quiet('not charged yet')
            : strong('to be returned'),
      ]),
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}
