// Writing a table that the page shows as a CSV file: its rows and columns by role, from the fleet and never from the page.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import type { CsvCell } from '../domain/shared/csv.ts';
import { ok } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { type Answer, type DeskContext, refuse } from './desk-context.ts';
import { lotTable, nextJobsTable } from './lot-table.ts';
import { showExports } from './money-commands.ts';
import { readNextJobs } from './programming-commands.ts';
import { ledgerTable, partsTable } from './vehicle-tables.ts';
import { writeExport } from './write-export.ts';

type Written = Answer<ChannelOutput<'table:export'>>;

/** A stock number as the part of a file's name: letters, digits and hyphens only. */
function inFileName(stockNumber: string): string {
  return stockNumber.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-+|-+$/g, '') || 'vehicle';
}

/** Vehicles that this person may not see, or that are gone, are left out. */
async function exportLot(context: DeskContext, ids: readonly string[]): Written {
  const { role } = context.person();
  const { seesMoney, seesForecast } = context.rights();
  const shows = { money: seesMoney, asking: role === 'sales' || seesMoney, forecast: seesForecast };
  return writeExport(context, 'lot', lotTable(context.rows(ids), shows));
}

async function exportNextJobs(context: DeskContext): Written {
  const read = await readNextJobs(context);
  if (!read.ok) return read;
  return writeExport(context, 'next-jobs', nextJobsTable(read.value, context.rights().seesMoney));
}

async function exportOfVehicle(
  context: DeskContext,
  id: string,
  table: string,
  rowsOf: (vehicle: Vehicle) => readonly (readonly CsvCell[])[],
): Written {
  const kept = context.visible(id);
  if (!kept) return refuse('not-found');
  const { vehicle } = context.view(kept);
  return writeExport(context, `${table}-${inFileName(vehicle.identity.stockNumber)}`, rowsOf(vehicle));
}

export async function exportTable(context: DeskContext, input: ChannelInput<'table:export'>): Written {
  const { role } = context.person();
  const rights = context.rights();
  if (role === 'sales' && input.table !== 'lot') return refuse('not-allowed');
  switch (input.table) {
    case 'lot':
      return exportLot(context, input.ids);
    case 'next-jobs':
      return exportNextJobs(context);
    case 'ledger':
      return exportOfVehicle(context, input.id, 'ledger', (vehicle) =>
        ledgerTable(vehicle, { money: rights.seesMoney, people: context.shop().people }),
      );
    case 'parts':
      return exportOfVehicle(context, input.id, 'parts', (vehicle) => partsTable(vehicle, rights.seesPartPrices));
  }
}

export async function showTables(context: DeskContext): Answer<ChannelOutput<'table:show-folder'>> {
  const shown = await showExports(context);
  return shown.ok ? ok({}) : shown;
}
