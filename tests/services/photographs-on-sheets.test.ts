// Photographs from the fleet folder onto paper: read from their files when a sheet is printed, told of where a file is missing or damaged,
// and only those that the sheet's readers may see.
import { chmod, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { AttachmentReaders } from '../../app/domain/vehicle/attachment.ts';
import { mostPicturesTogether, notePictures } from '../../app/services/pictures-together.ts';
import { testPicture } from '../helpers/make-jpeg.ts';
import { openTestDesk, type TestDesk, takeInOf } from '../helpers/open-test-desk.ts';
import { PdfObjects } from '../helpers/pdf-objects.ts';
import { flatText } from '../helpers/read-pdf.ts';

let desk: TestDesk;
let vehicleId: string;

beforeEach(async () => {
  desk = await openTestDesk();
  vehicleId = (await desk.ask('vehicle:take-in', takeInOf('LW-1001', '1M8GDM9A3KP000009'))).view.vehicle.id;
});
afterEach(() => desk.discard());

/** A photograph of the vehicle with a copy for paper of this width, chosen for sheets; answers the name of that copy's file. */
async function photographed(widthDots: number, readers: AttachmentReaders, caption: string): Promise<string> {
  const { revision } = await desk.ask('vehicle:open', { id: vehicleId });
  const { view } = await desk.ask('attachment:add', {
    id: vehicleId,
    baseRevision: revision,
    name: `${caption}.jpg`,
    bytes: new Uint8Array(testPicture(4 * widthDots, 3 * widthDots, [200, 90, 60])),
    small: null,
    print: new Uint8Array(testPicture(widthDots, 480, [200, 90, 60])),
    on: '2026-03-18',
    caption,
  });
  const added = view.vehicle.attachments.at(-1);
  if (!added) throw new Error('Nothing was added.');
  const { entered: _stamp, ...draft } = added;
  const item = { ...draft, readers, isOnSheets: true };
  await desk.ask('vehicle:change', {
    id: vehicleId,
    baseRevision: view.revision,
    change: { kind: 'put', list: 'attachments', item },
  });
  return `${added.printSha256 ?? ''}.jpg`;
}

async function printed(kind: 'job-sheet' | 'readiness-sheet'): Promise<Buffer> {
  const [file] = await desk.ask('sheet:print', { kind, vehicleIds: [vehicleId] });
  return readFile(join(desk.folder, 'fleet', 'sheets', file?.fileName ?? ''));
}

const widthsIn = (bytes: Buffer) =>
  new PdfObjects(bytes).allDictionaries.filter((one) => one['/Subtype'] === '/Image').map((one) => one['/Width']);

const pathOf = (fileName: string) => join(desk.folder, 'fleet', 'attachments', vehicleId, fileName);

describe('photographs of the fleet folder on paper', () => {
  it('are the copies made for it, on each sheet those for its readers', async () => {
    await photographed(640, 'everyone', 'Front');
    await photographed(320, 'workshop', 'Underside');
    expect(widthsIn(await printed('job-sheet'))).toEqual([640, 320]);
    expect(widthsIn(await printed('readiness-sheet'))).toEqual([640]);
  });

  it('are told of where the file is gone or is not what it was', async () => {
    const gone = await photographed(640, 'everyone', 'Front');
    const damaged = await photographed(320, 'everyone', 'Back');
    await rm(pathOf(gone));
    await chmod(pathOf(damaged), 0o644);
    await writeFile(pathOf(damaged), testPicture(320, 480, [1, 2, 3]));
    const bytes = await printed('job-sheet');
    expect(widthsIn(bytes)).toEqual([]);
    const text = flatText(bytes);
    expect(text.match(/The file of this photograph is missing or damaged\./g)).toHaveLength(2);
    expect(text).toContain('Front');
    expect(text).toContain('Back');
  });

  it('are in one file of several sheets once each', async () => {
    await photographed(640, 'everyone', 'Front');
    const made = await desk.ask('sheet:make', {
      kinds: ['job-sheet', 'readiness-sheet'],
      vehicleIds: [vehicleId],
      to: 'folder',
      isJoint: true,
    });
    const bytes = await readFile(join(desk.folder, 'fleet', 'sheets', made.files[0]?.fileName ?? ''));
    expect(made.files[0]?.sheets).toBe(2);
    expect(widthsIn(bytes)).toEqual([640]);
  });
});

describe('the bound of photographs in one file', () => {
  const sheetWith = (...hashes: readonly number[]) => ({
    blocks: [
      {
        kind: 'pictures' as const,
        vehicleId: 'vehicle-one',
        items: hashes.map((hash) => ({
          attachmentId: `photograph-${hash}`,
          sha256: hash.toString(16).padStart(64, '0'),
          caption: '',
          alternateText: 'Photograph',
        })),
      },
    ],
  });

  it('counts each photograph once, and says a sentence as soon as it is passed', () => {
    const held = new Set<string>();
    const all = Array.from({ length: mostPicturesTogether }, (_, index) => index);
    expect(notePictures(held, sheetWith(...all))).toBeNull();
    expect(notePictures(held, sheetWith(...all))).toBeNull();
    expect(notePictures(held, { blocks: [] })).toBeNull();
    expect(notePictures(held, sheetWith(mostPicturesTogether))).toMatch(/^One file holds at most 400 photographs/);
  });
});
