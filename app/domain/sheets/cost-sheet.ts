// The cost sheet for the manager, from purchase to sale: every line of cost, holding by the terms of its plan, cores, tax, the margin
// planned beside the margin made or expected, and the days. All amounts come from the reckoning. For nobody but the manager.
import type { Shop } from '../fleet/shop.ts';
import { type CostGroup, costGroups } from '../money/cost-lines.ts';
import { showCents } from '../shared/cents.ts';
import { addDays, type Day, laterDay } from '../shared/day.ts';
import { type DayForm, showDay } from '../shared/show-day.ts';
import { plural } from '../shared/text.ts';
import { causesInOrder, standingNames } from '../time/cause.ts';
import type { VehicleReckoning } from '../vehicle/reckon.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { type CostEntry, costEntries } from './cost-entries.ts';
import { coreBlocks, holdingBlocks } from './cost-sheet-holding.ts';
import { budgetBlocks, marginBlocks } from './cost-sheet-margin.ts';
import type { Sheet, SheetBlock } from './sheet.ts';
import { frameSheet, masthead, type Printing } from './sheet-frame.ts';
import { capitalised, plain, quiet, sentence, strong } from './sheet-words.ts';
import { type StripAxis, type StripOfDays, stripOfDays } from './strip-of-days.ts';

const groupTitles: Readonly<Record<CostGroup, string>> = {
  purchase: 'Purchase',
  fees: 'Fees',
  transport: 'Transport',
  parts: 'Parts',
  cores: 'Cores',
  labour: 'Labour',
  sublet: 'Sublet',
  codes: 'Codes',
  other: 'Other',
  interest: 'Interest',
  overhead: 'Lot',
};

function figures({ costs }: VehicleReckoning, vehicle: Vehicle): SheetBlock {
  const { sale } = vehicle;
  const margin = costs.marginExpectedCents;
  const items = [
    { label: 'Spent', value: showCents(costs.spentCents) },
    { label: 'Committed', value: showCents(costs.committedCents) },
    { label: 'Still to come', value: showCents(costs.toComeCents) },
    {
      label: sale === null ? 'Margin expected' : 'Margin made',
      value: margin === null ? 'no price' : showCents(margin),
    },
  ];
  return { kind: 'figures', items };
}

function vehicleFacts(vehicle: Vehicle, { held, costs }: VehicleReckoning, shop: Shop): SheetBlock {
  const { purchase, targets, sale } = vehicle;
  const plan = shop.fundingPlans.find(({ id }) => id === purchase.fundingPlanId);
  const price = targets.askingCents === null ? 'not set' : showCents(targets.askingCents);
  return {
    kind: 'facts',
    rows: [
      {
        label: 'Bought',
        value: `${showDay(purchase.boughtOn, shop.dealer.dayForm)}${purchase.source === '' ? '' : `, ${purchase.source}`}`,
      },
      { label: 'Held', value: plural(held.heldDays, 'day', 'days') },
      { label: 'Paid for by', value: plan?.name ?? 'own money' },
      { label: 'Asking price', value: price },
      ...(sale === null
        ? [
            {
              label: 'Margin used up after',
              value: costs.breakEvenOn === null ? 'not foreseeable' : showDay(costs.breakEvenOn, shop.dealer.dayForm),
            },
            { label: 'One more day costs', value: showCents(costs.nextDayCents) },
          ]
        : [
            {
              label: 'Sold',
              value: `${showDay(sale.soldOn, shop.dealer.dayForm)}${sale.buyer === '' ? '' : `, ${sale.buyer}`}`,
            },
            { label: 'Sold for', value: showCents(sale.priceCents) },
          ]),
    ],
  };
}

type Cells = { readonly text: string; readonly emphasis: 'none' | 'strong' | 'quiet' }[];

function amountCells(entries: readonly CostEntry[], isStrong: boolean): Cells {
  return (['spent', 'committed', 'to-come'] as const).map((state) => {
    const found = entries.filter((entry) => entry.state === state);
    if (found.length === 0) return plain('');
    const words = showCents(found.reduce((sum, { cents }) => sum + cents, 0));
    return isStrong ? strong(words) : plain(words);
  });
}

function groupRows(group: CostGroup, entries: readonly CostEntry[], dayForm: DayForm): Cells[] {
  const ofGroup = entries
    .filter((entry) => entry.group === group)
    .sort((a, b) => ((a.on ?? '9999') < (b.on ?? '9999') ? -1 : (a.on ?? '9999') > (b.on ?? '9999') ? 1 : 0));
  if (ofGroup.length === 0) return [];
  const rows = ofGroup.map(
    (entry, index): Cells => [
      index === 0 ? strong(groupTitles[group]) : plain(''),
      entry.on === null ? quiet('–') : plain(showDay(entry.on, dayForm)),
      plain(entry.what),
      quiet(entry.who),
      ...amountCells([entry], false),
    ],
  );
  if (ofGroup.length === 1) return rows;
  const total = [
    plain(''),
    plain(''),
    strong(`${groupTitles[group]} together`),
    plain(''),
    ...amountCells(ofGroup, true),
  ];
  return [...rows, total];
}

function costTable(vehicle: Vehicle, { costs, today }: VehicleReckoning, shop: Shop): SheetBlock[] {
  const entries = costEntries(vehicle, shop, costs, vehicle.sale?.soldOn ?? today);
  const total: Cells = [
    strong('All'),
    plain(''),
    strong('Everything together'),
    plain(''),
    strong(showCents(costs.spentCents)),
    strong(showCents(costs.committedCents)),
    strong(showCents(costs.toComeCents)),
  ];
  return [
    { kind: 'heading', level: 2, text: `What it cost, in ${shop.dealer.currency}` },
    {
      kind: 'table',
      caption: 'Every line of cost by group, with its day and who it concerns, and the sums',
      columns: [
        { title: 'Group', share: 12, align: 'left' },
        { title: 'Day', share: 13, align: 'left' },
        { title: 'What', share: 29, align: 'left' },
        { title: 'Who', share: 19, align: 'left' },
        { title: 'Spent', share: 12.5, align: 'right' },
        { title: 'Committed', share: 12.5, align: 'right' },
        { title: 'To come', share: 12.5, align: 'right' },
      ],
      rows: [...costGroups.flatMap((group) => groupRows(group, entries, shop.dealer.dayForm)), total],
      whenEmpty: '',
      rowRoom: 'text',
    },
    ...(costs.missing.length === 0
      ? []
      : [
          {
            kind: 'paragraph',
            text: sentence(`Not counted, because the record does not say: ${costs.missing.join('; ')}`),
            emphasis: 'strong',
          } as const,
        ]),
  ];
}

const marginAhead = 45;
const leastAround = 21;

/** From the purchase to a week after today or after the sale; as far as the margin lasts where that is not far off. */
function axisOf(
  { boughtOn, likelyOn, breakEvenOn }: StripOfDays,
  { sale }: Vehicle,
  today: Day,
  dayForm: DayForm,
): StripAxis {
  const end = sale?.soldOn ?? today;
  const marks = sale === null ? [likelyOn, breakEvenOn] : [];
  const near = marks.filter((day) => day !== null && day > end && day <= addDays(end, marginAhead));
  const to = [addDays(end, 7), addDays(boughtOn, leastAround), ...near].reduce<Day>(
    (last, day) => (day === null ? last : laterDay(last, day)),
    end,
  );
  return { from: boughtOn, to, today, dayForm };
}

function dayBlocks(vehicle: Vehicle, { held, costs, today }: VehicleReckoning, { dealer }: Shop): SheetBlock[] {
  const { dayForm } = dealer;
  const { boughtOn } = vehicle.purchase;
  const strip = stripOfDays({ boughtOn, held, ready: null, breakEvenOn: costs.breakEvenOn }, dayForm);
  const charged = causesInOrder.flatMap((cause) => {
    const days = held.byCause[cause] ?? 0;
    return days === 0 ? [] : [{ cause, days }];
  });
  const share = (days: number) => `${Math.round((days * 100) / Math.max(1, held.heldDays))} %`;
  const axis = axisOf(strip, vehicle, today, dayForm);
  // What the axis does not reach needs no explanation.
  const isOn = (day: Day | null) => day !== null && day >= axis.from && day <= axis.to;
  const marks = [
    ...(isOn(strip.likelyOn) ? (['forecast'] as const) : []),
    ...(vehicle.sale === null ? (['today'] as const) : []),
    ...(isOn(strip.breakEvenOn) ? (['breakEven'] as const) : []),
  ];
  return [
    { kind: 'heading', level: 2, text: 'Where the days went' },
    { kind: 'hold-strip', axis, strip },
    { kind: 'strip-legend', causes: charged.map(({ cause }) => cause), marks },
    {
      kind: 'table',
      caption: 'Days by what they were charged to',
      columns: [
        { title: 'Charged to', share: 60, align: 'left' },
        { title: 'Days', share: 20, align: 'right' },
        { title: 'Of all', share: 20, align: 'right' },
      ],
      rows: [
        ...charged.map(({ cause, days }) => [
          plain(capitalised(standingNames[cause])),
          plain(`${days}`),
          quiet(share(days)),
        ]),
        [strong('Held'), strong(`${held.heldDays}`), quiet('')],
      ],
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}

const footer = 'Internal: for the manager only. Not to be handed to a buyer, and not to be left in the vehicle.';

/** The cost sheet as the record stands on the reckoning's day, or on the day of the sale. All amounts in the shop's currency. */
export function costSheet(vehicle: Vehicle, reckoning: VehicleReckoning, shop: Shop, printed: Printing): Sheet {
  const blocks: SheetBlock[] = [
    masthead(vehicle.identity),
    figures(reckoning, vehicle),
    vehicleFacts(vehicle, reckoning, shop),
    ...marginBlocks(vehicle, reckoning, shop),
    ...dayBlocks(vehicle, reckoning, shop),
    ...costTable(vehicle, reckoning, shop),
    ...budgetBlocks(reckoning.costs, groupTitles),
    ...holdingBlocks(vehicle, reckoning, shop),
    ...coreBlocks(vehicle, shop.dealer.dayForm),
  ];
  return frameSheet('cost-sheet', 'Cost sheet', vehicle, shop, printed, { blocks, footer });
}
