// Who may write: one desk at a time, and nobody is locked out for good by a crash.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { contentsOf, fleetOf, openForTest, textOf, unwrapped } from './fleet-fixture.ts';
import { aVehicle } from './fleet-records-fixture.ts';
import { byAda } from './telling-fixture.ts';

async function endedProcessId(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '']);
  await once(child, 'exit');
  return child.pid ?? 0;
}

async function leaveNote(folder: string, changes: object, minutesAgo = 0): Promise<void> {
  const path = join(folder, 'in-use.json');
  const note = {
    format: 'lotwright-in-use',
    version: 1,
    user: 'ben',
    host: 'desk-2',
    processId: 4242,
    since: '2026-03-04T07:00:00.000Z',
    refreshedAt: '2026-03-04T07:00:00.000Z',
    token: 'another run',
    ...changes,
  };
  await writeFile(path, JSON.stringify(note));
  const written = new Date(Date.now() - minutesAgo * 60_000);
  await utimes(path, written, written);
}

it('holds a note while open and takes it away when closed', async () => {
  const folder = await fleetOf(['abcd']);
  const store = await openForTest(folder);
  expect(JSON.parse(await textOf(folder, 'in-use.json'))).toMatchObject({ user: 'ada', host: 'desk-1' });
  await store.close();
  await expect(readFile(join(folder, 'in-use.json'))).rejects.toThrow('ENOENT');
});

it('opens for reading only, and says who has it, while another store of the same process has it', async () => {
  const folder = await fleetOf(['abcd']);
  const first = await openForTest(folder);
  const second = await openForTest(folder, { takeOver: true });
  expect(second.isReadOnly).toMatchObject({ kind: 'open-elsewhere', holder: { user: 'ada' }, canTakeOver: false });
  expect(second.vehicles().get('abcd')).toMatchObject({ isReadOnly: true, revision: 1 });
  expect(await second.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).toMatchObject({ error: { code: 'read-only' } });
  expect(unwrapped(await first.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).revision).toBe(2);
  await second.close();
  expect(unwrapped(await first.saveVehicle(aVehicle('abcd', 'K3'), 2, byAda)).revision).toBe(3);
});

it('touches nothing at all while it is open for reading only, damaged files included', async () => {
  const folder = await fleetOf(['abcd']);
  await writeFile(join(folder, 'vehicles', 'wxyz.json'), 'torn');
  await writeFile(join(folder, 'vehicles', 'abcd.json.tmp-1234567890abcdef'), 'being written');
  await leaveNote(folder, {});
  const before = await contentsOf(folder);
  const store = await openForTest(folder, { createFolder: false });
  expect(store.isReadOnly?.sentence).toContain('ben on desk-2');
  expect(store.troubles()).toMatchObject([{ fileName: 'vehicles/wxyz.json', kind: 'not-json', quarantinedAs: null }]);
  await store.close();
  expect(await contentsOf(folder)).toEqual(before);
});

it('takes over at once from a run on this host whose process has ended', async () => {
  const folder = await fleetOf(['abcd']);
  await leaveNote(folder, { host: 'desk-1', processId: await endedProcessId() });
  expect((await openForTest(folder)).isReadOnly).toBeNull();
});

it('takes over from an earlier run that had the very process id of this one', async () => {
  const folder = await fleetOf(['abcd']);
  await leaveNote(folder, { host: 'desk-1', processId: process.pid });
  expect((await openForTest(folder)).isReadOnly).toBeNull();
});

it('does not take over from a process of this host that is alive', async () => {
  const folder = await fleetOf(['abcd']);
  await leaveNote(folder, { host: 'desk-1', processId: process.ppid }, 1);
  expect((await openForTest(folder, { takeOver: true })).isReadOnly).toMatchObject({ canTakeOver: false });
});

it('leaves it to a person to take over from another host, and only after ten minutes of silence', async () => {
  const folder = await fleetOf(['abcd']);
  await leaveNote(folder, {}, 9);
  const early = await openForTest(folder, { takeOver: true });
  expect(early.isReadOnly).toMatchObject({ canTakeOver: false, holder: { host: 'desk-2' } });
  await leaveNote(folder, {}, 11);
  const asked = await openForTest(folder);
  expect(asked.isReadOnly).toMatchObject({ kind: 'open-elsewhere', canTakeOver: true });
  expect((await openForTest(folder, { takeOver: true })).isReadOnly).toBeNull();
});

it('is not stopped by a note that a power cut left empty, but waits while one may be being written', async () => {
  const folder = await fleetOf(['abcd']);
  const path = join(folder, 'in-use.json');
  await writeFile(path, '');
  expect((await openForTest(folder)).isReadOnly).toMatchObject({ kind: 'open-elsewhere', holder: null });
  await utimes(path, new Date(Date.now() - 60_000), new Date(Date.now() - 60_000));
  expect((await openForTest(folder)).isReadOnly).toBeNull();
});

it('stops writing as soon as another desk has taken the fleet over', async () => {
  const folder = await fleetOf(['abcd']);
  const store = await openForTest(folder);
  await leaveNote(folder, { user: 'cora', token: 'the one who took over' });
  const before = await textOf(folder, 'vehicles/abcd.json');
  expect(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).toMatchObject({ error: { code: 'read-only' } });
  expect(store.isReadOnly?.kind).toBe('lost-to-another');
  expect(store.vehicles().get('abcd')?.isReadOnly).toBe(true);
  expect(await textOf(folder, 'vehicles/abcd.json')).toBe(before);
  await store.close();
  expect(await textOf(folder, 'in-use.json')).toContain('the one who took over');
});

it('goes on when a person removed the note by hand, and puts it back', async () => {
  const folder = await fleetOf(['abcd']);
  const store = await openForTest(folder);
  await rm(join(folder, 'in-use.json'));
  expect(unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).revision).toBe(2);
  expect(await textOf(folder, 'in-use.json')).toContain('"ada"');
});
