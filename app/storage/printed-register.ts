// The register of printed sheets: a file to which a line is added for each sheet, never changed, by which a mark is found again. It holds
// no price and no content of a sheet. Lines that cannot be read are passed over.
import { createReadStream } from 'node:fs';
import { mkdir, open } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { z } from 'zod';
import { daySchema, instantSchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { anySheetKindSchema } from '../domain/sheets/sheet.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

export const printedSheetSchema = z.strictObject({
  mark: z.string().min(1).max(12),
  kind: anySheetKindSchema,
  /** Null for a sheet of many vehicles. */
  vehicleId: identifierSchema.nullable(),
  /** Stock number and vehicle as they stood on the sheet. */
  subject: z.string().max(400),
  revision: z.int().min(0),
  /** The day that the sheet takes for today. */
  asOf: daySchema,
  printedAt: instantSchema,
  printedBy: z.string().max(200),
});
export type PrintedSheet = z.infer<typeof printedSheetSchema>;

const lineFeed = 0x0a;

export function registerFile(sheetsFolder: string): string {
  return join(sheetsFolder, 'printed.jsonl');
}

/** True when the file ends in the middle of a line, as a power cut leaves it. */
async function endsTorn(handle: Awaited<ReturnType<typeof open>>, size: number): Promise<boolean> {
  if (size === 0) return false;
  const last = Buffer.alloc(1);
  await handle.read(last, 0, 1, size - 1);
  return last[0] !== lineFeed;
}

/** Adds these lines in one write and waits until they are on the disk. On failure the file is as long as it was, where the system allows. */
export async function notePrinted(
  sheetsFolder: string,
  sheets: readonly PrintedSheet[],
): Promise<Result<null, StorageProblem>> {
  if (sheets.length === 0) return ok(null);
  const path = registerFile(sheetsFolder);
  try {
    await mkdir(sheetsFolder, { recursive: true });
    const handle = await open(path, 'a+');
    try {
      const { size } = await handle.stat();
      const lines = sheets.map((sheet) => `${JSON.stringify(printedSheetSchema.parse(sheet))}\n`).join('');
      // A torn line is ended, not mended: what is there stays as it is.
      const text = (await endsTorn(handle, size)) ? `\n${lines}` : lines;
      try {
        await handle.writeFile(text);
        await handle.sync();
      } catch (error) {
        await handle.truncate(size).catch(() => undefined);
        throw error;
      }
    } finally {
      await handle.close();
    }
    return ok(null);
  } catch (error) {
    return fail(problemFromError(error, `Writing ${path}`));
  }
}

function readLine(line: string): PrintedSheet | null {
  try {
    const read = printedSheetSchema.safeParse(JSON.parse(line));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** Every sheet with this mark, the latest first; none when there is no register yet. Reads line by line, however long it has grown. */
export async function findPrinted(
  sheetsFolder: string,
  mark: string,
): Promise<Result<readonly PrintedSheet[], StorageProblem>> {
  const found: PrintedSheet[] = [];
  const input = createReadStream(registerFile(sheetsFolder), 'utf8');
  try {
    for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
      // Most lines are others'; only these are worth parsing.
      const sheet = line.includes(mark) ? readLine(line) : null;
      if (sheet?.mark === mark) found.unshift(sheet);
    }
    return ok(found);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return ok([]);
    return fail(problemFromError(error, `Reading ${registerFile(sheetsFolder)}`));
  } finally {
    input.destroy();
  }
}
