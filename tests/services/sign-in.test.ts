// Signing in at a real desk on a real folder: what it opens, what closes it, and that nobody can lock everybody out.
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Shop } from '../../app/domain/fleet/shop.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';

const vin = '1M8GDM9A3KP000009';
const managerPhrase = 'lantern under copper bridge';
const techPin = '704281';
let desk: TestDesk;
let vehicleId: string;

async function setShop(change: { part: 'signIn'; value: Shop['signIn'] } | { part: 'people'; value: Shop['people'] }) {
  const { revision } = await desk.ask('shop:read', {});
  return desk.ask('shop:change', { baseRevision: revision, change });
}

async function setRules(rules: Partial<Shop['signIn']>) {
  const { shop } = await desk.ask('shop:read', {});
  return setShop({ part: 'signIn', value: { ...shop.signIn, ...rules } });
}

const signInManager = () => desk.ask('people:sign-in', { personId: 'manager', secret: managerPhrase });
const signInTech = () => desk.ask('people:sign-in', { personId: 'tech-one', secret: techPin });

/** A shop of three, of whom the manager and the technician have something to sign in with; the manager has signed in. */
beforeEach(async () => {
  desk = await openTestDesk();
  await setShop({ part: 'people', value: [...testPeople] });
  vehicleId = (await desk.ask('vehicle:take-in', takeInOf('LW-1001', vin))).view.vehicle.id;
  await desk.ask('people:give-secret', { personId: 'manager', secret: managerPhrase });
  await signInManager();
  await desk.ask('people:give-secret', { personId: 'tech-one', secret: techPin });
});
afterEach(() => desk.discard());

describe('a shop that wants no signing in', () => {
  it('never takes whoever was only picked for somebody who has signed in', async () => {
    await desk.ask('people:lock', {});
    const { signIn, person } = await desk.ask('desk:read', {});
    expect(person.role).toBe('manager');
    expect(signIn).toMatchObject({ isLocked: false, signedInId: null, adds: ['codes'] });
  });

  it('works as ever under a picked name, and signs out whoever was signed in', async () => {
    expect((await desk.ask('desk:read', {})).signIn.signedInId).toBe('manager');
    const picked = await desk.ask('desk:set-person', { personId: 'tech-one' });
    expect(picked.signIn.signedInId).toBeNull();
    expect((await desk.ask('lot:read', {})).map((row) => row.money)).toEqual([null]);
    expect((await desk.ask('desk:set-person', { personId: 'manager' })).seesMoney).toBe(true);
  });

  it('shows money only signed in where the manager says so, and then wipes out no amount', async () => {
    await setRules({ moneyNeedsSignIn: true });
    await desk.ask('people:lock', {});
    const before = await desk.ask('vehicle:open', { id: vehicleId });
    expect(before.costs).toBeNull();
    expect(before.vehicle.purchase.priceCents).toBe(0);
    const { vehicle, revision } = before;
    const change = { kind: 'set', section: 'purchase', value: vehicle.purchase } as const;
    expect((await desk.refused('vehicle:change', { id: vehicleId, baseRevision: revision, change })).code).toBe(
      'not-allowed',
    );
    expect((await desk.refused('money:read', {})).code).toBe('sign-in');
    expect((await desk.refused('shop:read', {})).code).toBe('sign-in');
    await signInManager();
    expect((await desk.ask('vehicle:open', { id: vehicleId })).vehicle.purchase.priceCents).toBe(640_000);
  });
});

describe('a shop that wants signing in', () => {
  beforeEach(() => setRules({ wantsSignIn: true }));

  it('shows a locked desk the list of names and nothing of a record, a file or the settings', async () => {
    await desk.ask('people:lock', {});
    const locked = await desk.ask('desk:read', {});
    expect(locked).toMatchObject({ shop: null, troubleCount: 0, undo: null, redo: null, seesMoney: false });
    expect(locked.people.map(({ name, secretForm }) => [name, secretForm])).toEqual([
      ['Manager', 'pass-phrase'],
      ['Una Technician', 'pin'],
      ['Sal Sales', null],
    ]);
    expect(JSON.stringify(locked)).not.toMatch(/LW-1001|Merrowick|Road test/);
    expect((await desk.refused('lot:read', {})).code).toBe('sign-in');
    expect((await desk.refused('desk:set-person', { personId: 'tech-one' })).code).toBe('sign-in');
    expect((await desk.refused('people:change-secret', { oldSecret: 'x', newSecret: 'y' })).code).toBe('sign-in');
  });

  it('is locked after a start, and opened by each with their own secret', async () => {
    desk = await desk.reopen();
    expect((await desk.ask('desk:read', {})).signIn.isLocked).toBe(true);
    expect((await signInTech()).person.role).toBe('technician');
    expect((await desk.ask('vehicle:open', { id: vehicleId })).costs).toBeNull();
    expect((await signInManager()).person.role).toBe('manager');
    expect((await desk.ask('vehicle:open', { id: vehicleId })).costs).not.toBeNull();
  });

  it('tells of no change while it is locked', async () => {
    const open = await desk.ask('vehicle:open', { id: vehicleId });
    const change = { kind: 'set', section: 'arrival', value: { expectedOn: null, arrivedOn: '2026-03-05' } } as const;
    const written = desk.ask('vehicle:change', { id: vehicleId, baseRevision: open.revision, change });
    await desk.ask('people:lock', {});
    const from = desk.emitted.length;
    await written.catch(() => undefined);
    expect(desk.emitted.slice(from).map(({ name }) => name)).not.toContain('lot:row-changed');
  });

  it('locks after the idle minutes, counted from the last thing that a person did', async () => {
    await setRules({ idleMinutes: 3 });
    desk.passTime(150);
    // The page asks by itself now and then; that is nobody's doing.
    await desk.ask('lot:read', {});
    desk.passTime(60);
    expect((await desk.ask('desk:read', {})).signIn.isLocked).toBe(true);
    await signInManager();
    desk.passTime(150);
    await desk.ask('people:active', {});
    desk.passTime(60);
    expect((await desk.ask('desk:read', {})).signIn.isLocked).toBe(false);
  });

  it('says how long to wait after wrong tries, also after a new start, and then lets the right one in', async () => {
    const wrong = () => desk.refused('people:sign-in', { personId: 'tech-one', secret: '111222' });
    await desk.ask('people:lock', {});
    expect((await wrong()).problems).toEqual([{ field: 'secret', sentence: 'This is not it.' }]);
    await wrong();
    expect((await wrong()).problems[0]?.sentence).toBe('This is not it. Wait 5 seconds before the next try.');
    desk = await desk.reopen();
    // The clock of the test begins anew with each start: set back, so the whole wait is owed.
    expect((await desk.ask('people:wait', { personId: 'tech-one' })).waitMilliseconds).toBe(5_000);
    expect(
      (await desk.refused('people:sign-in', { personId: 'tech-one', secret: techPin })).problems[0]?.sentence,
    ).toBe('Too many wrong tries. Wait 5 seconds before the next try.');
    desk.passTime(6);
    expect((await signInTech()).signIn.signedInId).toBe('tech-one');
  });

  it('keeps what can be undone for the same person, and not for another', async () => {
    expect((await desk.ask('desk:read', {})).undo).not.toBeNull();
    await desk.ask('people:lock', {});
    expect((await signInManager()).undo).not.toBeNull();
    expect((await signInTech()).undo).toBeNull();
  });
});

describe('who has a secret', () => {
  it('is decided by a manager who has signed in, once one can', async () => {
    await desk.ask('people:lock', {});
    for (const refused of [
      await desk.refused('people:take-secret', { personId: 'manager' }),
      await desk.refused('people:give-secret', { personId: 'sales-one', secret: '918273' }),
    ])
      expect(refused).toMatchObject({ code: 'sign-in', detail: expect.stringContaining('Sign in first.') });
    const { revision } = await desk.ask('shop:read', {});
    const change = { part: 'people' as const, value: [...testPeople] };
    expect((await desk.refused('shop:change', { baseRevision: revision, change })).code).toBe('sign-in');
  });

  it('is changed by each with the present one first', async () => {
    await signInTech();
    const wrong = await desk.refused('people:change-secret', { oldSecret: '111222', newSecret: '506172' });
    expect(wrong.problems).toEqual([{ field: 'oldSecret', sentence: 'This is not it.' }]);
    const weak = await desk.refused('people:change-secret', { oldSecret: techPin, newSecret: '1234' });
    expect(weak.problems[0]?.field).toBe('newSecret');
    await desk.ask('people:change-secret', { oldSecret: techPin, newSecret: '506172' });
    expect((await desk.refused('people:sign-in', { personId: 'tech-one', secret: techPin })).code).toBe('refused');
    await desk.ask('people:sign-in', { personId: 'tech-one', secret: '506172' });
  });

  it('ends with being switched off or removed', async () => {
    const off = testPeople.map((person) => ({ ...person, isActive: person.id !== 'tech-one' }));
    await setShop({ part: 'people', value: off });
    expect(await readFile(join(desk.folder, 'fleet', 'people-keys.json'), 'utf8')).not.toContain('tech-one');
    await setShop({ part: 'people', value: [...testPeople] });
    expect((await signInTech().catch((error: Error) => error.message)) as string).toContain(
      'no pass phrase or PIN yet',
    );
  });

  it('cannot leave everybody locked out', async () => {
    await setRules({ wantsSignIn: true });
    const taken = await desk.refused('people:take-secret', { personId: 'manager' });
    expect(taken.detail).toContain('the only manager');
    const { revision } = await desk.ask('shop:read', {});
    const other = {
      id: 'other-one',
      name: 'Other',
      role: 'manager',
      labourCentsPerHour: null,
      isActive: true,
    } as const;
    const value = [...testPeople.map((person) => ({ ...person, isActive: person.id !== 'manager' })), other];
    const refused = await desk.refused('shop:change', { baseRevision: revision, change: { part: 'people', value } });
    expect(refused.problems[0]?.sentence).toContain('the only manager');
  });

  it('must include a manager before signing in can be wanted', async () => {
    await desk.ask('people:take-secret', { personId: 'manager' });
    const { revision, shop } = await desk.ask('shop:read', {});
    for (const wanted of [{ wantsSignIn: true }, { moneyNeedsSignIn: true }]) {
      const change = { part: 'signIn', value: { ...shop.signIn, ...wanted } } as const;
      const refused = await desk.refused('shop:change', { baseRevision: revision, change });
      expect(refused.problems[0]?.sentence).toContain('Give a manager');
    }
  });
});

describe('the file of keys', () => {
  const path = () => join(desk.folder, 'fleet', 'people-keys.json');
  beforeEach(() => setRules({ wantsSignIn: true }));

  it('goes with the folder to another computer', async () => {
    desk = await desk.reopen();
    expect((await signInManager()).signIn.signedInId).toBe('manager');
  });

  it('is not taken for an empty one when it is damaged: the desk stays locked and says the way out', async () => {
    await desk.session.close();
    await writeFile(path(), '{"format":"lotwright-people-keys"');
    await rm(join(desk.folder, 'fleet', 'backups'), { recursive: true });
    desk = await openTestDesk(desk.folder);
    const { signIn } = await desk.ask('desk:read', {});
    expect(signIn.isLocked).toBe(true);
    expect(signIn.trouble).toContain('people-keys.json cannot be used.');
    expect((await desk.refused('people:sign-in', { personId: 'manager', secret: managerPhrase })).code).toBe('refused');
    expect((await desk.refused('people:bring-back-keys', {})).detail).toContain('No backup');
  });

  it('comes back from a backup, with the secrets it had', async () => {
    const good = await readFile(path(), 'utf8');
    const backup = join(desk.folder, 'fleet', 'backups', '2026-03-17T08-00-00-daily');
    await mkdir(backup, { recursive: true });
    await desk.session.close();
    await writeFile(join(backup, 'people-keys.json'), good);
    await writeFile(path(), 'xx');
    desk = await openTestDesk(desk.folder);
    expect((await desk.ask('people:bring-back-keys', {})).signIn.trouble).toBeNull();
    expect((await signInManager()).signIn.signedInId).toBe('manager');
  });

  it('taken away by hand opens the records to whoever has the folder, under the picked name', async () => {
    await desk.session.close();
    await rm(path());
    desk = await openTestDesk(desk.folder);
    const { signIn } = await desk.ask('desk:read', {});
    expect(signIn).toMatchObject({ isLocked: false, signedInId: null, managerHasSecret: false });
    await desk.ask('people:give-secret', { personId: 'manager', secret: 'another phrase altogether' });
    expect((await desk.ask('desk:read', {})).signIn.isLocked).toBe(true);
  });
});
