// Puts the newest copy of a file with keys that a backup in the fleet folder holds in place of one that could not be read.
import { readFile } from 'node:fs/promises';
import { fail, ok, type Result } from '../../domain/shared/result.ts';
import { backupsFolder, namesIn, pathIn } from '../fleet-folder.ts';
import type { RecordKind } from '../record-kind.ts';
import { storageSentence, systemCode } from '../storage-problem.ts';
import { type KeyFileSetting, putBackKeyFile } from './key-file.ts';

async function copyIn(path: string): Promise<Buffer | null> {
  try {
    return await readFile(path);
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes(systemCode(error) ?? '')) return null;
    throw error;
  }
}

/** A copy that cannot be read itself is passed over for an older one. The error is a sentence for the person. */
export async function bringBackKeyFile<Data>(
  setting: KeyFileSetting,
  fileName: string,
  kind: RecordKind<Data>,
): Promise<Result<null, string>> {
  const names = (await namesIn(pathIn(setting.folder, backupsFolder))).reverse();
  for (const name of names) {
    const copy = await copyIn(pathIn(setting.folder, `${backupsFolder}/${name}/${fileName}`));
    if (copy === null) continue;
    const back = await putBackKeyFile(setting, fileName, kind, copy);
    if (back.ok) return ok(null);
    if (back.error.code !== 'damaged')
      return fail(back.error.code === 'stale-revision' ? back.error.detail : storageSentence(back.error.code));
  }
  return fail(`No backup in the fleet folder holds a copy of ${fileName} that can be read.`);
}
