// Choosing another fleet folder, bringing back the last good copy of a damaged file, and a backup by hand.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import { isFleetFolder, isInside, namesIn } from '../storage/fleet-folder.ts';
import type { FleetStore } from '../storage/fleet-store.ts';
import type { Foreground } from '../storage/foreground.ts';
import { openFleet } from '../storage/open-fleet.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';
import type { DeskDependencies } from './desk-dependencies.ts';
import { destroyOverdueCodes } from './destroy-overdue-codes.ts';
import { afterPuttingBack } from './safety-commands.ts';

/** What systems lay into every folder that somebody looks at. */
const systemFiles: readonly string[] = ['desktop.ini', 'thumbs.db', 'lost+found'];

export function openStore(
  deps: DeskDependencies,
  folder: string,
  how: {
    readonly takeOver?: boolean;
    readonly backUpAfter?: Promise<void>;
    readonly readSoldAfter?: Promise<void>;
    readonly foreground: Foreground;
  },
) {
  const secondFolder = deps.deskSettings.get().secondBackupFolder;
  return openFleet({ folder, clock: deps.clock, owner: deps.owner, createFolder: true, secondFolder, ...how });
}

/** From now on this is the open fleet; nobody is signed in to it yet, and no undo reaches across. */
export async function takeUp(context: DeskContext, store: FleetStore): Promise<void> {
  context.store = store;
  await context.signIn.open(store);
  context.forecasts.forget();
  context.undo.clear();
}

/** What is due in the fleet that was taken up, and that the page has to read everything again. */
export async function tellOfFleet(context: DeskContext): Promise<void> {
  await destroyOverdueCodes(context);
  void context.noteBackups();
  context.deps.emit('lot:all-changed', {});
}

export async function exchangeStore(
  context: DeskContext,
  folder: string,
  takeOver: boolean,
): Answer<ChannelOutput<'fleet:choose'>> {
  const earlier = context.store;
  // The same folder is let go of first, or its own lock would stand in the way.
  if (takeOver) await earlier.close();
  const opened = await openStore(context.deps, folder, { takeOver, foreground: context.foreground });
  if (!opened.ok) return refuseStorage(opened.error);
  if (folder === context.deps.sample.copy && earlier.folder !== folder) context.cameFrom = earlier.folder;
  await takeUp(context, opened.value);
  if (!takeOver) await earlier.close();
  await tellOfFleet(context);
  return ok(context.desk());
}

/** The next start opens it. The sample is only looked at: the next start opens the fleet of one's own, if there is one. */
export function rememberFleet({ deps }: DeskContext, folder: string): void {
  if (folder !== deps.sample.copy) deps.deskSettings.change({ lastFleetFolder: folder });
}

/** A person has decided to open a fleet for writing that another desk has not been heard of for a while. */
export async function takeOverFleet(context: DeskContext): Answer<ChannelOutput<'fleet:take-over'>> {
  if (!context.store.isReadOnly?.canTakeOver) return refuse('read-only', context.store.isReadOnly?.sentence ?? '');
  return exchangeStore(context, context.store.folder, true);
}

export async function settleTrouble(
  context: DeskContext,
  input: ChannelInput<'fleet:settle-trouble'>,
): Answer<ChannelOutput<'fleet:settle-trouble'>> {
  const settled = await context.store.settleTrouble(input.id);
  return settled.ok ? ok(context.desk()) : refuseStorage(settled.error);
}

/** Why no fleet may be opened or begun there; null when it may, or when opening has to find out. */
async function whyNotThere({ deps, store }: DeskContext, folder: string): Promise<string | null> {
  if (isInside(folder, store.folder) || (folder !== deps.sample.copy && isInside(folder, deps.sample.copy)))
    return 'That folder lies inside another fleet. Choose one that lies outside of it.';
  const names = await namesIn(folder).catch(() => []);
  const isFree = names.every((name) => name.startsWith('.') || systemFiles.includes(name.toLowerCase()));
  return isFree || (await isFleetFolder(folder))
    ? null
    : 'That folder holds other files and no fleet. Choose the folder of a fleet, or make an empty one for a new fleet.';
}

export async function chooseFleet(context: DeskContext): Answer<ChannelOutput<'fleet:choose'>> {
  const folder = await context.deps.outside.chooseFolder();
  if (folder === null || folder === context.store.folder) return ok(context.desk());
  const sentence = await whyNotThere(context, folder);
  if (sentence !== null) return refuse('not-done', sentence);
  const chosen = await exchangeStore(context, folder, false);
  if (chosen.ok) rememberFleet(context, folder);
  return chosen;
}

export async function restoreTrouble(
  context: DeskContext,
  input: ChannelInput<'fleet:restore-trouble'>,
): Answer<ChannelOutput<'fleet:restore-trouble'>> {
  const restored = await context.store.restoreLastGood(
    input.id,
    context.telling('restore', 'put back from the last good copy'),
  );
  if (!restored.ok) return refuseStorage(restored.error);
  await afterPuttingBack(context);
  return ok(context.desk());
}

export async function backUpNow(context: DeskContext): Answer<ChannelOutput<'fleet:back-up'>> {
  const made = await context.store.backUp('by-hand');
  if (!made.ok) return refuseStorage(made.error);
  await context.noteBackups();
  return ok(context.desk());
}
