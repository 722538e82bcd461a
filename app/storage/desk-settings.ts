// This desk's own settings: window, theme, zoom, last fleet. The only file that knows electron-store; shop data never goes in here.
import { constants, copyFileSync, readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import type ElectronStore from 'electron-store';
import { z } from 'zod';
import { stampOf } from '../domain/backup/backup-name.ts';
import { listMatchSchema } from '../domain/import/list-columns.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { anySheetKindSchema } from '../domain/sheets/sheet.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

const pixels = z.int().min(-100_000).max(100_000);

export const deskSettingsSchema = z.strictObject({
  theme: z.enum(['system', 'light', 'dark']),
  /** Whole per cent; 100 is natural size. */
  zoomPercent: z.int().min(50).max(300),
  /** Where the window was, in screen pixels before maximising; null: not yet known. */
  window: z
    .strictObject({
      x: pixels,
      y: pixels,
      width: z.int().min(100).max(100_000),
      height: z.int().min(100).max(100_000),
      isMaximised: z.boolean(),
    })
    .nullable(),
  lastFleetFolder: z.string().max(4000).nullable(),
  /** Backups are repeated here; another drive or a share. */
  secondBackupFolder: z.string().max(4000).nullable(),
  /** The person at this desk. */
  personId: identifierSchema.nullable(),
  lastPaper: z.enum(['a4', 'letter']).nullable(),
  /** What was printed last at this desk; null: nothing yet. */
  sheetChoice: z
    .strictObject({
      kinds: z.array(anySheetKindSchema).min(1).max(20),
      to: z.enum(['folder', 'file', 'printer']),
      isJoint: z.boolean(),
    })
    .nullable(),
  /** Which column means what, by the head line of a purchase list; the newest last. */
  listMatches: z.array(z.strictObject({ headers: z.string().max(2000), match: listMatchSchema })).max(30),
});
export type DeskSettings = z.infer<typeof deskSettingsSchema>;

export const defaultDeskSettings: DeskSettings = {
  theme: 'system',
  zoomPercent: 100,
  window: null,
  lastFleetFolder: null,
  secondBackupFolder: null,
  personId: null,
  lastPaper: null,
  sheetChoice: null,
  listMatches: [],
};

/** What is used of electron-store: the whole object, read once and replaced at each change. */
type Store = Pick<ElectronStore<Record<string, unknown>>, 'store'>;
type StoreOptions = {
  readonly name: string;
  readonly cwd: string;
  readonly clearInvalidConfig: false;
  readonly accessPropertiesByDotNotation: false;
};
export type DeskStoreClass = new (options: StoreOptions) => Store;

/** Loads the real class. Inside Electron only: the package asks Electron for its paths. */
export async function loadDeskStoreClass(): Promise<DeskStoreClass> {
  return (await import('electron-store')).default;
}

export type DeskSettingsStore = {
  readonly get: () => DeskSettings;
  readonly change: (part: Partial<DeskSettings>) => Result<DeskSettings, StorageProblem>;
  /** What the person should be told once after the start; null when all was well. */
  readonly notice: string | null;
};

const storeName = 'desk';

type FoundSettings = { readonly settings: DeskSettings; readonly isBroken: boolean; readonly isObject: boolean };

/** Every setting that holds is used, whatever is wrong with its neighbours. Keys this version does not know are no fault. */
function salvage(value: unknown): FoundSettings {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return { settings: defaultDeskSettings, isBroken: true, isObject: false };
  }
  const given = value as Readonly<Record<string, unknown>>;
  let settings = defaultDeskSettings;
  let isBroken = false;
  for (const key of Object.keys(defaultDeskSettings)) {
    if (!Object.hasOwn(given, key)) continue;
    const attempt = deskSettingsSchema.safeParse({ ...settings, [key]: given[key] });
    if (attempt.success) settings = attempt.data;
    else isBroken = true;
  }
  return { settings, isBroken, isObject: true };
}

function readFound(path: string): FoundSettings {
  try {
    return salvage(JSON.parse(readFileSync(path, 'utf8')));
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return { settings: defaultDeskSettings, isBroken: false, isObject: true };
    if (error instanceof SyntaxError) return { settings: defaultDeskSettings, isBroken: true, isObject: false };
    throw error;
  }
}

/** A name of its own for each broken file, so that none replaces another. */
function setAside(folder: string, path: string, isObject: boolean, at: string): string {
  for (let number = 1; ; number++) {
    const aside = join(folder, `${storeName}-broken-${stampOf(at)}${number > 1 ? `.${number}` : ''}.json`);
    try {
      copyFileSync(path, aside, constants.COPYFILE_EXCL);
    } catch (error) {
      if (systemCode(error) === 'EEXIST') continue;
      throw error;
    }
    // electron-store refuses to start on a file that is no object: the copy takes its place.
    if (!isObject) renameSync(path, aside);
    return aside;
  }
}

/** Never throws: without its file the program starts with the usual settings and says so. */
export function openDeskSettings(options: {
  readonly folder: string;
  readonly clock: () => string;
  readonly StoreClass: DeskStoreClass;
}): DeskSettingsStore {
  const { folder, clock, StoreClass } = options;
  const path = join(folder, `${storeName}.json`);
  let store: Store | null = null;
  let settings = defaultDeskSettings;
  let notice: string | null = null;
  try {
    const found = readFound(path);
    settings = found.settings;
    if (found.isBroken) {
      const aside = setAside(folder, path, found.isObject, clock());
      notice = `Some settings of this desk could not be read and are back to their usual values. The old file is kept at ${aside}. No fleet data is concerned.`;
    }
    store = new StoreClass({
      name: storeName,
      cwd: folder,
      clearInvalidConfig: false,
      accessPropertiesByDotNotation: false,
    });
  } catch (error) {
    const { detail } = problemFromError(error, `Opening ${path}`);
    notice = `The settings of this desk cannot be kept: changes last until the program is closed. No fleet data is concerned. ${detail}`;
  }
  function change(part: Partial<DeskSettings>): Result<DeskSettings, StorageProblem> {
    const next = deskSettingsSchema.safeParse({ ...settings, ...part });
    if (!next.success) return fail({ code: 'invalid', detail: next.error.message });
    settings = next.data;
    try {
      // Keys of a newer version are carried along.
      if (store) store.store = { ...store.store, ...settings };
      return store ? ok(settings) : fail({ code: 'no-permission', detail: notice ?? '' });
    } catch (error) {
      return fail(problemFromError(error, `Writing ${path}`));
    }
  }
  return { get: () => settings, change, notice };
}
