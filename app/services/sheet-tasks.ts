// One sheet to be made: its file name, whom it is about, and how it is made when its turn comes. Rights of printing are judged before.
import type { FleetSheetKind, Sheet, SheetKind } from '../domain/sheets/sheet.ts';
import { sheetFacts, whyNoSheet } from '../domain/sheets/why-no-sheet.ts';
import type { DeskContext } from './desk-context.ts';
import { fleetSheetFileName, makeFleetSheet } from './fleet-sheets.ts';
import { makeSheet, sheetFileName } from './printer.ts';
import { listName } from './who-opens-sheet.ts';

export type SheetTask = {
  readonly fileName: string;
  readonly vehicleId: string | null;
  /** For whoever waits: the stock number, or which list. */
  readonly subject: string;
  readonly make: () => Promise<Sheet>;
};

/** None where the vehicle has nothing for this sheet: a plan sheet without a programming job. A letter for each request of a code. */
export function vehicleTask(context: DeskContext, kind: SheetKind, id: string): SheetTask[] {
  const now = context.visible(id);
  if (now === null || whyNoSheet(kind, now.data, context.shop()) !== null) return [];
  return sheetFacts(kind, now.data, context.shop()).map((factId) => ({
    fileName: sheetFileName(kind, now.data, factId),
    vehicleId: id,
    subject: now.data.identity.stockNumber,
    make: async () => {
      // As it stands when its turn comes, not when it was asked for.
      const kept = context.visible(id) ?? now;
      const printed = { at: context.deps.clock(), by: context.person().name, revision: kept.revision };
      return makeSheet(kind, kept.data, context.shop(), context.today(), printed, factId);
    },
  }));
}

/** The vehicles that a fleet sheet is about: those named, else all in stock; parts and cores also of sold ones, whose cores are owed. */
export function vehiclesOfSheet(
  context: DeskContext,
  kind: FleetSheetKind,
  chosen: readonly string[],
): readonly string[] {
  if (chosen.length > 0) return chosen.filter((id) => context.visible(id) !== null);
  return [...context.store.vehicles().values()]
    .filter(({ data }) => kind === 'parts-list' || data.sale === null)
    .map(({ data }) => data.id)
    .filter((id) => context.visible(id) !== null);
}

/** Rows already without what the role may not see. Forecasts are worked out on the way only where somebody waits for paper. */
async function rowsFor(context: DeskContext, ids: readonly string[], isForecast: boolean) {
  if (!isForecast) return context.rows(ids);
  const rows = [];
  for (const [index, id] of ids.entries()) {
    if (index % 10 === 9) await new Promise((resolve) => setImmediate(resolve));
    const row = context.row(id);
    if (row !== null) rows.push(row);
  }
  return rows;
}

export async function fleetSheetOf(
  context: DeskContext,
  kind: FleetSheetKind,
  chosen: readonly string[],
  { isForecast }: { readonly isForecast: boolean },
): Promise<Sheet> {
  const ids = vehiclesOfSheet(context, kind, chosen);
  const source = {
    desk: context,
    shop: context.shop(),
    rows: kind === 'fleet-list' ? await rowsFor(context, ids, isForecast) : [],
    vehicles: kind === 'parts-list' ? ids.flatMap((id) => context.visible(id)?.data ?? []) : [],
    seesPartPrices: context.rights().seesPartPrices,
  };
  return makeFleetSheet(kind, source, { at: context.deps.clock(), by: context.person().name });
}

const subjects: Readonly<Record<FleetSheetKind, string>> = {
  'parts-list': 'parts and cores',
  'fleet-list': 'fleet list',
  'money-summary': 'ageing and money',
};

export function fleetTask(context: DeskContext, kind: FleetSheetKind, chosen: readonly string[]): SheetTask {
  const name = fleetSheetFileName(kind, context.today());
  return {
    // The list is one for each role: what stands on it is told by its name, so that the manager's is not opened by others.
    fileName: kind === 'fleet-list' ? listName(name, context.rights()) : name,
    vehicleId: null,
    subject: subjects[kind],
    make: () => fleetSheetOf(context, kind, chosen, { isForecast: true }),
  };
}
