// Which fleet folder a start opens: the one it was told, else the last one, else a copy of the sample fleet made for it.
import { existsSync } from 'node:fs';
import { copySampleFleet } from '../storage/copy-sample-fleet.ts';
import type { Log } from './log.ts';
import type { StartFolder } from './open-desk.ts';
import type { ProgramPaths } from './paths.ts';

/**
 * @param told the folder of the command line, or null
 * @param last the folder a person chose last, or null: a first start
 */
export async function firstFolder(
  told: string | null,
  last: string | null,
  { shippedSample, sampleCopy }: Pick<ProgramPaths, 'shippedSample' | 'sampleCopy'>,
  log: Log,
): Promise<StartFolder> {
  if (told !== null) return { folder: told, isNamed: true };
  if (last !== null) return { folder: last, isNamed: false };
  // What somebody changed in the copy stays.
  if (shippedSample !== null && !existsSync(sampleCopy)) {
    const copied = await copySampleFleet(shippedSample, sampleCopy);
    if (!copied.ok) log.error('program', `the sample fleet was not copied: ${copied.error.code}`);
  }
  return { folder: sampleCopy, isNamed: false };
}
