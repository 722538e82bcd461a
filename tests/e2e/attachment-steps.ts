// What a person does with photographs and documents, for the tests of them: files made by code, chosen, dropped and pasted.
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { testPicture } from '../helpers/make-jpeg.ts';
import { smallDocument } from '../helpers/small-document.ts';
import { section } from './at-the-desk.ts';
import { expect } from './fixtures.ts';

export type GivenFile = { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

/** A photograph of 800 × 600 dots. `red` makes its bytes differ from another's. */
export function photograph(name: string, red: number, orientation?: number): GivenFile {
  return { name, mimeType: 'image/jpeg', buffer: testPicture(800, 600, [red, 70, 60], orientation) };
}

export function document(name: string): GivenFile {
  return { name, mimeType: 'application/pdf', buffer: smallDocument(name) };
}

/** As a phone writes them unless it is told otherwise. */
export const heic: GivenFile = {
  name: 'IMG_0007.HEIC',
  mimeType: 'image/heic',
  buffer: Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic'), Buffer.alloc(64)]),
};

export function attachmentsOf(page: Page): Locator {
  return section(page, 'Photographs and documents');
}

/** Through the button's own file dialog. */
export async function choose(page: Page, files: readonly GivenFile[]): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await attachmentsOf(page).getByRole('button', { name: 'Add files …' }).click();
  await (await chooser).setFiles([...files]);
}

export async function expectAdded(page: Page, count: number): Promise<void> {
  await expect(page.getByText(count === 1 ? '1 file added.' : `${count} files added.`).first()).toBeVisible();
}

/** Files of the disk, held over the middle of the window and let go, as the system tells it of a drag from outside. */
export async function drag(
  page: Page,
  folder: string,
  files: readonly GivenFile[],
): Promise<{ drop(): Promise<void> }> {
  const paths = files.map(({ name }) => path.join(folder, name));
  for (const [at, file] of files.entries()) await writeFile(paths[at] ?? '', file.buffer);
  const debug = await page.context().newCDPSession(page);
  const tell = async (type: 'dragEnter' | 'dragOver' | 'drop') => {
    const data = { items: [], files: paths, dragOperationsMask: 1 };
    await debug.send('Input.dispatchDragEvent', { type, x: 640, y: 400, data });
  };
  await tell('dragEnter');
  await tell('dragOver');
  return { drop: () => tell('drop') };
}

/** A picture on the clipboard, pasted with nothing in particular in focus. */
export async function paste(page: Page, { name, mimeType, buffer }: GivenFile): Promise<void> {
  await page.evaluate(
    ([fileName, type, base64]) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const clipboardData = new DataTransfer();
      clipboardData.items.add(new File([bytes], fileName, { type }));
      globalThis.document.body.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
      );
    },
    [name, mimeType, buffer.toString('base64')] as const,
  );
}

/** Says what it shows, who sees it and whether it is printed, in the form of the one with this name. */
export async function describeFile(
  page: Page,
  name: string,
  said: { readonly caption?: string; readonly readers?: string; readonly isOnSheets?: boolean },
): Promise<void> {
  const place = attachmentsOf(page);
  await place.getByRole('button', { name: new RegExp(`^(Describe|Correct): ${name}$`) }).click();
  const form = place.getByRole('form', { name: `Correct: ${name}`, exact: true });
  if (said.caption !== undefined) await form.getByLabel('What it shows').fill(said.caption);
  if (said.readers !== undefined) await form.getByLabel('Who sees it').selectOption({ label: said.readers });
  if (said.isOnSheets !== undefined) await form.getByLabel('Print it on sheets').setChecked(said.isOnSheets);
  await form.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(form).toHaveCount(0);
}
