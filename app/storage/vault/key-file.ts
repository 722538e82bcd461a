// The two files with keys in the fleet folder, read and written with the same care as records: whole, never over something unreadable.
// Knows nothing of what is in them.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { stampOf } from '../../domain/backup/backup-name.ts';
import { fail, ok, type Result } from '../../domain/shared/result.ts';
import { isThere, writeFileAtomically } from '../atomic-file.ts';
import type { FileTroubleKind } from '../file-trouble.ts';
import { isLeftInPlace } from '../file-trouble.ts';
import { namesIn, pathIn, quarantineFolder } from '../fleet-folder.ts';
import { createFile, moveAside } from '../move-aside.ts';
import { markSettled } from '../quarantine.ts';
import { readRecord, recordBytes } from '../record-file.ts';
import type { RecordKind } from '../record-kind.ts';
import { problemFromError, type StorageProblem, systemCode } from '../storage-problem.ts';

export type KeyFileSetting = {
  /** The fleet folder. */
  readonly folder: string;
  /** The present instant, as `Date.prototype.toISOString` writes it. */
  readonly clock: () => string;
  /** Why the fleet may not be written just now; null when it may. */
  readonly guard: () => Promise<StorageProblem | null>;
};

export type KeyFileTrouble = {
  readonly kind: FileTroubleKind;
  /** What is wrong with the file and where it is now. */
  readonly sentence: string;
  /** Name in the quarantine folder; null when it was left where it is. */
  readonly quarantinedAs: string | null;
};

export type KeyFileRead<Data> =
  | { readonly kind: 'none' }
  | { readonly kind: 'good'; readonly data: Data; readonly revision: number }
  | { readonly kind: 'bad'; readonly trouble: KeyFileTrouble };

/** 'vault.json' → '2026-03-04T10-11-12-vault.json', then '….2-vault.json'. */
function* freeNames(fileName: string, at: string): Generator<string> {
  for (let number = 1; ; number++) yield `${stampOf(at)}${number > 1 ? `.${number}` : ''}-${fileName}`;
}

async function putKeyFileAside(
  { folder, clock, guard }: KeyFileSetting,
  fileName: string,
  kind: FileTroubleKind,
  reason: string,
): Promise<KeyFileTrouble> {
  const left = {
    kind,
    sentence: `${fileName} cannot be used. ${reason} It was left where it is.`,
    quarantinedAs: null,
  };
  if (isLeftInPlace(kind) || (await guard()) !== null) return left;
  const at = clock();
  try {
    const quarantine = pathIn(folder, quarantineFolder);
    const name = await moveAside(pathIn(folder, fileName), quarantine, freeNames(fileName, at));
    const lines = [`This was ${fileName}. Put aside at ${at}, unchanged.`, reason, `(${kind})`];
    await createFile(join(quarantine, `${name}.reason.txt`), `${lines.join('\n')}\n`).catch(() => undefined);
    return { kind, sentence: asideSentence(fileName, reason), quarantinedAs: name };
  } catch {
    return left;
  }
}

function asideSentence(fileName: string, reason: string): string {
  return `${fileName} cannot be used. ${reason} It is kept unchanged in quarantine. Bring back the last good copy from a backup, or start anew.`;
}

/** Unreadable files of this name in quarantine about which nobody has decided yet, oldest first. */
export async function keyFileTroubles(folder: string, fileName: string): Promise<readonly KeyFileTrouble[]> {
  const names = await namesIn(pathIn(folder, quarantineFolder));
  return names
    .filter((name) => name.replace(/^\d{4}-\d\d-\d\dT\d\d-\d\d-\d\d(\.\d+)?-/, '') === fileName && name !== fileName)
    .filter((name) => !names.includes(`${name}.settled.txt`))
    .map((name) => ({
      kind: 'cannot-read',
      sentence: asideSentence(fileName, 'It did not read as it was written.'),
      quarantinedAs: name,
    }));
}

/** Notes that a person has decided about the unreadable files of this name. They are kept. */
export async function settleKeyFile(setting: KeyFileSetting, fileName: string): Promise<Result<null, StorageProblem>> {
  const refusal = await setting.guard();
  if (refusal) return fail(refusal);
  for (const { quarantinedAs } of await keyFileTroubles(setting.folder, fileName)) {
    if (quarantinedAs === null) continue;
    const done = await markSettled(setting.folder, quarantinedAs, setting.clock());
    if (!done.ok) return done;
  }
  return ok(null);
}

/** A file that cannot be read is put aside with the reason; one of a newer version is left where it is. */
export async function readKeyFile<Data>(
  setting: KeyFileSetting,
  fileName: string,
  kind: RecordKind<Data>,
): Promise<KeyFileRead<Data>> {
  let bytes: Buffer;
  try {
    bytes = await readFile(pathIn(setting.folder, fileName));
  } catch (error) {
    if (systemCode(error) === 'ENOENT') {
      const [trouble] = await keyFileTroubles(setting.folder, fileName);
      return trouble ? { kind: 'bad', trouble } : { kind: 'none' };
    }
    const reason = `The system cannot read it (${systemCode(error) ?? 'unknown'}).`;
    return { kind: 'bad', trouble: await putKeyFileAside(setting, fileName, 'cannot-read', reason) };
  }
  const read = readRecord(bytes, kind, null);
  if (read.ok) return { kind: 'good', data: read.value.data, revision: read.value.revision };
  return { kind: 'bad', trouble: await putKeyFileAside(setting, fileName, read.error.kind, read.error.reason) };
}

/** Replaces what `readKeyFile` has just found good, or makes the file where there was none. */
export async function writeKeyFile<Data>(
  setting: KeyFileSetting,
  fileName: string,
  kind: RecordKind<Data>,
  data: Data,
  revision: number,
): Promise<Result<Data, StorageProblem>> {
  const prepared = recordBytes(kind, { data, revision, savedAt: setting.clock() });
  if (!prepared.ok) return fail({ code: 'invalid', detail: `${fileName}: ${prepared.error}` });
  const refusal = await setting.guard();
  if (refusal) return fail(refusal);
  const written = await writeFileAtomically(pathIn(setting.folder, fileName), prepared.value.bytes);
  if (!written.ok) return written;
  const lost = await setting.guard();
  return lost ? fail(lost) : ok(prepared.value.data);
}

/** Puts a copy from a backup in place, where nothing is; then the decision about the unreadable file is made. */
export async function putBackKeyFile<Data>(
  setting: KeyFileSetting,
  fileName: string,
  kind: RecordKind<Data>,
  copy: Buffer,
): Promise<Result<null, StorageProblem>> {
  const path = pathIn(setting.folder, fileName);
  const read = readRecord(copy, kind, null);
  if (!read.ok) return fail({ code: 'damaged', detail: `${fileName}: ${read.error.reason}` });
  try {
    if (await isThere(path))
      return fail({ code: 'stale-revision', detail: `There is a ${fileName} already; it was not replaced.` });
    const written = await writeKeyFile(setting, fileName, kind, read.value.data, read.value.revision + 1);
    return written.ok ? await settleKeyFile(setting, fileName) : written;
  } catch (error) {
    return fail(problemFromError(error, `Bringing back ${fileName}`));
  }
}
