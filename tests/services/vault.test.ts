// Codes at the desk: who may keep, see, copy and destroy one, what the history says of it, and what the person reads when it is refused.
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestDesk, type TestDesk } from '../helpers/open-test-desk.ts';
import { managerPhrase, openVaultDesk, technicianPhrase, type VaultDesk } from '../helpers/vault-desk.ts';

let given: VaultDesk;
let desk: TestDesk;
let vehicleId: string;

const immobiliser = '48213';
const radio = '7305';

beforeEach(async () => {
  given = await openVaultDesk();
  ({ desk, vehicleId } = given);
});
afterEach(() => desk.discard());

function put(requestId: string, value: string, more: { keptBecause?: string; replaces?: boolean } = {}) {
  return { vehicleId, requestId, value, keptBecause: '', replaces: false, ...more };
}
function look(requestId: string, more: object = {}) {
  return { vehicleId, requestId, why: 'teaching a key', step: null, isHandOver: false, ...more };
}
async function codeOf(requestId: string) {
  const { codes } = await desk.ask('vault:codes', { vehicleId });
  const code = codes.find((one) => one.requestId === requestId);
  if (!code) throw new Error(`Nothing is said of ${requestId}.`);
  return code;
}
async function historyText() {
  return readFile(join(desk.folder, 'fleet', 'history', `${vehicleId}.jsonl`), 'utf8').catch(() => '');
}
async function unlockedTechnician() {
  await given.at('tech-one');
  await desk.ask('vault:unlock', { passPhrase: technicianPhrase });
}

describe('the vault', () => {
  it('is open for who made it, and locked when another person comes to the desk', async () => {
    expect(await desk.ask('vault:state', {})).toMatchObject({ state: 'open', hasKey: true, heldCodes: 0 });
    await desk.ask('vault:put-code', put('request-1', immobiliser));
    await given.at('tech-one');
    expect(await desk.ask('vault:state', {})).toMatchObject({ state: 'locked', hasKey: true, heldCodes: 1 });
    expect((await desk.refused('vault:look', look('request-1', { step: given.steps[0] }))).detail).toContain('locked');
    await given.at('manager');
    expect(await desk.ask('vault:state', {})).toMatchObject({ state: 'locked' });
    expect(desk.emitted.map(({ name }) => name)).toContain('vault:locked');
  });

  it('opens with the person’s own pass phrase only, and counts wrong ones across restarts', async () => {
    await given.at('tech-one');
    const wrong = await desk.refused('vault:unlock', { passPhrase: managerPhrase });
    expect(wrong).toMatchObject({ code: 'refused', problems: [{ field: 'passPhrase' }] });
    await desk.refused('vault:unlock', { passPhrase: 'not it at all' });
    const third = await desk.refused('vault:unlock', { passPhrase: 'nor this one' });
    expect(third.detail).toMatch(/Wait \d+ seconds/);
    desk = await desk.reopen();
    await desk.ask('desk:set-person', { personId: 'tech-one' });
    const waiting = await desk.refused('vault:unlock', { passPhrase: technicianPhrase });
    expect(waiting.detail).toMatch(/Too many wrong tries. Wait \d+ second/);
  });

  it('is locked when nobody has used it for ten minutes, and at the next start', async () => {
    await desk.ask('vault:put-code', put('request-1', immobiliser));
    desk.passTime(11 * 60);
    desk.session.dayMayHaveChanged();
    expect(await desk.ask('vault:state', {})).toMatchObject({ state: 'locked' });
    await desk.ask('vault:unlock', { passPhrase: managerPhrase });
    desk = await desk.reopen();
    expect(await desk.ask('vault:state', {})).toMatchObject({ state: 'locked', heldCodes: 1 });
  });

  it('works after the fleet folder was moved', async () => {
    await desk.ask('vault:put-code', put('request-1', immobiliser));
    await desk.session.close();
    const elsewhere = await mkdtemp(join(tmpdir(), 'lotwright-moved-'));
    await cp(join(desk.folder, 'fleet'), join(elsewhere, 'fleet'), { recursive: true });
    await rm(desk.folder, { recursive: true });
    desk = await openTestDesk(elsewhere);
    await desk.ask('vault:unlock', { passPhrase: managerPhrase });
    expect(await desk.ask('vault:look', look('request-1'))).toMatchObject({ value: immobiliser });
  });

  it('gives people keys and takes them away; sales gets none', async () => {
    const sales = await desk.refused('vault:add-person', { personId: 'sales-one', passPhrase: technicianPhrase });
    expect(sales.detail).toContain('Sales sees no codes');
    await desk.ask('vault:put-code', put('request-1', immobiliser));
    const { state } = await desk.ask('vault:remove-person', { personId: 'tech-one' });
    expect(state).toMatchObject({ state: 'open', peopleIds: ['manager'], heldCodes: 1 });
    const last = await desk.refused('vault:remove-person', { personId: 'manager' });
    expect(last.detail).toContain('last person');
    await given.at('tech-one');
    const out = await desk.refused('vault:unlock', { passPhrase: technicianPhrase });
    expect(out.detail).toContain('no key to the vault');
  });

  it('takes a new pass phrase, and a lost one is replaced by the recovery key, once', async () => {
    await desk.ask('vault:put-code', put('request-1', immobiliser));
    const weak = await desk.refused('vault:change-pass-phrase', {
      oldPassPhrase: managerPhrase,
      newPassPhrase: '1234',
    });
    expect(weak.problems).toMatchObject([{ field: 'newPassPhrase' }]);
    await desk.ask('vault:change-pass-phrase', {
      oldPassPhrase: managerPhrase,
      newPassPhrase: 'three green iron bridges',
    });
    await desk.ask('vault:lock', {});
    await desk.refused('vault:unlock', { passPhrase: managerPhrase });
    const { recoveryKey } = given;
    const mistyped = await desk.refused('vault:recover', { recoveryKey: `${recoveryKey}A`, passPhrase: managerPhrase });
    expect(mistyped.problems).toMatchObject([{ field: 'recoveryKey' }]);
    const recovered = await desk.ask('vault:recover', { recoveryKey, passPhrase: managerPhrase });
    expect(recovered.state).toMatchObject({ state: 'open' });
    expect(recovered.recoveryKey).not.toBe(recoveryKey);
    expect(await desk.ask('vault:look', look('request-1'))).toMatchObject({ value: immobiliser });
    const again = await desk.refused('vault:recover', { recoveryKey, passPhrase: managerPhrase });
    expect(again.detail).toContain('not the present recovery key');
    const { recoveryKey: third } = await desk.ask('vault:new-recovery-key', {});
    expect(third).not.toBe(recovered.recoveryKey);
  });
});

describe('keeping a code', () => {
  it('catches a code of another kind and a value of another form, and keeps it with a reason', async () => {
    const mixedUp = await desk.refused('vault:put-code', put('request-1', radio));
    expect(mixedUp.problems.map(({ field }) => field)).toEqual(['value', 'keptBecause']);
    expect(mixedUp.problems[0]?.sentence).toContain('radio code');
    const odd = await desk.refused('vault:put-code', put('request-2', '73051188'));
    expect(odd.problems[0]?.sentence).toContain('usually 4 digits');
    expect(JSON.stringify([mixedUp, odd])).not.toMatch(/7305/);
    await desk.ask('vault:put-code', put('request-2', '73051188', { keptBecause: 'as the letter says' }));
    expect((await codeOf('request-2')).happenings).toMatchObject([{ kind: 'put-code', reason: 'as the letter says' }]);
    expect(await desk.ask('vault:look', look('request-2'))).toMatchObject({ value: '73051188' });
  });

  it('does not let the code into the reason', async () => {
    const refused = await desk.refused(
      'vault:put-code',
      put('request-2', '73051188', { keptBecause: 'the letter says 7305-1188' }),
    );
    expect(refused.problems).toMatchObject([{ field: 'keptBecause' }]);
    expect(await historyText()).not.toContain('7305');
  });

  it('replaces one that is kept only when told to', async () => {
    await desk.ask('vault:put-code', put('request-1', immobiliser));
    const there = await desk.refused('vault:put-code', put('request-1', '11223'));
    expect(there.detail).toContain('kept for this request already');
    await desk.ask('vault:put-code', put('request-1', '11223', { replaces: true }));
    expect(await desk.ask('vault:look', look('request-1'))).toMatchObject({ value: '11223' });
  });
});

describe('looking at a code', () => {
  beforeEach(async () => {
    await desk.ask('vault:put-code', put('request-1', immobiliser));
    await desk.ask('vault:put-code', put('request-2', radio));
  });

  it('is in the history of the vehicle and at the request, with who, when and why', async () => {
    await desk.ask('vault:look', look('request-1', { why: 'Teaching the second key' }));
    const [seen] = (await codeOf('request-1')).happenings;
    expect(seen).toMatchObject({ kind: 'look-at-code', by: 'manager', reason: 'Teaching the second key' });
    expect((await codeOf('request-2')).happenings).toMatchObject([{ kind: 'put-code' }]);
    expect(await historyText()).toContain('Teaching the second key');
    expect(await historyText()).not.toContain(immobiliser);
  });

  it('hands nothing out when the history cannot be written', async () => {
    const path = join(desk.folder, 'fleet', 'history');
    await rm(path, { recursive: true });
    await writeFile(path, 'a file where the folder was');
    const refused = await desk.refused('vault:look', look('request-1'));
    expect(JSON.stringify(refused)).not.toContain(immobiliser);
    await rm(path);
  });

  it('is for a technician only with a step that needs the code', async () => {
    await unlockedTechnician();
    const noStep = await desk.refused('vault:look', look('request-2'));
    expect(noStep).toMatchObject({ code: 'not-allowed' });
    expect(noStep.detail).toContain('No open programming step');
    const whichStep = await desk.refused('vault:look', look('request-1'));
    expect(whichStep.problems).toMatchObject([{ field: 'step' }]);
    const invented = await desk.refused('vault:look', look('request-1', { step: { jobId: 'job-0001', stepId: 'x' } }));
    expect(invented.problems).toMatchObject([{ field: 'step' }]);
    const [step] = given.steps;
    expect(step).toBeDefined();
    expect(await desk.ask('vault:look', look('request-1', { step }))).toEqual({
      value: immobiliser,
      hiddenAfterSeconds: 30,
    });
    expect((await codeOf('request-1')).happenings[0]).toMatchObject({ by: 'tech-one' });
    expect((await codeOf('request-1')).happenings[0]?.reason).toMatch(/^Step \d+, .+\. teaching a key$/);
  });

  it('is not for sales, whatever is asked', async () => {
    await given.at('sales-one');
    for (const name of ['vault:state', 'vault:lock', 'vault:hide'] as const)
      expect((await desk.refused(name, {})).code).toBe('not-allowed');
    expect((await desk.refused('vault:codes', { vehicleId })).code).toBe('not-allowed');
    expect((await desk.refused('vault:look', look('request-1'))).code).toBe('not-allowed');
    expect((await desk.refused('vault:put-code', put('request-1', immobiliser))).code).toBe('not-allowed');
  });

  it('shows one at a time', async () => {
    await desk.ask('vault:look', look('request-1'));
    expect((await desk.refused('vault:look', look('request-2'))).detail).toContain('one at a time');
    await desk.ask('vault:hide', {});
    expect(await desk.ask('vault:look', look('request-2'))).toMatchObject({ value: radio });
    desk.passTime(31);
    expect(await desk.ask('vault:look', look('request-1'))).toMatchObject({ value: immobiliser });
  });

  it('comes before copying, which is told too, and the clipboard is cleared when the vault is locked', async () => {
    const copy = { vehicleId, requestId: 'request-1' };
    expect((await desk.refused('vault:copy', copy)).detail).toContain('Only a code that is being shown');
    await desk.ask('vault:look', look('request-1'));
    await desk.ask('vault:copy', copy);
    expect(desk.copied.at(-1)).toBe(immobiliser);
    expect((await codeOf('request-1')).happenings[0]?.label).toContain('copied to the clipboard');
    await desk.ask('vault:lock', {});
    expect(desk.copied.at(-1)).toBe('');
  });

  it('ends with the sale; then the manager hands it to the buyer and destroys it', async () => {
    await given.sell('2026-03-17');
    const sold = await desk.refused('vault:look', look('request-1'));
    expect(sold.detail).toContain('sold on 2026-03-17');
    expect((await desk.refused('vault:put-code', put('request-3', 'KD-4471'))).code).toBe('not-allowed');
    const handOver = look('request-1', { isHandOver: true, why: 'Handed over at the desk' });
    expect(await desk.ask('vault:look', handOver)).toMatchObject({ value: immobiliser });
    await desk.ask('vault:destroy', { vehicleId, requestId: 'request-1', why: 'Handed to the buyer' });
    const code = await codeOf('request-1');
    expect(code).toMatchObject({ state: 'destroyed', destroyedOn: null });
    expect(code.happenings.map(({ kind }) => kind)).toEqual(['destroy-code', 'look-at-code', 'put-code']);
    const gone = await desk.refused('vault:look', handOver);
    expect(gone.detail).toContain('has been destroyed');
  });

  it('is no hand-over before the sale, nor by a technician after it', async () => {
    expect((await desk.refused('vault:look', look('request-1', { isHandOver: true }))).detail).toContain('sale first');
    await given.sell('2026-03-17');
    await unlockedTechnician();
    expect((await desk.refused('vault:look', look('request-1', { isHandOver: true }))).code).toBe('not-allowed');
  });
});

describe('codes after the sale', () => {
  beforeEach(() => desk.ask('vault:put-code', put('request-1', immobiliser)));

  it('are destroyed by the program after the shop’s days, and the record keeps that there was one', async () => {
    const { revision } = await desk.ask('shop:read', {});
    await desk.ask('shop:change', {
      baseRevision: revision,
      change: { part: 'daysUntilCodesAreDestroyed', value: 14 },
    });
    await given.sell('2026-03-17');
    expect(await codeOf('request-1')).toMatchObject({ state: 'held', destroyedOn: '2026-03-31' });
    desk.setToday('2026-03-30');
    desk.session.dayMayHaveChanged();
    await desk.ask('vault:lock', {});
    expect(await codeOf('request-1')).toMatchObject({ state: 'held' });
    desk.setToday('2026-03-31');
    desk.session.dayMayHaveChanged();
    await desk.ask('vault:lock', {});
    const code = await codeOf('request-1');
    expect(code).toMatchObject({ state: 'destroyed' });
    expect(code.happenings[0]).toMatchObject({
      kind: 'destroy-code',
      by: 'program',
      reason: '14 days after the sale, as the shop has set',
    });
  });

  it('are destroyed at the next start too', async () => {
    await given.sell('2026-03-17');
    await desk.session.close();
    desk = await openTestDesk(desk.folder, '2030-01-01');
    await desk.ask('vault:lock', {});
    expect(await codeOf('request-1')).toMatchObject({ state: 'destroyed' });
  });
});

describe('a vault that something else has changed', () => {
  const vaultPath = () => join(desk.folder, 'fleet', 'vault.json');
  type File = {
    data: { codes: { ref: { requestId: string }; sealed: { tag: string; text: string; nonce: string } }[] };
  };
  async function tamper(change: (codes: File['data']['codes']) => void) {
    const file = JSON.parse(await readFile(vaultPath(), 'utf8')) as File;
    change(file.data.codes);
    await writeFile(vaultPath(), `${JSON.stringify(file, null, 2)}\n`);
  }

  beforeEach(async () => {
    await desk.ask('vault:put-code', put('request-1', immobiliser));
    await desk.ask('vault:put-code', put('request-2', radio));
    await desk.ask('vault:put-code', put('request-3', 'KD-4471'));
  });

  it('does not show the code that was tampered with, and all others', async () => {
    await tamper(([first]) => {
      if (first) first.sealed.tag = first.sealed.tag.replace(/^./, (one) => (one === 'A' ? 'B' : 'A'));
    });
    const refused = await desk.refused('vault:look', look('request-1'));
    expect(refused.detail).toContain('has been changed by something else');
    expect(await desk.ask('vault:look', look('request-2'))).toMatchObject({ value: radio });
    expect((await codeOf('request-1')).happenings.map(({ kind }) => kind)).toEqual(['put-code']);
  });

  it('does not show a code that was put at another request', async () => {
    await tamper((codes) => {
      const [first, second] = codes;
      if (first && second) [first.sealed, second.sealed] = [second.sealed, first.sealed];
    });
    for (const requestId of ['request-1', 'request-2'])
      expect((await desk.refused('vault:look', look(requestId))).detail).toContain('belongs to another request');
    expect(await desk.ask('vault:look', look('request-3'))).toMatchObject({ value: 'KD-4471' });
  });

  it('is put aside when it is cut off; the records stay, and a new vault can be made', async () => {
    await writeFile(vaultPath(), (await readFile(vaultPath())).subarray(0, 700));
    const refused = await desk.refused('vault:look', look('request-1'));
    expect(refused.detail).toContain('kept unchanged in quarantine');
    expect(await desk.ask('vault:state', {})).toMatchObject({ state: 'damaged', heldCodes: 0 });
    expect((await desk.ask('vehicle:open', { id: vehicleId })).vehicle.codeRequests).toHaveLength(3);
    expect((await codeOf('request-1')).happenings).toMatchObject([{ kind: 'put-code' }]);
    expect((await desk.refused('vault:make', { passPhrase: managerPhrase })).detail).toContain('quarantine');
    expect(await desk.ask('vault:start-anew', {})).toMatchObject({ state: 'none' });
    await desk.ask('vault:make', { passPhrase: managerPhrase });
    await desk.ask('vault:put-code', put('request-1', immobiliser));
    expect(await desk.ask('vault:look', look('request-1'))).toMatchObject({ value: immobiliser });
  });
});
