// Writes one table as a CSV file into the fleet's own folder of exports. The name is made by the caller, never by the page.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type CsvCell, csvText } from '../domain/shared/csv.ts';
import { ok } from '../domain/shared/result.ts';
import { type Answer, type DeskContext, refuse } from './desk-context.ts';

export function exportsFolder(context: DeskContext): string {
  return join(context.store.folder, 'exports');
}

/** An earlier file of the day is replaced. */
export async function writeExport(
  context: DeskContext,
  table: string,
  rows: readonly (readonly CsvCell[])[],
): Answer<{ fileName: string }> {
  const fileName = `${table}-${context.today()}.csv`;
  const folder = exportsFolder(context);
  try {
    await mkdir(folder, { recursive: true });
    // With a mark of its encoding, or spreadsheets take it for the system's old one.
    await writeFile(join(folder, fileName), `\uFEFF${csvText(rows)}`, 'utf8');
  } catch {
    return refuse(
      'printing-failed',
      'The table was not written. See that the disk has room and that the fleet folder may be written to, then try again.',
    );
  }
  return ok({ fileName });
}
