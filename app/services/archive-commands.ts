// Saving the whole fleet as one file, and opening such a file as a fleet in an empty folder. Paths come from the system's dialogs.
import { basename } from 'node:path';
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import { vehicleIdOf } from '../storage/fleet-folder.ts';
import { checkArchive, unpackArchive } from '../storage/read-archive.ts';
import { writeArchive } from '../storage/write-archive.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';
import { exchangeStore, rememberFleet } from './fleet-commands.ts';

export async function writeFleetArchive(
  context: DeskContext,
  { withKeys }: ChannelInput<'archive:write'>,
): Answer<ChannelOutput<'archive:write'>> {
  const target = await context.deps.outside.chooseArchiveToWrite(`fleet-${context.today()}.zip`);
  if (target === null) return ok(null);
  const written = await writeArchive(context.store.folder, target, { withKeys, madeAt: context.deps.clock() });
  if (!written.ok) return refuseStorage(written.error);
  const { files, missing } = written.value;
  const vehicles = files.filter(({ path }) => vehicleIdOf(path) !== null).length;
  return ok({ fileName: basename(target), vehicles, files: files.length, missing });
}

/** The archive is checked before the folder is asked for, so that nobody makes a folder for a file that cannot be used. */
export async function openFleetArchive(context: DeskContext): Answer<ChannelOutput<'archive:open'>> {
  const { outside } = context.deps;
  const stay = () => ok({ desk: context.desk(), isOpened: false });
  const path = await outside.chooseArchiveToOpen();
  if (path === null) return stay();
  const checked = await checkArchive(path).catch(() => null);
  if (checked === null) return refuse('bad-archive', 'It could not be read. Is its drive connected?');
  if (!checked.ok) return refuse('bad-archive', checked.error);
  const folder = await outside.chooseFolder();
  if (folder === null) return stay();
  const unpacked = await unpackArchive(path, folder);
  if (!unpacked.ok) return refuse('bad-archive', unpacked.error);
  const opened = await exchangeStore(context, folder, false);
  if (!opened.ok) return opened;
  rememberFleet(context, folder);
  return ok({ desk: context.desk(), isOpened: true });
}
