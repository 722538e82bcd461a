// What may be said about a photograph or document, what is not changed, and what is not added. No bytes here.
import { describe, expect, it } from 'vitest';
import { type Attachment, attachmentFiles, mostAttachments } from '../../../app/domain/vehicle/attachment.ts';
import {
  attachmentChangeProblems,
  readersAtFirst,
  shownFileName,
  whyNotAdded,
} from '../../../app/domain/vehicle/attachment-rules.ts';
import { makeVehicle, stampAt } from '../../helpers/vehicle-maker.ts';

const hash = (digit: string) => digit.repeat(64);
const picture: Attachment = {
  id: 'photo-one',
  on: '2026-03-04',
  name: 'front.jpg',
  kind: 'jpeg',
  sha256: hash('a'),
  smallSha256: hash('b'),
  printSha256: hash('c'),
  sizeBytes: 1000,
  widthDots: 40,
  heightDots: 30,
  caption: 'Front, left',
  readers: 'workshop',
  isOnSheets: false,
  entered: stampAt('2026-03-04'),
};

describe('files of an attachment', () => {
  it('are named by their own hashes: as given, small, for sheets', () => {
    expect(attachmentFiles(picture)).toEqual([`${hash('a')}.jpg`, `${hash('b')}.jpg`, `${hash('c')}.jpg`]);
    expect(attachmentFiles({ ...picture, kind: 'png', smallSha256: null })).toEqual([
      `${hash('a')}.png`,
      `${hash('c')}.jpg`,
    ]);
    expect(attachmentFiles({ ...picture, kind: 'pdf', smallSha256: null, printSha256: null })).toEqual([
      `${hash('a')}.pdf`,
    ]);
  });
});

describe('who sees a new one', () => {
  it.each([
    ['manager', 'pdf', 'manager'],
    ['manager', 'jpeg', 'workshop'],
    ['technician', 'pdf', 'workshop'],
    ['technician', 'png', 'workshop'],
    ['sales', 'jpeg', 'everyone'],
  ] as const)('of a %s, %s: %s', (role, kind, readers) => {
    expect(readersAtFirst(role, kind)).toBe(readers);
  });
});

describe('the name that is shown', () => {
  it('is one line of plain text that keeps its ending', () => {
    expect(shownFileName('IMG_0417.JPG')).toBe('IMG_0417.JPG');
    expect(shownFileName('a\nb\u0007.pdf')).toBe('a b .pdf');
    expect(shownFileName(' \t ')).toBe('without a name');
    const long = shownFileName(`${'x'.repeat(900)}.jpeg`);
    expect(long).toHaveLength(200);
    expect(long.endsWith('.jpeg')).toBe(true);
  });
});

describe('a change', () => {
  const fields = (change: Partial<Attachment>) =>
    attachmentChangeProblems(picture, { ...picture, ...change }).map(({ field }) => field);

  it('is free in caption, day, who sees it and whether sheets carry it', () => {
    expect(fields({ caption: 'Rear', on: '2026-03-01', readers: 'everyone', isOnSheets: true })).toEqual([]);
  });

  it.each([
    ['name', { name: 'other.jpg' }],
    ['kind', { kind: 'png' }],
    ['sha256', { sha256: hash('d') }],
    ['smallSha256', { smallSha256: null }],
    ['printSha256', { printSha256: hash('d') }],
    ['sizeBytes', { sizeBytes: 1001 }],
    ['widthDots', { widthDots: 41 }],
    ['heightDots', { heightDots: 31 }],
  ] as const)('never touches %s', (field, change) => {
    expect(fields(change)).toEqual([field]);
  });

  it('puts on sheets only a picture with a copy for them, a caption, and not for the manager alone', () => {
    expect(fields({ isOnSheets: true, caption: '  ' })).toEqual(['caption']);
    expect(fields({ isOnSheets: true, readers: 'manager' })).toEqual(['readers']);
    const paper = { ...picture, kind: 'pdf', smallSha256: null, printSha256: null } as const;
    expect(attachmentChangeProblems(paper, { ...paper, isOnSheets: true })).toMatchObject([{ field: 'isOnSheets' }]);
    const uncopied = { ...picture, printSha256: null };
    expect(attachmentChangeProblems(uncopied, { ...uncopied, isOnSheets: true })).toMatchObject([
      { field: 'isOnSheets' },
    ]);
  });

  it('of one that is not in the record makes none', () => {
    expect(attachmentChangeProblems(null, picture)).toMatchObject([{ field: '' }]);
  });
});

describe('adding', () => {
  const vehicle = makeVehicle('2026-02-16', { attachments: [picture] });

  it('is refused for the same bytes, with the name of the one that is there only for who sees it', () => {
    expect(whyNotAdded(vehicle, hash('a'), () => true)).toContain('front.jpg, Front, left');
    expect(whyNotAdded(vehicle, hash('a'), () => false)).not.toContain('front');
    expect(whyNotAdded(vehicle, hash('e'), () => true)).toBeNull();
  });

  it('ends at the limit', () => {
    const many = Array.from({ length: mostAttachments }, (_, at) => ({
      ...picture,
      id: `photo-${at}`,
      sha256: at.toString(16).padStart(64, '0'),
    }));
    const full = makeVehicle('2026-02-16', { attachments: many });
    expect(whyNotAdded(full, hash('e'), () => true)).toMatch(/200 photographs and documents at most/);
    expect(whyNotAdded({ ...full, attachments: many.slice(1) }, hash('e'), () => true)).toBeNull();
  });
});
