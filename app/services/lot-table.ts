// The Lot and the work of Next jobs as rows of cells, the first being the head. Amounts in the main unit; none where the role sees none.
import type { NextJobsView } from '../contract/next-jobs-view.ts';
import type { LotRow } from '../contract/views.ts';
import type { CsvCell } from '../domain/shared/csv.ts';
import { standingNames } from '../domain/time/cause.ts';

type Rows = readonly (readonly CsvCell[])[];

export function amountCell(cents: number | null): number | null {
  return cents === null ? null : cents / 100;
}

export function lotTable(rows: readonly LotRow[], shows: { money: boolean; asking: boolean; forecast: boolean }): Rows {
  const head = ['Stock number', 'VIN', 'Model year', 'Make', 'Model', 'Colour', 'Location', 'Key tag', 'Bought on'];
  const forecastHead = shows.forecast ? ['Likely ready on', 'Ready at the latest (80 %)'] : [];
  const moneyHead = shows.money ? ['Spent', 'Margin left', 'Margin expected', 'Break-even day'] : [];
  return [
    [
      ...head,
      'Days held',
      'Stands at',
      'Next move',
      'Gates that hold it',
      ...(shows.asking ? ['Asking price'] : []),
      ...forecastHead,
      ...moneyHead,
    ],
    ...rows.map(({ identity, held, money, ...row }): CsvCell[] => [
      identity.stockNumber,
      identity.vin,
      identity.modelYear,
      identity.make,
      identity.model,
      identity.colour,
      identity.location,
      identity.keyTag,
      row.boughtOn,
      held.heldDays,
      standingNames[held.now.standing],
      row.nextMove?.what ?? '',
      row.holdingGates,
      ...(shows.asking ? [amountCell(row.askingCents)] : []),
      ...(shows.forecast ? [row.forecast?.likelyOn ?? null, row.forecast?.safeOn ?? null] : []),
      ...(shows.money
        ? [
            amountCell(money?.spentCents ?? null),
            amountCell(money?.marginLeftCents ?? null),
            amountCell(money?.marginExpectedCents ?? null),
            money?.breakEvenOn ?? null,
          ]
        : []),
    ]),
  ];
}

/** What can be done first, in its order; then what waits, with its reason and no place. */
export function nextJobsTable({ order, waiting }: NextJobsView, seesMoney: boolean): Rows {
  const head = ['Place', 'Stock number', 'Vehicle', 'Location', 'Key tag', 'What', 'Minutes', 'For whom', 'Why'];
  return [
    [...head, ...(seesMoney ? ['Loss a day'] : [])],
    ...order.flatMap((vehicle, at) =>
      vehicle.tasks.map((task): CsvCell[] => [
        at + 1,
        vehicle.stockNumber,
        vehicle.title,
        vehicle.location,
        vehicle.keyTag,
        task.what,
        task.minutes,
        vehicle.share?.name ?? '',
        vehicle.why,
        ...(seesMoney ? [amountCell(vehicle.lossCentsPerDay)] : []),
      ]),
    ),
    ...waiting.flatMap((vehicle) =>
      vehicle.held.map((held): CsvCell[] => [
        null,
        vehicle.stockNumber,
        vehicle.title,
        vehicle.location,
        vehicle.keyTag,
        held.what,
        null,
        '',
        held.why,
        ...(seesMoney ? [null] : []),
      ]),
    ),
  ];
}
