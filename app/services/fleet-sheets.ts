// Sheets of many vehicles from the open fleet: gathers what each kind needs. Decides no rights: what comes in is already blanked.
import type { Shop } from '../domain/fleet/shop.ts';
import { assertNever } from '../domain/shared/assert-never.ts';
import { fleetState } from '../domain/sheets/fleet-frame.ts';
import { type FleetListRow, fleetListSheet } from '../domain/sheets/fleet-list-sheet.ts';
import { moneySummarySheet } from '../domain/sheets/money-summary-sheet.ts';
import { partsListSheet } from '../domain/sheets/parts-list-sheet.ts';
import type { FleetSheetKind, Sheet } from '../domain/sheets/sheet.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { FleetDesk } from './fleet-desk.ts';
import { overviewOf } from './money-commands.ts';

export type FleetSheetSource = {
  readonly desk: FleetDesk;
  /** The settings to print with; the paper may be another than the desk's. */
  readonly shop: Shop;
  readonly rows: readonly FleetListRow[];
  readonly vehicles: readonly Vehicle[];
  readonly seesPartPrices: boolean;
};

/** The state of the whole fleet and its settings: whatever part of it a sheet shows, this says whether anything has changed since. */
export function stateOfFleet({ store }: Pick<FleetDesk, 'store'>): number {
  const records = [...store.vehicles()].map(([id, { revision }]) => ({ id, revision }));
  return fleetState([...records, { id: 'shop', revision: store.shop()?.revision ?? 0 }]);
}

export function makeFleetSheet(
  kind: FleetSheetKind,
  source: FleetSheetSource,
  by: { readonly at: string; readonly by: string },
): Sheet {
  const { desk, shop, rows, vehicles, seesPartPrices } = source;
  const printed = { ...by, revision: stateOfFleet(desk) };
  switch (kind) {
    case 'fleet-list':
      return fleetListSheet(rows, shop, desk.today(), printed);
    case 'parts-list':
      return partsListSheet({ vehicles, seesPrices: seesPartPrices }, shop, desk.today(), printed);
    case 'money-summary':
      return moneySummarySheet(overviewOf(desk), shop, printed);
    default:
      return assertNever(kind, 'kind of fleet sheet');
  }
}

/** 'fleet-list-2026-03-18.pdf': one a day; the same day's is replaced. */
export function fleetSheetFileName(kind: FleetSheetKind, today: string): string {
  return `${kind}-${today}.pdf`;
}
