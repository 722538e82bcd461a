// Choosing another fleet folder, bringing back the last good copy of a damaged file, and a backup by hand.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import { openFleet } from '../storage/fleet-store.ts';
import { type Answer, type DeskContext, type DeskDependencies, refuse, refuseStorage } from './desk-context.ts';

export function openStore(deps: DeskDependencies, folder: string) {
  return openFleet({ folder, clock: deps.clock, owner: deps.owner });
}

export async function chooseFleet(context: DeskContext): Answer<ChannelOutput<'fleet:choose'>> {
  const folder = await context.deps.outside.chooseFolder();
  if (folder === null || folder === context.store.folder) return ok(context.desk());
  const opened = await openStore(context.deps, folder);
  if (!opened.ok) return refuseStorage(opened.error);
  const earlier = context.store;
  context.store = opened.value;
  context.undo.clear();
  await earlier.close();
  context.deps.deskSettings.change({ fleetFolder: folder });
  context.deps.emit('lot:all-changed', {});
  return ok(context.desk());
}

export async function restoreTrouble(
  context: DeskContext,
  input: ChannelInput<'fleet:restore-trouble'>,
): Answer<ChannelOutput<'fleet:restore-trouble'>> {
  const restored = await context.store.restoreLastGood(input.id);
  if (!restored.ok) return refuseStorage(restored.error);
  context.undo.clear();
  context.deps.emit('lot:all-changed', {});
  return ok(context.desk());
}

export async function backUpNow(context: DeskContext): Answer<ChannelOutput<'fleet:back-up'>> {
  const made = await context.store.backUp('by-hand');
  return made.ok ? ok(context.desk()) : refuse('unexpected', made.error.detail);
}
