// The invented sample: opening it beside a fleet of one's own, going back, and beginning it again. Only the program's own copy is ever put
// aside, and only while its settings say that it is the sample.
import { dirname } from 'node:path';
import type { ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import { copySampleFleet } from '../storage/copy-sample-fleet.ts';
import { type ExchangedSample, prepareSample } from '../storage/exchange-sample.ts';
import { isFleetFolder, namesIn } from '../storage/fleet-folder.ts';
import type { StorageProblem } from '../storage/storage-problem.ts';
import { type Answer, type DeskContext, refuse } from './desk-context.ts';
import { exchangeStore, openStore, takeUp, tellOfFleet } from './fleet-commands.ts';
import { areSheetsBeingMade } from './sheet-job.ts';

const reasons: Readonly<Partial<Record<StorageProblem['code'], string>>> = {
  'no-space': 'There is no room left on the disk. Make room, then try again.',
  'no-permission': 'This computer does not let the program write there. Ask whoever looks after it.',
  busy: 'Another program holds a file in it. Wait a moment, then try again.',
};

function reasonOf({ code }: StorageProblem): string {
  return reasons[code] ?? 'The files of the sample could not be copied or moved. Try again.';
}

function refuseSample(problem: StorageProblem, so: string): ReturnType<typeof refuse> {
  return refuse('not-done', `${reasonOf(problem)} ${so}`);
}

const noSample = 'The invented sample does not lie with this program.';

export async function openSample(context: DeskContext): Answer<ChannelOutput<'sample:open'>> {
  const { copy, shipped } = context.deps.sample;
  if (context.store.folder === copy) return ok(context.desk());
  if ((await namesIn(copy).catch(() => [])).length === 0) {
    if (shipped === null) return refuse('not-done', noSample);
    const copied = await copySampleFleet(shipped, copy);
    if (!copied.ok) return refuseSample(copied.error, 'Your own fleet is still open.');
  }
  return exchangeStore(context, copy, false);
}

export async function leaveSample(context: DeskContext): Answer<ChannelOutput<'sample:leave'>> {
  const folder = context.isSampleCopy() ? context.fleetBeforeSample() : null;
  if (folder === null) return refuse('not-done', 'There is no fleet to go back to.');
  // A fleet that cannot be reached must not be taken for a new one.
  if (!(await isFleetFolder(folder).catch(() => false)))
    return refuse('not-done', 'That fleet cannot be reached. Is its drive connected? The sample is still open.');
  return exchangeStore(context, folder, false);
}

/** The old copy was closed and lies in its place again; what was typed there can be taken back no more, but all that was saved is there. */
async function openAgain(context: DeskContext, problem: StorageProblem): Answer<never> {
  const { deps } = context;
  const opened = await openStore(deps, deps.sample.copy, { foreground: context.foreground });
  if (!opened.ok)
    return refuseSample(
      problem,
      'The sample as it was could not be opened again either. Nothing was deleted: close the program and start it again.',
    );
  await takeUp(context, opened.value);
  await tellOfFleet(context);
  return refuseSample(problem, 'The sample is open again as it was.');
}

/** Opens the new copy, for writing, or brings the old one back. */
async function openNew(context: DeskContext, exchanged: ExchangedSample): Promise<StorageProblem | null> {
  const { deps } = context;
  const opened = await openStore(deps, deps.sample.copy, { foreground: context.foreground });
  if (opened.ok && opened.value.isReadOnly === null) {
    await takeUp(context, opened.value);
    return null;
  }
  const problem: StorageProblem = opened.ok
    ? { code: 'no-permission', detail: opened.value.isReadOnly?.sentence ?? '' }
    : opened.error;
  if (opened.ok) await opened.value.close();
  const undone = await exchanged.undo();
  return undone.ok ? problem : undone.error;
}

export async function beginSampleAgain(context: DeskContext): Answer<ChannelOutput<'sample:begin-again'>> {
  const { deps, store: earlier } = context;
  const { copy, shipped } = deps.sample;
  if (!context.isSampleCopy())
    return refuse(
      'not-done',
      'The fleet that is open is not the program’s own copy of the sample, so it stays as it is.',
    );
  if (shipped === null) return refuse('not-done', noSample);
  if (earlier.isReadOnly !== null) return refuse('read-only', earlier.isReadOnly.sentence);
  if (areSheetsBeingMade(context))
    return refuse('not-done', 'Sheets are being made from this fleet. Wait for them, or cancel them first.');
  const takePlace = await prepareSample(shipped, copy);
  if (!takePlace.ok) return refuseSample(takePlace.error, 'The sample is open as it was.');
  // Everything that was asked before is written by now, and no lock is left in the folder that is moved.
  await earlier.close();
  const exchanged = await takePlace.value(deps.clock());
  if (!exchanged.ok) return openAgain(context, exchanged.error);
  const problem = await openNew(context, exchanged.value);
  if (problem !== null) return openAgain(context, problem);
  await tellOfFleet(context);
  return ok({ desk: context.desk(), putAside: exchanged.value.putAside });
}

/** The folder in which the copies lie that were put aside. */
export async function showPutAside({ deps }: DeskContext): Answer<ChannelOutput<'sample:show-put-aside'>> {
  deps.outside.showFolder(dirname(deps.sample.copy));
  return ok({});
}
