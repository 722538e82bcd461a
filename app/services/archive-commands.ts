// Saving the whole fleet as one file, and opening such a file as a fleet in an empty folder. Paths come from the system's dialogs.
import { basename } from 'node:path';
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import { vehicleIdOf } from '../storage/fleet-folder.ts';
import { checkArchive, unpackArchive } from '../storage/read-archive.ts';
import { mostArchiveBytes, writeArchive } from '../storage/write-archive.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';
import { exchangeStore, rememberFleet } from './fleet-commands.ts';

const tooLarge =
  'With its photographs and documents the fleet is larger than one file can hold (4 GB). Leave them out, and copy the folder “attachments” of the fleet folder into the new fleet’s by hand.';

/** As given; what the page made of the pictures adds a little. */
function attachmentsOf(context: DeskContext): { readonly attachments: number; readonly bytes: number } {
  const all = [...context.store.vehicles().values()].flatMap(({ data }) => data.attachments);
  return { attachments: all.length, bytes: all.reduce((sum, { sizeBytes }) => sum + sizeBytes, 0) };
}

export async function readArchiveSize(context: DeskContext): Answer<ChannelOutput<'archive:size'>> {
  return ok(attachmentsOf(context));
}

export async function writeFleetArchive(
  context: DeskContext,
  { withKeys, withAttachments }: ChannelInput<'archive:write'>,
): Answer<ChannelOutput<'archive:write'>> {
  if (withAttachments && attachmentsOf(context).bytes > mostArchiveBytes * 0.95) return refuse('refused', tooLarge);
  const target = await context.deps.outside.chooseArchiveToWrite(`fleet-${context.today()}.zip`);
  if (target === null) return ok(null);
  const written = await writeArchive(context.store.folder, target, {
    withKeys,
    withAttachments,
    madeAt: context.deps.clock(),
  });
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
