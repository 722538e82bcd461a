// Photographs and documents through the whole desk on a real folder: added, read, opened, changed, taken off and undone, by each role.
import { chmod, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Role } from '../../app/domain/fleet/shop.ts';
import { type AttachmentDraft, mostAttachmentBytes } from '../../app/domain/vehicle/attachment.ts';
import { contentHash } from '../../app/storage/content-hash.ts';
import { madeJpeg, madePng } from '../helpers/made-pictures.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';
import { smallDocument } from '../helpers/small-document.ts';

const personOf: Readonly<Record<Role, string>> = { manager: 'manager', technician: 'tech-one', sales: 'sales-one' };
const photograph = madeJpeg({ width: 4000, height: 3000, orientation: 6, remark: 'front' });
const small = madeJpeg({ width: 240, height: 320 });
const print = madeJpeg({ width: 1200, height: 1600 });

let desk: TestDesk;
let vehicleId: string;

const at = (role: Role) => desk.ask('desk:set-person', { personId: personOf[role] });

async function adding(bytes: Uint8Array, more: object = {}) {
  const { revision } = await desk.ask('vehicle:open', { id: vehicleId });
  const plain = { name: 'file', small: null, print: null, on: '2026-03-18', caption: '' };
  return { id: vehicleId, baseRevision: revision, bytes: new Uint8Array(bytes), ...plain, ...more };
}

async function add(bytes: Uint8Array, more: object = {}) {
  const { view } = await desk.ask('attachment:add', await adding(bytes, more));
  const added = view.vehicle.attachments.at(-1);
  if (!added) throw new Error('Nothing was added.');
  return added;
}

async function seen() {
  return (await desk.ask('vehicle:open', { id: vehicleId })).vehicle.attachments;
}

async function put({ entered: _stamp, ...item }: AttachmentDraft & { entered?: unknown }) {
  const { revision } = await desk.ask('vehicle:open', { id: vehicleId });
  return { id: vehicleId, baseRevision: revision, change: { kind: 'put', list: 'attachments', item } } as const;
}

const files = (folder = 'fleet') => readdir(join(desk.folder, folder, 'attachments', vehicleId)).catch(() => []);

beforeEach(async () => {
  desk = await openTestDesk();
  const shop = await desk.ask('shop:read', {});
  await desk.ask('shop:change', { baseRevision: shop.revision, change: { part: 'people', value: [...testPeople] } });
  const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1001', '1M8GDM9A3KP000009'));
  vehicleId = taken.view.vehicle.id;
});
afterEach(() => desk.discard());

describe('adding', () => {
  it('keeps a photograph byte for byte, with what the page made of it, each in a file named by its hash', async () => {
    const added = await add(photograph, { name: 'IMG_0417.JPG', small, print, caption: 'Front, left' });
    expect(added).toMatchObject({
      name: 'IMG_0417.JPG',
      kind: 'jpeg',
      sha256: contentHash(photograph),
      smallSha256: contentHash(small),
      printSha256: contentHash(print),
      sizeBytes: photograph.length,
      widthDots: 3000,
      heightDots: 4000,
      caption: 'Front, left',
      readers: 'workshop',
      isOnSheets: false,
      entered: { by: 'manager' },
    });
    expect(await files()).toEqual([photograph, small, print].map((bytes) => `${contentHash(bytes)}.jpg`).toSorted());
    const path = join(desk.folder, 'fleet', 'attachments', vehicleId, `${contentHash(photograph)}.jpg`);
    expect(await readFile(path)).toEqual(photograph);
    expect((await stat(path)).mode & 0o222).toBe(0);
  });

  it.each([
    ['the manager’s PDF for the manager alone', 'manager', smallDocument(), 'manager'],
    ['the technician’s PDF for the workshop', 'technician', smallDocument(), 'workshop'],
    ['a manager’s photograph for the workshop', 'manager', madePng(8, 6), 'workshop'],
    ['a technician’s photograph for the workshop', 'technician', madePng(8, 6), 'workshop'],
  ] as const)('keeps %s, until somebody says otherwise', async (_what, role, bytes, readers) => {
    await at(role);
    expect((await add(bytes)).readers).toBe(readers);
  });

  it.each([
    ['a picture of a phone', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'), /^This is a HEIC picture/],
    ['a text', Buffer.from('Not a picture'), /^This is neither a photograph in JPEG or PNG nor a PDF/],
    ['a cut-off photograph', photograph.subarray(0, -2), /damaged or cut off/],
    ['a cut-off PNG', madePng(8, 6).subarray(0, -8), /damaged or cut off/],
    ['a cut-off PDF', smallDocument().subarray(0, -7), /damaged or cut off/],
    [
      'a picture of too many dots',
      madeJpeg({ width: 30_000, height: 30_000 }),
      /900 million dots; at most 250 million/,
    ],
    ['a file that is too large', Buffer.alloc(mostAttachmentBytes + 1), /has 26 MB; at most 25 MB/],
  ])('refuses %s by its bytes, whatever its name says, and keeps nothing of it', async (_what, bytes, sentence) => {
    const error = await desk.refused('attachment:add', await adding(bytes, { name: 'photo.jpg' }));
    expect(error).toMatchObject({ code: 'refused', problems: [{ field: 'file' }] });
    expect(error.problems[0]?.sentence).toMatch(sentence);
    expect(await files()).toEqual([]);
    expect(await seen()).toEqual([]);
  });

  it('says where the same file is already, and names nothing to whoever may not see that one', async () => {
    const invoice = smallDocument('invoice');
    await add(invoice, { name: 'invoice.pdf', caption: 'Purchase' });
    const again = await desk.refused('attachment:add', await adding(invoice, { name: 'another-name.pdf' }));
    expect(again.problems[0]?.sentence).toBe('This file is on this vehicle already: invoice.pdf, Purchase.');
    await at('technician');
    const hidden = await desk.refused('attachment:add', await adding(invoice));
    expect(hidden.problems[0]?.sentence).toBe('This file is on this vehicle already, for the manager alone.');
  });

  it('passes over what a page calls a copy and is none', async () => {
    const added = await add(photograph, { small: print, print: madeJpeg({ width: 8, height: 8, colours: 4 }) });
    expect(added).toMatchObject({ smallSha256: null, printSha256: null });
    expect(await files()).toHaveLength(1);
  });

  it('refuses a record that has changed, a day to come, and a vehicle that sales does not see yet', async () => {
    const input = await adding(photograph);
    expect((await desk.refused('attachment:add', { ...input, baseRevision: 7 })).code).toBe('stale-revision');
    const tomorrow = await desk.refused('attachment:add', { ...input, on: '2026-03-19' });
    expect(tomorrow.problems.map(({ field }) => field)).toEqual(['on']);
    await at('sales');
    expect((await desk.refused('attachment:add', input)).code).toBe('not-found');
    expect(await files()).toEqual([]);
  });
});

describe('reading and opening', () => {
  it('gives the small picture, the whole one, and opens the file with the system’s program', async () => {
    const { id: attachmentId } = await add(photograph, { small, print });
    const read = (size: 'small' | 'print' | 'whole') =>
      desk.ask('attachment:read', { id: vehicleId, attachmentId, size });
    expect(Buffer.from((await read('small')).bytes)).toEqual(small);
    expect(Buffer.from((await read('print')).bytes)).toEqual(print);
    expect(Buffer.from((await read('whole')).bytes)).toEqual(photograph);
    await desk.ask('attachment:open', { id: vehicleId, attachmentId });
    expect(desk.opened).toEqual([
      join(desk.folder, 'fleet', 'attachments', vehicleId, `${contentHash(photograph)}.jpg`),
    ]);
  });

  it('gives the whole picture where there is no small one, and of a PDF no small one', async () => {
    const drawing = madePng(8, 6);
    const picture = await add(drawing);
    const paper = await add(smallDocument());
    const whole = await desk.ask('attachment:read', { id: vehicleId, attachmentId: picture.id, size: 'small' });
    expect([whole.kind, Buffer.from(whole.bytes)]).toEqual(['png', drawing]);
    const input = { id: vehicleId, attachmentId: paper.id, size: 'small' } as const;
    expect((await desk.refused('attachment:read', input)).code).toBe('bad-attachment');
  });
});

describe('who sees it', () => {
  it('is kept from everybody it is not for: record, bytes, opening, changes', async () => {
    const invoice = await add(smallDocument('invoice'));
    const picture = await add(photograph);
    await at('technician');
    expect((await seen()).map(({ id }) => id)).toEqual([picture.id]);
    const one = { id: vehicleId, attachmentId: invoice.id };
    expect((await desk.refused('attachment:read', { ...one, size: 'whole' })).code).toBe('not-found');
    expect((await desk.refused('attachment:open', one)).code).toBe('not-found');
    expect((await desk.refused('vehicle:change', await put({ ...invoice, readers: 'everyone' }))).code).toBe(
      'not-allowed',
    );
    const remove = { kind: 'remove', list: 'attachments', id: invoice.id } as const;
    const { revision } = await desk.ask('vehicle:open', { id: vehicleId });
    const removing = { id: vehicleId, baseRevision: revision, change: remove };
    expect((await desk.refused('vehicle:change', removing)).code).toBe('not-allowed');
    expect((await desk.refused('vehicle:change', await put({ ...picture, readers: 'manager' }))).code).toBe(
      'not-allowed',
    );
    expect(desk.opened).toEqual([]);
  });

  it('is told in the history to nobody else', async () => {
    await add(smallDocument('invoice'), { name: 'invoice.pdf' });
    await add(photograph, { name: 'front.jpg' });
    const told = async () => JSON.stringify(await desk.ask('vehicle:history', { id: vehicleId, place: null }));
    expect(await told()).toMatch(/invoice\.pdf.*front\.jpg|front\.jpg.*invoice\.pdf/);
    await at('technician');
    expect(await told()).toContain('front.jpg');
    expect(await told()).not.toContain('invoice');
  });

  it('is not shown as a manager’s document where money waits for signing in, nor can one be added there', async () => {
    await add(smallDocument('invoice'));
    const manager = { personId: 'manager', secret: 'lantern under copper bridge' };
    await desk.ask('people:give-secret', manager);
    await desk.ask('people:sign-in', manager);
    const { revision, shop } = await desk.ask('shop:read', {});
    const value = { ...shop.signIn, moneyNeedsSignIn: true };
    await desk.ask('shop:change', { baseRevision: revision, change: { part: 'signIn', value } });
    await desk.ask('people:lock', {});
    await at('manager');
    expect(await seen()).toEqual([]);
    expect((await desk.refused('attachment:add', await adding(smallDocument('two')))).code).toBe('not-allowed');
    await add(madePng(8, 6));
    expect(await seen()).toHaveLength(1);
  });
});

describe('changing and taking off', () => {
  it('changes what is said about it, and nothing of the file', async () => {
    const added = await add(photograph, { print });
    await at('technician');
    const changed = await desk.ask(
      'vehicle:change',
      await put({ ...added, caption: 'Rust at the sill', readers: 'everyone', isOnSheets: true }),
    );
    expect(changed.view.vehicle.attachments).toEqual([
      { ...added, caption: 'Rust at the sill', readers: 'everyone', isOnSheets: true },
    ]);
    const other = await desk.refused('vehicle:change', await put({ ...added, sha256: contentHash(small), name: 'x' }));
    expect(other.problems.map(({ field }) => field)).toEqual(['name', 'sha256']);
    const made = await desk.refused('vehicle:change', await put({ ...added, id: 'made-by-hand' }));
    expect(made.problems[0]?.sentence).toMatch(/Add the file again/);
  });

  it('leaves the file where it is, so that undo brings it back whole', async () => {
    const added = await add(photograph, { small });
    const { revision } = await desk.ask('vehicle:open', { id: vehicleId });
    const change = { kind: 'remove', list: 'attachments', id: added.id } as const;
    await desk.ask('vehicle:change', { id: vehicleId, baseRevision: revision, change });
    expect(await seen()).toEqual([]);
    expect(await files()).toHaveLength(2);
    await desk.ask('edit:undo', {});
    expect(await seen()).toEqual([added]);
    const whole = await desk.ask('attachment:read', { id: vehicleId, attachmentId: added.id, size: 'whole' });
    expect(Buffer.from(whole.bytes)).toEqual(photograph);
  });

  it('undoes and redoes the adding by the record alone', async () => {
    const added = await add(photograph);
    await desk.ask('edit:undo', {});
    expect(await seen()).toEqual([]);
    await desk.ask('edit:redo', {});
    expect(await seen()).toEqual([added]);
  });
});

describe('a file that has gone or is damaged', () => {
  const place = (bytes: Buffer) => join(desk.folder, 'fleet', 'attachments', vehicleId, `${contentHash(bytes)}.pdf`);

  it('is told without its name, looked at and put back on Safety copies, and read again', async () => {
    await desk.ask('lot:read', {});
    const invoice = smallDocument('invoice');
    const { id: attachmentId } = await add(invoice, { name: 'invoice-of-the-auction.pdf' });
    await desk.ask('fleet:back-up', {});
    await rm(place(invoice));
    const read = { id: vehicleId, attachmentId, size: 'whole' } as const;
    const error = await desk.refused('attachment:read', read);
    expect(error).toMatchObject({ code: 'bad-attachment' });
    expect(error.detail).toMatch(/Safety copies/);
    const { troubles } = await desk.ask('safety:read', {});
    expect(troubles).toMatchObject([{ fileName: `attachments/${vehicleId}` }]);
    expect(troubles[0]?.sentence).toMatch(/^1 photograph or document of LW-1001 is not in the fleet folder/);
    expect(JSON.stringify(troubles)).not.toContain('invoice');
    expect(desk.emitted.at(-1)).toMatchObject({ name: 'desk:changed', payload: { troubleCount: 1 } });
    const id = troubles[0]?.id ?? '';
    const preview = await desk.ask('safety:preview-trouble', { id });
    expect(preview).toMatchObject({ effect: 'mends' });
    expect(preview.what).toMatch(/^LW-1001, .*: invoice-of-the-auction\.pdf$/);
    await desk.ask('fleet:restore-trouble', { id });
    expect(Buffer.from((await desk.ask('attachment:read', read)).bytes)).toEqual(invoice);
    expect((await desk.ask('desk:read', {})).troubleCount).toBe(0);
  });

  it('is not opened with another program', async () => {
    const paper = smallDocument('paper');
    const { id: attachmentId } = await add(paper);
    await chmod(place(paper), 0o644);
    await writeFile(place(paper), smallDocument('another'));
    expect((await desk.refused('attachment:open', { id: vehicleId, attachmentId })).code).toBe('bad-attachment');
    expect(desk.opened).toEqual([]);
  });

  it('is mended when the same file is added again after it was taken off', async () => {
    const added = await add(photograph);
    const path = place(photograph).replace(/pdf$/, 'jpg');
    await chmod(path, 0o644);
    await writeFile(path, 'spoilt');
    const { revision } = await desk.ask('vehicle:open', { id: vehicleId });
    const change = { kind: 'remove', list: 'attachments', id: added.id } as const;
    await desk.ask('vehicle:change', { id: vehicleId, baseRevision: revision, change });
    await add(photograph);
    expect(await readFile(path)).toEqual(photograph);
  });
});

describe('how much an archive would hold', () => {
  it('is counted from the records', async () => {
    await add(photograph);
    await add(smallDocument());
    expect(await desk.ask('archive:size', {})).toEqual({
      attachments: 2,
      bytes: photograph.length + smallDocument().length,
    });
  });
});
