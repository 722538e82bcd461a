// Several sheets at once: one after the other, giving the rest of the program its turn between two, telling how far it is, and stopping
// where it is told to. Every file is whole or not there. The page never says where a file goes.
import { basename, dirname, join } from 'node:path';
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import type { SheetOrder, SheetOutcome } from '../contract/sheet-channels.ts';
import { ok } from '../domain/shared/result.ts';
import { plural } from '../domain/shared/text.ts';
import { fleetSheetKindSchema, type Sheet, sheetKindSchema } from '../domain/sheets/sheet.ts';
import type { FleetStore } from '../storage/fleet-store.ts';
import { type Answer, type DeskContext, refuse } from './desk-context.ts';
import { notePictures } from './pictures-together.ts';
import { printSheet, printTogether } from './printer.ts';
import { readSheetImages } from './sheet-images.ts';
import { noteSheets } from './sheet-marks.ts';
import { fleetTask, type SheetTask, vehicleTask } from './sheet-tasks.ts';
import { togetherName } from './who-opens-sheet.ts';

/** One file is held in memory until it is whole. */
const mostTogether = 400;

type Job = {
  isCancelled: boolean;
  readonly store: FleetStore;
  /** Noted at once: by the time the first sheet is made somebody else may sit there. */
  readonly askedBy: string;
};
const running = new WeakMap<DeskContext, Job>();

class Stopped extends Error {}

/** Everything that may be asked of the process meanwhile, calls of the page first among it, comes before the next sheet. */
function letOthersGo(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

/** What is to be made, in order: kind by kind, as the paper is handed out. A sentence where it cannot be. */
function tasksOf(context: DeskContext, order: SheetOrder): readonly SheetTask[] | 'not-found' | 'not-allowed' {
  const rights = context.rights();
  const tasks: SheetTask[] = [];
  for (const kind of order.kinds) {
    const ofFleet = fleetSheetKindSchema.safeParse(kind);
    if (ofFleet.success) {
      if (!rights.printsOfFleet.includes(ofFleet.data)) return 'not-allowed';
      tasks.push(fleetTask(context, ofFleet.data, order.vehicleIds));
      continue;
    }
    const ofVehicle = sheetKindSchema.parse(kind);
    if (!rights.prints.includes(ofVehicle)) return 'not-allowed';
    for (const id of order.vehicleIds) {
      if (context.visible(id) === null) return 'not-found';
      tasks.push(...vehicleTask(context, ofVehicle, id));
    }
  }
  return withNamesOfTheirOwn(tasks);
}

/** Where two would share a file, also on disks that know no capitals, each is told apart by its vehicle's identity. */
function withNamesOfTheirOwn(tasks: readonly SheetTask[]): readonly SheetTask[] {
  const counts = new Map<string, number>();
  for (const { fileName } of tasks) counts.set(fileName.toLowerCase(), (counts.get(fileName.toLowerCase()) ?? 0) + 1);
  return tasks.map((task) =>
    (counts.get(task.fileName.toLowerCase()) ?? 0) > 1 && task.vehicleId !== null
      ? { ...task, fileName: task.fileName.replace(/\.pdf$/, `-${task.vehicleId}.pdf`) }
      : task,
  );
}

type Place = { readonly folder: string; readonly fileName: string | null; readonly isInFolder: boolean };

/** Where it goes, asked of the person where they want to say; null when they thought better of it. */
async function placeFor(context: DeskContext, order: SheetOrder, tasks: readonly SheetTask[]): Promise<Place | null> {
  const own = join(context.store.folder, 'sheets');
  const isOneFile = order.isJoint || order.to === 'printer' || tasks.length === 1;
  const manyName = togetherName(context.deps.clock(), order.kinds, context.rights());
  const oneName = tasks.length === 1 ? (tasks[0]?.fileName ?? manyName) : manyName;
  if (order.to !== 'file') return { folder: own, fileName: isOneFile ? oneName : null, isInFolder: true };
  if (!isOneFile) {
    const folder = await context.deps.outside.chooseSheetFolder();
    return folder === null ? null : { folder, fileName: null, isInFolder: false };
  }
  const path = await context.deps.outside.chooseSheetFile(oneName);
  return path === null ? null : { folder: dirname(path), fileName: basename(path), isInFolder: false };
}

type Made = { -readonly [Key in keyof SheetOutcome]: SheetOutcome[Key] } & { files: SheetOutcome['files'][number][] };

/** Sheet by sheet, so that only one is in memory; stops by throwing, so that a file that holds several is not written at all. */
async function* making(
  context: DeskContext,
  tasks: readonly SheetTask[],
  job: Job,
): AsyncGenerator<[SheetTask, Sheet]> {
  for (const [index, task] of tasks.entries()) {
    context.deps.emit('sheet:progress', { done: index, total: tasks.length, now: task.subject });
    await letOthersGo();
    // Whoever sits down now, or another fleet, has not asked for these.
    if (job.isCancelled || context.store !== job.store || context.person().id !== job.askedBy) throw new Stopped();
    yield [task, await task.make()];
  }
}

async function makeAll(
  context: DeskContext,
  tasks: readonly SheetTask[],
  place: Place,
  job: Job,
  made: Made,
): Promise<void> {
  const { fontsFolder } = context.deps;
  const images = await readSheetImages(context.store.folder);
  if (place.fileName === null) {
    for await (const [task, sheet] of making(context, tasks, job)) {
      const { pages } = await printSheet(sheet, fontsFolder, join(place.folder, task.fileName), images);
      made.files.push({ fileName: task.fileName, pages, sheets: 1 });
      made.sentence = await noteSheets(context, [{ vehicleId: task.vehicleId, sheet }]);
    }
    return;
  }
  const noted: {
    vehicleId: string | null;
    sheet: Pick<Sheet, 'mark' | 'kind' | 'subject' | 'title' | 'revision' | 'printedAt' | 'printedBy'>;
  }[] = [];
  const pictures = new Set<string>();
  async function* sheets(): AsyncGenerator<Sheet> {
    for await (const [{ vehicleId }, sheet] of making(context, tasks, job)) {
      const tooMany = notePictures(pictures, sheet);
      if (tooMany !== null) throw new Error(tooMany);
      const { mark, kind, subject, title, revision, printedAt, printedBy } = sheet;
      noted.push({ vehicleId, sheet: { mark, kind, subject, title, revision, printedAt, printedBy } });
      yield sheet;
    }
    if (job.isCancelled) throw new Stopped();
  }
  const title = tasks.length === 1 ? null : `${tasks.length} sheets`;
  const printed = await printTogether(title, sheets(), fontsFolder, join(place.folder, place.fileName), images);
  if (printed === null) return;
  made.files.push({ fileName: place.fileName, pages: printed.pages, sheets: noted.length });
  made.sentence = await noteSheets(context, noted);
}

export function areSheetsBeingMade(context: DeskContext): boolean {
  return running.has(context);
}

export async function makeSheets(
  context: DeskContext,
  order: ChannelInput<'sheet:make'>,
): Answer<ChannelOutput<'sheet:make'>> {
  if (areSheetsBeingMade(context))
    return refuse('printing-failed', 'Sheets are being made already. Wait for them, or cancel them first.');
  const tasks = tasksOf(context, order);
  if (tasks === 'not-found' || tasks === 'not-allowed') return refuse(tasks);
  if (tasks.length === 0)
    return refuse(
      'printing-failed',
      'None of the vehicles chosen has a sheet of this kind. Choose another kind or other vehicles.',
    );
  if (tasks.length > mostTogether && (order.isJoint || order.to === 'printer'))
    return refuse(
      'printing-failed',
      `One file holds at most ${mostTogether} sheets, and these are ${tasks.length}. Choose fewer, or have a file each.`,
    );
  const job: Job = { isCancelled: false, store: context.store, askedBy: context.person().id };
  running.set(context, job);
  const made: Made = { end: 'done', sentence: '', files: [], isInFolder: true };
  try {
    const { kinds, to, isJoint } = order;
    context.deps.deskSettings.change({ sheetChoice: { kinds: [...kinds], to, isJoint } });
    const place = await placeFor(context, order, tasks);
    if (place === null) return ok({ ...made, end: 'not-begun' });
    made.isInFolder = place.isInFolder;
    await makeAll(context, tasks, place, job, made);
    context.deps.emit('sheet:progress', { done: tasks.length, total: tasks.length, now: '' });
    if (
      order.to === 'printer' &&
      place.fileName !== null &&
      !(await context.deps.outside.printPdf(join(place.folder, place.fileName)))
    )
      return ok({
        ...made,
        end: 'failed',
        sentence: 'No program on this computer opens PDF files. The sheets are in the folder of sheets.',
      });
    return ok(made);
  } catch (error) {
    if (error instanceof Stopped) return ok({ ...made, end: 'cancelled' });
    const why = error instanceof Error ? error.message : 'Unknown reason';
    const before =
      made.files.length === 0 ? '' : ` ${plural(made.files.length, 'file was', 'files were')} written before it.`;
    return ok({ ...made, end: 'failed', sentence: `${why.replace(/\.$/, '')}.${before}` });
  } finally {
    running.delete(context);
  }
}

/** The sheet that is being made is finished; none begins after it. */
export async function cancelSheets(context: DeskContext): Answer<ChannelOutput<'sheet:cancel'>> {
  const job = running.get(context);
  if (job) job.isCancelled = true;
  return ok({});
}

export async function readSheetChoice(context: DeskContext): Answer<ChannelOutput<'sheet:choice'>> {
  return ok(context.deps.deskSettings.get().sheetChoice);
}
