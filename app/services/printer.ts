// Which sheet for which kind, and a sheet as a file: shared by the window and by the command without a window. Decides no rights.
import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { Shop } from '../domain/fleet/shop.ts';
import { assertNever } from '../domain/shared/assert-never.ts';
import type { Day } from '../domain/shared/day.ts';
import { codeLetter } from '../domain/sheets/code-letter.ts';
import { costSheet } from '../domain/sheets/cost-sheet.ts';
import { jobSheet } from '../domain/sheets/job-sheet.ts';
import { planSheet } from '../domain/sheets/plan-sheet.ts';
import { readinessSheet } from '../domain/sheets/readiness-sheet.ts';
import { shortOf } from '../domain/sheets/request-reference.ts';
import type { Sheet, SheetKind } from '../domain/sheets/sheet.ts';
import type { Printing } from '../domain/sheets/sheet-frame.ts';
import { windowSheet } from '../domain/sheets/window-sheet.ts';
import { reckonVehicle } from '../domain/vehicle/reckon.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { loadFonts, type SheetFonts } from '../printing/load-fonts.ts';
import { type RenderedSheet, renderSheet, renderTogether } from '../printing/render-sheet.ts';
import { noImages } from '../printing/sheet-images.ts';
import { writeFileAtomically } from '../storage/atomic-file.ts';
import type { StorageProblem } from '../storage/storage-problem.ts';

/** The sheet of a vehicle as seen on this day; of one of its facts where `factId` names one. See why-no-sheet.ts for what cannot be made. */
export function makeSheet(
  kind: SheetKind,
  vehicle: Vehicle,
  shop: Shop,
  today: Day,
  printed: Printing,
  factId: string | null = null,
): Sheet {
  const reckoning = reckonVehicle(vehicle, shop, today);
  switch (kind) {
    case 'job-sheet':
      return jobSheet(vehicle, reckoning, shop, printed);
    case 'readiness-sheet':
      return readinessSheet(vehicle, reckoning, shop, printed);
    case 'plan-sheet':
      return planSheet(vehicle, shop, printed, factId);
    case 'window-sheet':
      return windowSheet(vehicle, reckoning, shop, printed);
    case 'code-letter':
      return codeLetter(vehicle, shop, printed, { today, requestId: factId });
    case 'cost-sheet':
      return costSheet(vehicle, reckoning, shop, printed);
    default:
      return assertNever(kind, 'kind of sheet');
  }
}

/**
 * 'F-1042-job-sheet.pdf': the stock number in letters, digits, points, hyphens and underscores. A number that had to be altered for it
 * is followed by the vehicle's identity, so that two vehicles never share a file because their numbers look alike without signs.
 */
export function sheetFileName(
  kind: SheetKind,
  vehicle: Pick<Vehicle, 'id' | 'identity'>,
  factId: string | null = null,
): string {
  const { stockNumber } = vehicle.identity;
  // One vehicle may have several letters or plans out at once.
  const end = factId === null ? kind : `${shortOf(factId)}-${kind}`;
  const cleaned = stockNumber.replace(/[^A-Za-z0-9._-]+/g, '-').replace(/^[^A-Za-z0-9]+|[^A-Za-z0-9]+$/g, '');
  if (cleaned === stockNumber) return `${cleaned}-${end}.pdf`;
  return `${cleaned === '' ? '' : `${cleaned}-`}${vehicle.id}-${end}.pdf`;
}

const openedFonts = new Map<string, Promise<SheetFonts>>();

/** Fonts are read once for each folder; a failure is not remembered, so that a repaired folder works at the next try. */
function fontsOf(folder: string): Promise<SheetFonts> {
  const known = openedFonts.get(folder);
  if (known) return known;
  const loading = loadFonts(folder);
  openedFonts.set(folder, loading);
  loading.catch(() => openedFonts.delete(folder));
  return loading;
}

const writingSentences: Partial<Record<StorageProblem['code'], string>> = {
  'no-space': 'The sheet was not written: the disk is full. Free some space, then print again',
  'no-permission':
    'The sheet was not written: its folder may not be written, or another program has the old sheet open. Close it, then print again',
  'folder-gone': 'The sheet was not written: its folder cannot be reached. Connect the drive again, then print again',
  busy: 'The sheet was not written: another program holds the file. Close it, then print again',
  'read-only': 'The sheet was not written: its folder can only be read. Choose another place',
};

async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`The sheet was not written: its folder is not there and cannot be made. ${why}`, { cause });
  }
}

/**
 * Writes the sheet as a PDF file, with the images it is handed: all of it or nothing. Makes the folder if it is missing.
 * @throws with a sentence for the person when fonts are missing or the file cannot be written; an older file stays as it was.
 */
export async function printSheet(
  sheet: Sheet,
  fontsFolder: string,
  path: string,
  images = noImages,
): Promise<{ readonly pages: number }> {
  return writeRendered(await renderSheet(sheet, await fontsOf(fontsFolder), images), path);
}

/** The same for several sheets in one file; null when there was no sheet. Throws what `sheets` throws, and then writes nothing. */
export async function printTogether(
  title: string | null,
  sheets: AsyncIterable<Sheet>,
  fontsFolder: string,
  path: string,
  images = noImages,
): Promise<{ readonly pages: number } | null> {
  const rendered = await renderTogether(title, sheets, await fontsOf(fontsFolder), images);
  return rendered === null ? null : writeRendered(rendered, path);
}

async function writeRendered({ bytes, pages }: RenderedSheet, path: string): Promise<{ readonly pages: number }> {
  await makeFolder(dirname(path));
  const written = await writeFileAtomically(path, bytes);
  if (!written.ok) {
    const { code, detail } = written.error;
    throw new Error(writingSentences[code] ?? `The sheet was not written: ${detail}`, { cause: written.error });
  }
  return { pages };
}
