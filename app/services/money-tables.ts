// The tables of Money as rows of cells, the first being the head. Amounts in the main unit, so that a spreadsheet can add them up.
import type { MoneyTable } from '../contract/money-view.ts';
import type { MoneyOverview } from '../domain/fleet/money-overview.ts';
import type { CsvCell } from '../domain/shared/csv.ts';
import { causesInOrder } from '../domain/time/cause.ts';

const amount = (cents: number) => cents / 100;

export function moneyTable(table: MoneyTable, overview: MoneyOverview): readonly (readonly CsvCell[])[] {
  const stockNumbers = new Map(overview.names.map(({ id, stockNumber }) => [id, stockNumber]));
  switch (table) {
    case 'due':
      return [
        ['Due on', 'Stock number', 'Amount', 'What'],
        ...overview.due.flatMap(({ payments }) =>
          payments.map((one) => [one.dueOn, stockNumbers.get(one.vehicleId) ?? '', amount(one.cents), one.what]),
        ),
      ];
    case 'open':
      return [
        ['Stock number', 'Vehicle', 'Days held', 'Tied up', 'Owed to lender', 'One more day costs'],
        ...overview.openVehicles.map((one) => [
          one.stockNumber,
          one.title,
          one.heldDays,
          amount(one.tiedUpCents),
          amount(one.owedCents),
          amount(one.nextDayCents),
        ]),
      ];
    case 'budgets':
      return [
        ['Group', 'Vehicles', 'Budget', 'Spent', 'Committed', 'To come', 'Left', 'Over'],
        ...overview.budgets.map((one) => [
          one.group ?? 'whole',
          one.vehicles,
          amount(one.budgetCents),
          amount(one.spentCents),
          amount(one.committedCents),
          amount(one.toComeCents),
          amount(one.leftCents),
          one.over.map(({ vehicleId }) => stockNumbers.get(vehicleId) ?? '').join(' '),
        ]),
      ];
    case 'ageing':
      return [
        ['From day', 'To day', 'Vehicles', 'Tied up'],
        ...overview.ageing.map((band) => [band.fromDays, band.toDays, band.vehicles, amount(band.tiedUpCents)]),
      ];
    case 'days-by-cause':
      return [
        ['Month of purchase', 'Vehicles', 'Days held', ...causesInOrder, 'Idle days cost'],
        ...overview.months.map((month) => [
          month.month,
          month.vehicles,
          month.heldDays,
          ...causesInOrder.map((cause) => month.byCause[cause] ?? 0),
          amount(month.idleCents),
        ]),
      ];
    case 'sold':
      return [
        [
          'Sold on',
          'Stock number',
          'Vehicle',
          'Days held',
          'Planned before holding and tax',
          'Earned before holding and tax',
          'Holding',
          'Tax',
          'Left',
        ],
        ...overview.sold.map((one) => [
          one.soldOn,
          one.stockNumber,
          one.title,
          one.heldDays,
          one.plannedCents === null ? null : amount(one.plannedCents),
          amount(one.earnedCents),
          amount(one.holdingCents),
          amount(one.taxCents),
          amount(one.madeCents),
        ]),
      ];
    case 'let-go':
      return [
        ['Stock number', 'Vehicle', 'Letting go is better by'],
        ...overview.letGo.map((one) => [one.stockNumber, one.title, amount(one.betterByCents)]),
      ];
    case 'slowest':
      return [
        ['Kind', 'Who', 'Cases', 'Middle case, days', 'Longest, days', 'Promised', 'Came late'],
        ...overview.slowest.map((one) => [
          one.kind,
          one.group,
          one.cases,
          one.medianDays,
          one.longestDays,
          one.promised,
          one.late,
        ]),
      ];
  }
}
