// Looking at damaged files and backups, putting back after a preview, and the second folder for backups. Decides nothing about files:
// that is storage's.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import type { PutBackPreview, SafetyView } from '../contract/safety-view.ts';
import { changedParts } from '../domain/people/history-entry.ts';
import { tellEntry } from '../domain/people/history-words.ts';
import { ok } from '../domain/shared/result.ts';
import { vehicleTitle } from '../domain/vehicle/identity.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { isInside, shopFile } from '../storage/fleet-folder.ts';
import { changedSettings } from './changed-settings.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';

function nameOf({ identity }: Vehicle): string {
  return `${identity.stockNumber}, ${vehicleTitle(identity)}`;
}

function isSame(a: Vehicle, b: Vehicle): boolean {
  return changedParts(a, b).length === 0;
}

function previewOf(context: DeskContext, present: Vehicle | null, copy: Vehicle | null): PutBackPreview {
  const known = copy ?? present;
  const what = known === null ? '' : nameOf(known);
  if (present === null || copy === null) {
    const effect = copy !== null ? 'comes' : present !== null ? 'goes' : 'same';
    return { what, effect, changes: [], isShortened: false };
  }
  const { people, checklist } = context.shop();
  const names = new Map<string, string>([
    ...checklist.map(({ id, title }) => [id, title] as const),
    ...people.map(({ id, name }) => [id, name] as const),
  ]);
  const parts = changedParts(present, copy);
  const entry = {
    at: context.deps.clock(),
    by: context.person().id,
    kind: 'restore' as const,
    label: '',
    reason: '',
    revision: null,
    parts,
    isShortened: false,
  };
  const told = tellEntry(entry, context.rights(), names);
  const effect = parts.length === 0 ? 'same' : 'changes';
  return { what, effect, changes: told?.changes ?? [], isShortened: told?.isShortened ?? false };
}

async function safetyView(context: DeskContext): Promise<SafetyView> {
  const { store } = context;
  const listed = await store.listBackups();
  return {
    troubles: store.troubles().map(({ id, fileName, reason, quarantinedAs, lastGoodCopy }) => ({
      id,
      fileName,
      sentence: reason,
      quarantinedAs,
      lastGoodCopyAt: lastGoodCopy?.savedAt ?? null,
    })),
    backups: listed.ok ? listed.value : [],
    sentence: listed.ok
      ? ''
      : 'The backups cannot be listed just now. Is the drive of the fleet folder connected? Then look again.',
    second: await store.looks.secondFolder(),
  };
}

export async function readSafety(context: DeskContext): Answer<ChannelOutput<'safety:read'>> {
  return ok(await safetyView(context));
}

export async function previewTrouble(
  context: DeskContext,
  { id }: ChannelInput<'safety:preview-trouble'>,
): Answer<ChannelOutput<'safety:preview-trouble'>> {
  const look = await context.store.looks.lastGood(id);
  if (!look.ok) return refuseStorage(look.error);
  const { value } = look;
  switch (value.kind) {
    case 'vehicle':
      return ok(previewOf(context, value.present, value.copy));
    case 'shop': {
      const changes = value.present === null ? [] : changedSettings(value.present, value.copy);
      const effect = value.present === null ? 'comes' : changes.length === 0 ? 'same' : 'changes';
      const told = changes.map((what) => ({ what, from: 'as they are now', to: 'as they were then' }));
      return ok({ what: 'Settings', effect, changes: told, isShortened: false });
    }
    case 'attachments':
      return ok({
        what: `${nameOf(value.vehicle)}: ${value.names.join(', ')}`,
        effect: 'mends',
        changes: [],
        isShortened: false,
      });
    case 'other':
      return ok({ what: value.fileName, effect: 'mends', changes: [], isShortened: false });
  }
}

export async function previewBackup(
  context: DeskContext,
  { backupId }: ChannelInput<'safety:preview-backup'>,
): Answer<ChannelOutput<'safety:preview-backup'>> {
  const look = await context.store.looks.whole(backupId);
  if (!look.ok) return refuseStorage(look.error);
  const { vehicles, damaged, notHeld, shop } = look.value;
  const lines = [
    ...vehicles.map(({ present, copy }) => ({
      id: copy.id,
      name: nameOf(copy),
      effect: present === null ? ('comes' as const) : isSame(present, copy) ? ('same' as const) : ('changes' as const),
    })),
    ...notHeld.map((vehicle) => ({ id: vehicle.id, name: nameOf(vehicle), effect: 'goes' as const })),
  ];
  const settings =
    shop === null ? [] : shop.present === null ? ['all of them'] : changedSettings(shop.present, shop.copy);
  const left = damaged.map(({ path, sentence, isVehicle, present }) => ({
    path,
    name: present !== null ? nameOf(present) : path === shopFile ? 'Settings' : path,
    sentence,
    isThereNow: present !== null || !isVehicle,
  }));
  return ok({ vehicles: lines, damaged: left, settings });
}

export async function previewVehicle(
  context: DeskContext,
  { backupId, vehicleId }: ChannelInput<'safety:preview-vehicle'>,
): Answer<ChannelOutput<'safety:preview-vehicle'>> {
  const copy = await context.store.looks.vehicle(backupId, vehicleId);
  if (!copy.ok) return refuseStorage(copy.error);
  return ok(previewOf(context, context.store.vehicles().get(vehicleId)?.data ?? null, copy.value));
}

/** What rests on the files has to look again: keys may have come back, and no undo reaches across. */
export async function afterPuttingBack(context: DeskContext): Promise<void> {
  context.undo.clear();
  context.forecasts.forget();
  await context.signIn.readAgain();
  await context.vault.readAgain();
  void context.noteBackups();
  context.deps.emit('lot:all-changed', {});
}

function dayOf(backupId: string): string {
  return backupId.slice(0, 10);
}

export async function restoreAll(
  context: DeskContext,
  { backupId, leaving }: ChannelInput<'safety:restore-all'>,
): Answer<ChannelOutput<'safety:restore-all'>> {
  const telling = context.telling('restore', `the whole fleet as it was on ${dayOf(backupId)}`);
  const done = await context.store.restoreBackup(backupId, telling, new Set(leaving));
  // Some of it may be back even where it ended early.
  await afterPuttingBack(context);
  if (!done.ok && done.error.code === 'damaged')
    return refuse(
      'refused',
      'A file of this backup is not as it was written. Nothing has been changed. Look into the backup: it says which, and all that is whole can be put back.',
    );
  if (!done.ok) return refuseStorage(done.error);
  const { undoBackupId, restored, withdrawn } = done.value;
  return ok({ desk: context.desk(), undoBackupId, restored, withdrawn });
}

export async function restoreOne(
  context: DeskContext,
  { backupId, vehicleId }: ChannelInput<'safety:restore-vehicle'>,
): Answer<ChannelOutput<'safety:restore-vehicle'>> {
  const { store } = context;
  const copy = await store.looks.vehicle(backupId, vehicleId);
  if (!copy.ok) return refuseStorage(copy.error);
  const telling = context.telling('restore', `as it was on ${dayOf(backupId)}`);
  let undoBackupId = '';
  if (copy.value === null) {
    const present = store.vehicles().get(vehicleId);
    if (!present) return refuse('not-found');
    const snapshot = await store.backUp('before-restore');
    if (!snapshot.ok) return refuseStorage(snapshot.error);
    const gone = await store.withdrawVehicle(vehicleId, present.revision, telling);
    if (!gone.ok) return refuseStorage(gone.error);
    undoBackupId = snapshot.value.id;
  } else {
    const done = await store.restoreVehicle(backupId, vehicleId, telling);
    if (!done.ok) return refuseStorage(done.error);
    undoBackupId = done.value.undoBackupId;
  }
  await afterPuttingBack(context);
  return ok({ desk: context.desk(), undoBackupId });
}

async function keepSecond(context: DeskContext, folder: string | null): Answer<ChannelOutput<'safety:choose-second'>> {
  const { deskSettings } = context.deps;
  const before = deskSettings.get().secondBackupFolder;
  const used = await context.store.repeatIn(folder);
  if (!used.ok) return refuseStorage(used.error);
  if (folder !== null) {
    // At once, so that a folder that cannot be written to is found out now and not on the day it is needed.
    const made = await context.store.backUp('by-hand');
    const isThere = made.ok && made.value.secondCopy?.ok === true;
    if (!isThere) await context.store.repeatIn(before);
    if (!made.ok) return refuseStorage(made.error);
    void context.noteBackups();
    if (!isThere)
      return refuse('refused', 'No backup could be written to that folder, so it was not taken. Choose another one.');
  }
  const kept = deskSettings.change({ secondBackupFolder: folder });
  if (!kept.ok) return refuseStorage(kept.error);
  return ok({ safety: await safetyView(context), desk: context.desk() });
}

export async function chooseSecond(context: DeskContext): Answer<ChannelOutput<'safety:choose-second'>> {
  const folder = await context.deps.outside.chooseFolder();
  if (folder === null) return ok({ safety: await safetyView(context), desk: context.desk() });
  if (isInside(folder, context.store.folder))
    return refuse(
      'refused',
      'That folder lies inside the fleet folder and would go with it. Choose one on another drive or a share.',
    );
  return keepSecond(context, folder);
}

export function leaveSecond(context: DeskContext): Answer<ChannelOutput<'safety:leave-second'>> {
  return keepSecond(context, null);
}
