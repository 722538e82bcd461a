// Sheets for the page: a preview as data, printed files in the fleet's own folder, and showing them with the system's programs.
import { mkdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import type { Sheet, SheetKind } from '../domain/sheets/sheet.ts';
import { sheetFacts, whyNoSheet } from '../domain/sheets/why-no-sheet.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { Kept } from '../storage/kept.ts';
import { type Answer, type DeskContext, refuse } from './desk-context.ts';
import { makeSheet, printSheet, sheetFileName } from './printer.ts';
import { readSheetImages } from './sheet-images.ts';
import { noteSheets } from './sheet-marks.ts';
import { fleetSheetOf } from './sheet-tasks.ts';
import { mayOpenSheet } from './who-opens-sheet.ts';

function sheetsFolder(context: DeskContext): string {
  return join(context.store.folder, 'sheets');
}

function sheetOf(context: DeskContext, kind: SheetKind, kept: Kept<Vehicle>, factId: string | null): Sheet {
  const printed = { at: context.deps.clock(), by: context.person().name, revision: kept.revision };
  return makeSheet(kind, kept.data, context.shop(), context.today(), printed, factId);
}

export async function previewSheet(
  context: DeskContext,
  input: ChannelInput<'sheet:preview'>,
): Answer<ChannelOutput<'sheet:preview'>> {
  const kept = context.visible(input.id);
  if (!kept) return refuse('not-found');
  if (!context.rights().prints.includes(input.kind)) return refuse('not-allowed');
  const factId = input.factId ?? null;
  const why = whyNoSheet(input.kind, kept.data, context.shop(), factId);
  return why === null ? ok(sheetOf(context, input.kind, kept, factId)) : refuse('no-sheet', why);
}

/** With the forecasts that are known by now: whoever looks should not wait for those that are not. */
export async function previewFleetSheet(
  context: DeskContext,
  input: ChannelInput<'sheet:preview-fleet'>,
): Answer<ChannelOutput<'sheet:preview-fleet'>> {
  if (!context.rights().printsOfFleet.includes(input.kind)) return refuse('not-allowed');
  return ok(await fleetSheetOf(context, input.kind, input.vehicleIds, { isForecast: false }));
}

export async function printSheets(
  context: DeskContext,
  input: ChannelInput<'sheet:print'>,
): Answer<ChannelOutput<'sheet:print'>> {
  if (!context.rights().prints.includes(input.kind)) return refuse('not-allowed');
  const chosen = input.vehicleIds.map((id) => context.visible(id));
  const printed: { fileName: string; pages: number }[] = [];
  try {
    await mkdir(sheetsFolder(context), { recursive: true });
    const images = await readSheetImages(context.store.folder);
    for (const kept of chosen) {
      if (kept === null) return refuse('not-found');
      const why = whyNoSheet(input.kind, kept.data, context.shop(), input.factId);
      if (why !== null) return refuse('no-sheet', why);
      const facts = input.factId === undefined ? sheetFacts(input.kind, kept.data, context.shop()) : [input.factId];
      for (const factId of facts) {
        const sheet = sheetOf(context, input.kind, kept, factId);
        const fileName = sheetFileName(input.kind, kept.data, factId);
        const { pages } = await printSheet(
          sheet,
          context.deps.fontsFolder,
          join(sheetsFolder(context), fileName),
          images,
        );
        printed.push({ fileName, pages });
        // A mark that could not be noted is not found later; the sheet is good all the same.
        await noteSheets(context, [{ vehicleId: kept.data.id, sheet }]);
      }
    }
  } catch (error) {
    const done = printed.length > 0 ? ` ${printed.length} of ${chosen.length} sheets were printed before it.` : '';
    return refuse('printing-failed', `${error instanceof Error ? error.message : 'Unknown reason'}.${done}`);
  }
  return ok(printed);
}

/** Opens one printed sheet by its name. Only a plain name in the sheets folder is taken; anything else is not there. */
export async function openSheet(
  context: DeskContext,
  input: ChannelInput<'sheet:open'>,
): Answer<ChannelOutput<'sheet:open'>> {
  if (!/^[A-Za-z0-9][A-Za-z0-9._-]*\.pdf$/.test(input.fileName)) return refuse('not-found');
  if (!mayOpenSheet(input.fileName, context.rights())) return refuse('not-allowed');
  const path = join(sheetsFolder(context), input.fileName);
  const isThere = await stat(path).then(
    (entry) => entry.isFile(),
    () => false,
  );
  if (!isThere) return refuse('not-found', 'This sheet is no longer in the folder. Print it again.');
  const opened = await context.deps.outside.openFile(path);
  return opened
    ? ok({})
    : refuse('printing-failed', 'No program on this computer opens PDF files. The sheet is in the sheets folder.');
}

export async function showSheetsFolder(context: DeskContext): Answer<ChannelOutput<'sheet:show-folder'>> {
  await mkdir(sheetsFolder(context), { recursive: true });
  context.deps.outside.showFolder(sheetsFolder(context));
  return ok({});
}
