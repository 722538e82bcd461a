// The register of printed sheets on a real folder: lines added, found again, and what a cut-off file leaves.
import { appendFile, mkdtemp, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findPrinted, notePrinted, type PrintedSheet, registerFile } from '../../app/storage/printed-register.ts';

const sheet = (mark: string, more: Partial<PrintedSheet> = {}): PrintedSheet => ({
  mark,
  kind: 'job-sheet',
  vehicleId: 'vehicle-one',
  subject: 'LW-1001 · 2017 Merrowick Mallow',
  revision: 3,
  asOf: '2026-03-18',
  printedAt: '2026-03-18T09:00:00.000Z',
  printedBy: 'Mara Lindqvist',
  ...more,
});

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lotwright-register-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

async function found(mark: string) {
  const answer = await findPrinted(folder, mark);
  if (!answer.ok) throw new Error(answer.error.detail);
  return answer.value;
}

describe('the register of printed sheets', () => {
  it('finds nothing before anything was printed', async () => {
    expect(await found('AAAAAA')).toEqual([]);
  });

  it('finds a sheet by its mark, the latest first where two share one', async () => {
    await notePrinted(folder, [sheet('AAAAAA'), sheet('BBBBBB')]);
    await notePrinted(folder, [sheet('AAAAAA', { revision: 9 })]);
    expect((await found('AAAAAA')).map(({ revision }) => revision)).toEqual([9, 3]);
    expect(await found('BBBBBB')).toEqual([sheet('BBBBBB')]);
    expect(await found('CCCCCC')).toEqual([]);
  });

  it('keeps what it has when its last line was cut off, and goes on after it', async () => {
    await notePrinted(folder, [sheet('AAAAAA'), sheet('BBBBBB')]);
    const { length } = await readFile(registerFile(folder));
    await truncate(registerFile(folder), length - 20);
    await notePrinted(folder, [sheet('CCCCCC')]);
    expect(await found('AAAAAA')).toHaveLength(1);
    expect(await found('BBBBBB')).toEqual([]);
    expect(await found('CCCCCC')).toHaveLength(1);
  });

  it('passes over a line that is no sheet', async () => {
    await appendFile(registerFile(folder), '{"mark":"AAAAAA","price":1}\nnonsense AAAAAA\n');
    await notePrinted(folder, [sheet('AAAAAA')]);
    expect(await found('AAAAAA')).toEqual([sheet('AAAAAA')]);
  });

  it('says so when it cannot be written', async () => {
    await writeFile(join(folder, 'sheets'), 'a file where the folder should be');
    const noted = await notePrinted(join(folder, 'sheets'), [sheet('AAAAAA')]);
    expect(noted.ok).toBe(false);
  });
});
