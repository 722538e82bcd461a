// Choosing another fleet folder, bringing back the last good copy of a damaged file, and a backup by hand.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import type { Foreground } from '../storage/foreground.ts';
import { openFleet } from '../storage/open-fleet.ts';
import { type Answer, type DeskContext, type DeskDependencies, refuse, refuseStorage } from './desk-context.ts';
import { destroyOverdueCodes } from './destroy-overdue-codes.ts';
import { afterPuttingBack } from './safety-commands.ts';

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
  context.store = opened.value;
  await context.signIn.open(opened.value);
  context.forecasts.forget();
  context.undo.clear();
  if (!takeOver) await earlier.close();
  await destroyOverdueCodes(context);
  void context.noteBackups();
  context.deps.emit('lot:all-changed', {});
  return ok(context.desk());
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

export async function chooseFleet(context: DeskContext): Answer<ChannelOutput<'fleet:choose'>> {
  const folder = await context.deps.outside.chooseFolder();
  if (folder === null || folder === context.store.folder) return ok(context.desk());
  const chosen = await exchangeStore(context, folder, false);
  if (chosen.ok) context.deps.deskSettings.change({ lastFleetFolder: folder });
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
