// Codes that nothing holds any more: of vehicles taken out of the fleet, of requests removed; and that a vault put back from a backup is read.
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestDesk, type TestDesk } from '../helpers/open-test-desk.ts';
import { managerPhrase, openVaultDesk, requestOf, type VaultDesk } from '../helpers/vault-desk.ts';

let given: VaultDesk;
let desk: TestDesk;
let vehicleId: string;
const value = '48213';

beforeEach(async () => {
  given = await openVaultDesk();
  ({ desk, vehicleId } = given);
});
afterEach(() => desk.discard());

const put = (requestId: string, code = value) =>
  desk.ask('vault:put-code', { vehicleId, requestId, value: code, keptBecause: 'as the letter says', replaces: false });
async function heldCodes() {
  // Waits its turn behind what the program does by itself.
  await desk.ask('vault:lock', {});
  return (await desk.ask('vault:state', {})).heldCodes;
}
async function historyText() {
  return readFile(join(desk.folder, 'fleet', 'history', `${vehicleId}.jsonl`), 'utf8');
}
async function withdraw() {
  const { revision } = await desk.ask('vehicle:open', { id: vehicleId });
  await desk.ask('vehicle:withdraw', { id: vehicleId, baseRevision: revision });
}
async function onDay(day: string) {
  desk.setToday(day);
  desk.session.dayMayHaveChanged();
  return heldCodes();
}

describe('a vehicle that was taken out of the fleet', () => {
  beforeEach(async () => {
    await put('request-1');
  });

  it('keeps its codes for the shop’s days, then the program destroys them and says so', async () => {
    await withdraw();
    expect(await onDay('2026-04-16')).toBe(1);
    expect(await onDay('2026-04-17')).toBe(0);
    const told = await historyText();
    expect(told).toContain('30 days after the vehicle was taken out of the fleet, as the shop has set');
    expect(told).not.toContain(value);
  });

  it('keeps them for good once undo has brought it back', async () => {
    await withdraw();
    await desk.ask('edit:undo', {});
    expect(await onDay('2027-01-01')).toBe(1);
  });

  it('is told from one whose record is damaged or lost: these codes stay', async () => {
    await desk.session.close();
    const file = join(desk.folder, 'fleet', 'vehicles', `${vehicleId}.json`);
    await writeFile(file, 'not a record');
    desk = await openTestDesk(desk.folder, '2030-01-01');
    expect(await heldCodes()).toBe(1);
  });
});

describe('a request that is removed', () => {
  beforeEach(async () => {
    await put('request-2', '7305');
    await put('request-3', 'QX-7719');
  });
  const remove = (id: string) => given.change({ kind: 'remove', list: 'codeRequests', id });

  it('takes its code with it, tells of it, and undo brings back the request without the code', async () => {
    await remove('request-2');
    expect(await heldCodes()).toBe(1);
    expect(await historyText()).toContain('Its request was removed');
    await desk.ask('edit:undo', {});
    const { codes } = await desk.ask('vault:codes', { vehicleId });
    expect(codes.find(({ requestId }) => requestId === 'request-2')).toMatchObject({ state: 'destroyed' });
    expect(codes.find(({ requestId }) => requestId === 'request-3')).toMatchObject({ state: 'held' });
  });

  it('takes a code with it that was kept after undo, when the removal is done again', async () => {
    await remove('request-2');
    await desk.ask('edit:undo', {});
    await desk.ask('vault:unlock', { passPhrase: managerPhrase });
    await put('request-2', '7306');
    expect(await heldCodes()).toBe(2);
    await desk.ask('edit:redo', {});
    expect(await heldCodes()).toBe(1);
  });

  it('keeps its code when the removal is refused', async () => {
    await put('request-1');
    await expect(remove('request-1')).rejects.toThrow('still refers to this entry');
    expect(await heldCodes()).toBe(3);
  });

  it('whose adding was taken back loses its code at the next start', async () => {
    await given.change({ kind: 'put', list: 'codeRequests', item: requestOf('request-4', 'radio', 'Radio') });
    await put('request-4', '7305');
    await desk.ask('edit:undo', {});
    expect(await heldCodes()).toBe(3);
    desk = await desk.reopen();
    expect(await heldCodes()).toBe(2);
    expect(await historyText()).toContain('Its request is not in the record any more');
  });
});

describe('a vault put back from a backup', () => {
  it('is read without opening the fleet anew, and opens with the same pass phrase', async () => {
    await put('request-1');
    // A backup by hand waits for the first rows of the lot.
    await desk.ask('lot:read', {});
    await desk.ask('fleet:back-up', {});
    await desk.session.close();
    const file = join(desk.folder, 'fleet', 'vault.json');
    await writeFile(file, 'not a vault');
    desk = await openTestDesk(desk.folder);
    const { troubles } = await desk.ask('safety:read', {});
    expect(await desk.ask('vault:state', {})).not.toMatchObject({ state: 'locked' });
    const trouble = troubles.find(({ fileName }) => fileName === 'vault.json');
    if (!trouble) throw new Error('Nothing is said of the damaged vault.');
    await desk.ask('fleet:restore-trouble', { id: trouble.id });
    expect(await desk.ask('vault:state', {})).toMatchObject({ state: 'locked', hasKey: true, heldCodes: 1 });
    await desk.ask('vault:unlock', { passPhrase: managerPhrase });
    const look = { vehicleId, requestId: 'request-1', why: 'teaching a key', step: null, isHandOver: false };
    expect(await desk.ask('vault:look', look)).toMatchObject({ value });
  });
});
