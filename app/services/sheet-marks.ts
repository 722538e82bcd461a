// Notes what was printed in the register of the fleet, and finds by a mark which sheet it is and whether it is still the current one.
import { join } from 'node:path';
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import type { FoundSheet } from '../contract/sheet-channels.ts';
import { ok } from '../domain/shared/result.ts';
import type { Sheet } from '../domain/sheets/sheet.ts';
import { readMark } from '../domain/sheets/sheet-mark.ts';
import { findPrinted, notePrinted, type PrintedSheet } from '../storage/printed-register.ts';
import { type Answer, type DeskContext, refuseStorage } from './desk-context.ts';
import { stateOfFleet } from './fleet-sheets.ts';

export type NotedSheet = {
  readonly vehicleId: string | null;
  readonly sheet: Pick<Sheet, 'mark' | 'kind' | 'subject' | 'title' | 'revision' | 'printedAt' | 'printedBy'>;
};

export function registerEntry({ vehicleId, sheet }: NotedSheet, asOf: string): PrintedSheet {
  const { mark, kind, subject, title, revision, printedAt, printedBy } = sheet;
  const words = (vehicleId === null ? title : subject).slice(0, 400);
  return { mark, kind, vehicleId, subject: words, revision, asOf, printedAt, printedBy: printedBy.slice(0, 200) };
}

/** After the paper is there. Empty when noted, else a sentence: the sheets are good all the same. */
export async function noteSheets(context: DeskContext, sheets: readonly NotedSheet[]): Promise<string> {
  const folder = join(context.store.folder, 'sheets');
  const noted = await notePrinted(
    folder,
    sheets.map((one) => registerEntry(one, context.today())),
  );
  return noted.ok ? '' : 'The sheets are whole, but their marks could not be noted and will not be found.';
}

/** Null for whoever may not know of it. */
function foundSheet(context: DeskContext, printed: PrintedSheet): FoundSheet | null {
  const { kind, vehicleId, subject, printedAt, printedBy, asOf, revision } = printed;
  const rights = context.rights();
  const known = { kind, vehicleId, subject, printedAt, printedBy, asOf, revision, isOfToday: asOf === context.today() };
  if (vehicleId === null) {
    if (!rights.printsOfFleet.some((one) => one === kind)) return null;
    const standing = stateOfFleet(context) === revision ? 'current' : 'older';
    return { ...known, standing, nowRevision: null };
  }
  if (!rights.prints.some((one) => one === kind)) return null;
  const kept = context.visible(vehicleId);
  // Whoever sees only part of the lot is not told that there is more.
  if (kept === null)
    return context.person().role === 'sales' ? null : { ...known, standing: 'gone', nowRevision: null };
  return { ...known, standing: kept.revision === revision ? 'current' : 'older', nowRevision: kept.revision };
}

export async function findMark(
  context: DeskContext,
  input: ChannelInput<'sheet:find-mark'>,
): Answer<ChannelOutput<'sheet:find-mark'>> {
  const read = readMark(input.mark);
  if (!read.ok) return ok({ problem: read.sentence, found: [] });
  const printed = await findPrinted(join(context.store.folder, 'sheets'), read.mark);
  if (!printed.ok) return refuseStorage(printed.error);
  return ok({ problem: '', found: printed.value.flatMap((one) => foundSheet(context, one) ?? []) });
}
