// The files beside the records that a backup holds too, sort by sort, and how each comes back. The one place to add a further sort.
import { mkdir, readdir, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { ok, type Result } from '../domain/shared/result.ts';
import { isThere, syncFolder } from './atomic-file.ts';
import { historyFolder } from './change-log.ts';
import { pathIn, withdrawnFolder } from './fleet-folder.ts';
import { judgeLogo, listLogos, logoPattern } from './logo-file.ts';
import { createFile } from './move-aside.ts';
import { readRecord } from './record-file.ts';
import type { RecordKind } from './record-kind.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';
import { type KeyFileSetting, type KeyFileTrouble, putBackKeyFile, readKeyFile } from './vault/key-file.ts';
import { peopleKeysFile, peopleKeysKind } from './vault/people-keys.ts';
import { vaultFile, vaultKind } from './vault/vault-data.ts';

type OtherSort = {
  /** Whole paths inside the fleet folder; also what a table of contents may name, so nothing that leads out of it. */
  readonly pattern: RegExp;
  readonly list: (folder: string) => Promise<readonly string[]>;
  /** Why these bytes are no good copy: such a file is not carried into a backup, where it would push out the last good one. */
  readonly whyBad: (bytes: Buffer) => string | null;
  /** A person is told when it has gone since the last backup. */
  readonly isMissed: boolean;
  /** Never replaces what is there. False: something was there, and it was left. */
  readonly putBack: (setting: KeyFileSetting, path: string, bytes: Buffer) => Promise<Result<boolean, StorageProblem>>;
};

async function createWhereNothingIs(
  { folder, guard }: KeyFileSetting,
  path: string,
  bytes: Buffer,
): Promise<Result<boolean, StorageProblem>> {
  const to = pathIn(folder, path);
  try {
    if (await isThere(to)) return ok(false);
    const refusal = await guard();
    if (refusal) return { ok: false, error: refusal };
    await mkdir(dirname(to), { recursive: true });
    await createFile(to, bytes);
    await syncFolder(dirname(to));
    return ok(true);
  } catch (error) {
    return { ok: false, error: problemFromError(error, `Bringing back ${path}`) };
  }
}

/** Files of one folder, at whatever depth the pattern allows. What else lies there is not looked at. */
function filesIn(name: string, pattern: RegExp, isMissed: boolean): OtherSort {
  return {
    pattern,
    isMissed,
    list: async (folder) => {
      try {
        const names = await readdir(pathIn(folder, name), { recursive: true });
        return names.map((path) => `${name}/${path.replaceAll('\\', '/')}`).filter((path) => pattern.test(path));
      } catch (error) {
        if (systemCode(error) === 'ENOENT') return [];
        throw error;
      }
    },
    whyBad: () => null,
    putBack: createWhereNothingIs,
  };
}

function keyFile<Data>(fileName: string, kind: RecordKind<Data>): OtherSort & { readonly look: Look } {
  return {
    pattern: new RegExp(`^${fileName.replace('.', '\\.')}$`),
    isMissed: true,
    list: async (folder) => ((await isThere(pathIn(folder, fileName))) ? [fileName] : []),
    whyBad: (bytes) => {
      const read = readRecord(bytes, kind, null);
      return read.ok ? null : read.error.reason;
    },
    putBack: async (setting, _path, bytes) => {
      const present = await readKeyFile(setting, fileName, kind);
      const isInTheWay = present.kind === 'bad' && present.trouble.quarantinedAs === null;
      if (present.kind === 'good' || isInTheWay) return ok(false);
      const done = await putBackKeyFile(setting, fileName, kind, bytes);
      return done.ok ? ok(true) : done;
    },
    look: async (setting) => {
      const present = await readKeyFile(setting, fileName, kind);
      return present.kind === 'bad' ? present.trouble : null;
    },
  };
}

/** Reads the file and puts it aside when it cannot be used; what is wrong with it, or null. */
type Look = (setting: KeyFileSetting) => Promise<KeyFileTrouble | null>;

const keyFiles = {
  [vaultFile]: keyFile(vaultFile, vaultKind),
  [peopleKeysFile]: keyFile(peopleKeysFile, peopleKeysKind),
};

export const keyFileNames: readonly string[] = Object.keys(keyFiles);

const sorts: readonly OtherSort[] = [
  ...Object.values(keyFiles),
  filesIn(historyFolder, /^history\/[a-z0-9-]+\.jsonl$/, true),
  {
    pattern: logoPattern,
    isMissed: true,
    list: listLogos,
    whyBad: (bytes) => {
      const judged = judgeLogo(bytes);
      return typeof judged === 'string' ? judged : null;
    },
    putBack: createWhereNothingIs,
  },
  // A withdrawn record that is no longer here was brought back: nothing to tell.
  filesIn(withdrawnFolder, /^withdrawn\/[a-z0-9-]+(\.\d+)?\.json$/, false),
];

function sortOf(path: string): OtherSort | null {
  return sorts.find((sort) => sort.pattern.test(path)) ?? null;
}

export function isOtherFile(path: string): boolean {
  return sortOf(path) !== null;
}

export function isMissedWhenGone(path: string): boolean {
  return sortOf(path)?.isMissed ?? false;
}

/** Why these bytes are no good copy of that file; null when they are. */
export function whyBadCopy(path: string, bytes: Buffer): string | null {
  const sort = sortOf(path);
  return sort === null ? `Nothing in a fleet folder is called ${path}.` : sort.whyBad(bytes);
}

/** Paths of all that are there now. Throws the system's error when a folder cannot be listed. */
export async function listOtherFiles(folder: string): Promise<string[]> {
  const lists = await Promise.all(sorts.map((sort) => sort.list(folder)));
  return lists.flat();
}

/** The file's bytes when they are a good copy; null when they are not or cannot be had. */
export async function readGoodCopy(folder: string, path: string): Promise<Buffer | null> {
  try {
    const bytes = await readFile(pathIn(folder, path));
    return whyBadCopy(path, bytes) === null ? bytes : null;
  } catch {
    return null;
  }
}

/** True: it is back. False: something is there, and stays. */
export async function putBackOtherFile(
  setting: KeyFileSetting,
  path: string,
  bytes: Buffer,
): Promise<Result<boolean, StorageProblem>> {
  const bad = whyBadCopy(path, bytes);
  if (bad !== null) return { ok: false, error: { code: 'damaged', detail: `${path}: ${bad}` } };
  return (await sortOf(path)?.putBack(setting, path, bytes)) ?? ok(false);
}

/** Looks at both files with keys; those that cannot be used are put aside, where this desk may. Answers what was left in its place. */
export async function lookAtKeyFiles(setting: KeyFileSetting) {
  const left: { readonly fileName: string; readonly kind: KeyFileTrouble['kind']; readonly reason: string }[] = [];
  for (const [fileName, { look }] of Object.entries(keyFiles)) {
    const trouble = await look(setting);
    if (trouble?.quarantinedAs === null) left.push({ fileName, kind: trouble.kind, reason: trouble.sentence });
  }
  return left;
}
