// Where files that cannot be used are put, each with its reason beside it. Nothing in here is ever overwritten or deleted.
import { readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { stampOf } from '../domain/backup/backup-name.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { isThere } from './atomic-file.ts';
import type { BadFile } from './file-trouble.ts';
import { namesIn, pathIn, quarantineFolder, shopFile, vehiclesFolder } from './fleet-folder.ts';
import { createFile, moveAside } from './move-aside.ts';
import { type ReadRecord, readRecord } from './record-file.ts';
import type { RecordKinds } from './record-kind.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

const longestKeptName = 80;
const quarantinedName = /^\d{4}-\d\d-\d\dT\d\d-\d\d-\d\d(?:\.\d+)?-(shop|vehicle-(.+))\.json$/;

/** '2026-03-04T10-11-12-vehicle-abcd.json': what it was can be read back from the name. */
function* freeNames(fileName: string, at: string): Generator<string> {
  const what = fileName === shopFile ? 'shop' : `vehicle-${basename(fileName, '.json').slice(0, longestKeptName)}`;
  for (let number = 1; ; number++) yield `${stampOf(at)}${number > 1 ? `.${number}` : ''}-${what}.json`;
}

/** Moves the file aside and writes why. Answers its new path inside the fleet folder. */
export async function putAside(folder: string, bad: BadFile, at: string): Promise<Result<string, StorageProblem>> {
  try {
    const quarantine = pathIn(folder, quarantineFolder);
    const name = await moveAside(pathIn(folder, bad.fileName), quarantine, freeNames(bad.fileName, at));
    const lines = [`This was ${bad.fileName}. Put aside at ${at}, unchanged.`, bad.reason, `(${bad.kind})`];
    // The file is safe already; a reason that cannot be written is worked out again from the file itself.
    await createFile(join(quarantine, `${name}.reason.txt`), `${lines.join('\n')}\n`).catch(() => undefined);
    return ok(`${quarantineFolder}/${name}`);
  } catch (error) {
    return fail(problemFromError(error, `Putting aside ${bad.fileName}`));
  }
}

export type QuarantinedFile = {
  readonly name: string;
  /** Path inside the fleet folder. */
  readonly path: string;
  /** What the file was, as far as its name can say, and what is wrong with it. */
  readonly bad: BadFile;
  /** A person has decided about it. */
  readonly isSettled: boolean;
  /** The vehicle that its contents say it is, when they read well under whatever name. */
  readonly vehicle: ReadRecord<Vehicle> | null;
};

/** Every file in quarantine; each is read again to say what is wrong with it, so nothing hangs on the reason beside it. */
export async function listQuarantine(folder: string, kinds: RecordKinds): Promise<QuarantinedFile[]> {
  const quarantine = pathIn(folder, quarantineFolder);
  const names = await namesIn(quarantine);
  const all = new Set(names);
  const listed: QuarantinedFile[] = [];
  for (const name of names) {
    const match = quarantinedName.exec(name);
    if (!match) continue;
    const vehicleName = match[2] ?? null;
    const fileName = vehicleName === null ? shopFile : `${vehiclesFolder}/${vehicleName}.json`;
    const read = await readQuarantined(quarantine, name, fileName, vehicleName, kinds);
    listed.push({ name, path: `${quarantineFolder}/${name}`, isSettled: all.has(`${name}.settled.txt`), ...read });
  }
  return listed;
}

async function readQuarantined(
  quarantine: string,
  name: string,
  fileName: string,
  vehicleName: string | null,
  kinds: RecordKinds,
): Promise<Pick<QuarantinedFile, 'bad' | 'vehicle'>> {
  const readsNow = { fileName, kind: 'cannot-read' as const, reason: 'It was put aside earlier and reads well now.' };
  try {
    const bytes = await readFile(join(quarantine, name));
    if (vehicleName === null) {
      const shop = readRecord(bytes, kinds.shop, null);
      return { bad: shop.ok ? readsNow : { fileName, ...faultOf(shop.error) }, vehicle: null };
    }
    const vehicle = readRecord(bytes, kinds.vehicle, vehicleName);
    if (vehicle.ok) return { bad: readsNow, vehicle: vehicle.value };
    return { bad: { fileName, ...faultOf(vehicle.error) }, vehicle: vehicle.error.record };
  } catch (error) {
    const reason = `The system cannot read it: ${systemCode(error) ?? error}`;
    return { bad: { fileName, kind: 'cannot-read', reason }, vehicle: null };
  }
}

function faultOf<Fault extends { readonly kind: BadFile['kind']; readonly reason: string }>(fault: Fault) {
  return { kind: fault.kind, reason: fault.reason };
}

/** Notes that a person has decided about it; it is kept, but not shown any more. */
export async function markSettled(folder: string, name: string, at: string): Promise<Result<null, StorageProblem>> {
  const path = join(pathIn(folder, quarantineFolder), `${name}.settled.txt`);
  try {
    if (!(await isThere(path))) await createFile(path, `Decided about at ${at}.\n`);
    return ok(null);
  } catch (error) {
    return fail(problemFromError(error, `Writing ${path}`));
  }
}

/** The names that have been decided about, with or without a file: a missing record leaves nothing but the decision. */
export async function settledNames(folder: string): Promise<Set<string>> {
  const names = await namesIn(pathIn(folder, quarantineFolder));
  return new Set(
    names.filter((name) => name.endsWith('.settled.txt')).map((name) => name.slice(0, -'.settled.txt'.length)),
  );
}
