// Which photographs stand on which sheet, in which order, and with which words.
import { describe, expect, it } from 'vitest';
import { jobSheet } from '../../../app/domain/sheets/job-sheet.ts';
import { pictureBlocks } from '../../../app/domain/sheets/pictures.ts';
import { readinessSheet } from '../../../app/domain/sheets/readiness-sheet.ts';
import { type Sheet, sheetSchema } from '../../../app/domain/sheets/sheet.ts';
import { windowSheet } from '../../../app/domain/sheets/window-sheet.ts';
import type { Attachment } from '../../../app/domain/vehicle/attachment.ts';
import { exampleAttachments } from '../../helpers/example-pictures.ts';
import { examplePrinting, exampleShop, exampleVehicle, reckonExample } from '../../helpers/sheet-example.ts';
import { sheetText } from '../../helpers/sheet-text.ts';

const [first, second, third] = exampleAttachments;
if (!first || !second || !third) throw new Error('Three photographs are wanted.');

function withThese(...attachments: readonly Attachment[]) {
  return { ...exampleVehicle, attachments: [...attachments] };
}

function idsOn(sheet: Sheet): readonly string[] {
  return sheet.blocks
    .flatMap((block) => (block.kind === 'pictures' ? block.items : []))
    .map((item) => item.attachmentId);
}

const reckoned = reckonExample(exampleVehicle);

describe('photographs on sheets', () => {
  const forEveryone = { ...first, id: 'for-everyone' };
  const forWorkshop: Attachment = { ...second, id: 'for-workshop', readers: 'workshop' };
  const forManager: Attachment = { ...third, id: 'for-manager', readers: 'manager' };
  const notChosen: Attachment = { ...third, id: 'not-chosen', isOnSheets: false };
  const vehicle = withThese(forEveryone, forWorkshop, forManager, notChosen);

  it('are on the readiness sheet where they are chosen and for everyone', () => {
    expect(idsOn(readinessSheet(vehicle, reckoned, exampleShop, examplePrinting))).toEqual(['for-everyone']);
  });

  it('are on the job sheet where they are chosen, and for the workshop as well', () => {
    const sheet = jobSheet(vehicle, reckoned, exampleShop, examplePrinting);
    expect(idsOn(sheet)).toEqual(['for-everyone', 'for-workshop']);
    expect(sheetSchema.safeParse(sheet).success).toBe(true);
  });

  it('are not on the sheet for the windscreen, which is one page', () => {
    expect(idsOn(windowSheet(vehicle, reckoned, exampleShop, examplePrinting))).toEqual([]);
  });

  it('leave no word on the sheet of what is for the manager alone', () => {
    const secret = { ...forManager, caption: 'Purchase invoice', name: 'invoice-secret.jpg' };
    for (const make of [jobSheet, readinessSheet])
      expect(sheetText(make(withThese(forEveryone, secret), reckoned, exampleShop, examplePrinting))).not.toMatch(
        /invoice/i,
      );
  });

  it('make no heading where there is none', () => {
    expect(pictureBlocks(withThese(forManager, notChosen), ['everyone', 'workshop'], 'day-month')).toEqual([]);
  });
});

describe('a photograph', () => {
  it('is named by the copy made for paper, never by the file as it was given', () => {
    const [, block] = pictureBlocks(withThese(first), ['everyone'], 'day-month');
    expect(block?.kind === 'pictures' && block.items[0]?.sha256).toBe(first.printSha256);
    expect(block?.kind === 'pictures' && block.vehicleId).toBe(exampleVehicle.id);
  });

  it('is left out where no such copy could be made', () => {
    expect(pictureBlocks(withThese({ ...first, printSha256: null }), ['everyone'], 'day-month')).toEqual([]);
  });

  it('has its words and its day, and is read out as a photograph', () => {
    const [, block] = pictureBlocks(withThese({ ...first, caption: ' Door, scratched. ' }), ['everyone'], 'day-month');
    const item = block?.kind === 'pictures' ? block.items[0] : undefined;
    expect(item?.caption).toBe('Door, scratched · 4 Mar 2026');
    expect(item?.alternateText).toBe('Photograph of 4 Mar 2026: Door, scratched.');
  });

  it('is read out as one even where nobody has described it', () => {
    const [, block] = pictureBlocks(withThese({ ...first, caption: '  ' }), ['everyone'], 'day-month');
    const item = block?.kind === 'pictures' ? block.items[0] : undefined;
    expect(item?.caption).toBe('4 Mar 2026');
    expect(item?.alternateText).toBe('Photograph of 4 Mar 2026, not described');
  });

  it('comes in the order of its day, and of one day in the order they were added', () => {
    const again = { ...first, id: 'again' };
    const [, block] = pictureBlocks(withThese(third, first, again, second), ['everyone'], 'day-month');
    expect(block?.kind === 'pictures' && block.items.map((item) => item.attachmentId)).toEqual([
      first.id,
      'again',
      second.id,
      third.id,
    ]);
  });
});
