// Sheets that the program has printed into its fleet folder, read back by a program that has nothing to do with it.
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { pageTexts } from '../helpers/read-pdf.ts';
import { expect, type Program } from './fixtures.ts';

/** All words of a printed sheet, with single spaces between them. */
export async function readPrinted({ fleetFolder }: Program, fileName: string): Promise<string> {
  const pages = pageTexts(await readFile(path.join(fleetFolder, 'sheets', fileName)));
  return pages.join('\n').replace(/\s+/g, ' ');
}

/** The words of a printed sheet as they stand together: what lies in another column or line is another text. */
export async function printedWords({ fleetFolder }: Program, fileName: string): Promise<readonly string[]> {
  const pages = pageTexts(await readFile(path.join(fleetFolder, 'sheets', fileName)));
  return pages
    .join('\n')
    .split(/\n|\s{2,}/)
    .filter((text) => text !== '');
}

/** No amount in any of the ways in which one is written (412.50, 412,5, $, USD), and none of these numbers, with or without a comma. */
export function expectNoMoney(text: string, amounts: readonly number[]): void {
  expect(text).not.toMatch(/\d[.,]\d\d(?!\d)\s*(USD|\$)?/);
  for (const amount of amounts) {
    const digits = String(amount).replace(/\B(?=(\d{3})+$)/, ',?');
    expect(text).not.toMatch(new RegExp(`\\b${digits}\\b`));
  }
  expect(text).not.toMatch(/USD|\$/);
}
