// No code, pass phrase or recovery key is found in anything that the program wrote or told in a whole life of codes at the desk: records,
// history, backups, logs, printed sheets (their text too), exported tables, events, answers. The search finds what is planted.
import { execFileSync } from 'node:child_process';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { ChannelInput, ChannelName } from '../../app/contract/channels.ts';
import { answerCall } from '../../app/shell/answer-call.ts';
import { openLog } from '../../app/shell/log.ts';
import { Vault } from '../../app/storage/vault/vault.ts';
import type { TestDesk } from '../helpers/open-test-desk.ts';
import { flatText } from '../helpers/read-pdf.ts';
import { managerPhrase, openVaultDesk, technicianPhrase, type VaultDesk } from '../helpers/vault-desk.ts';
import { holdsClear } from '../storage/vault/vault-fixture.ts';

/** Long enough not to turn up by chance, in the forms that people type. */
const immobiliser = '904417735520668';
const keyCode = 'QX-7719-VOLE-30842';
const newPhrase = 'three green iron bridges';
const sender = { contentsId: 7, isMainFrame: true, url: 'app://lotwright/index.html' };

let given: VaultDesk;
let desk: TestDesk;
let vehicleId: string;
let answers: string[];
/** As the shell answers the page, with a real log. */
let call: <Name extends ChannelName>(name: Name, input: unknown) => Promise<unknown>;

beforeEach(async () => {
  given = await openVaultDesk();
  ({ desk, vehicleId } = given);
  answers = [];
  const clock = () => '2026-03-18T09:00:00.000Z';
  const log = openLog({ file: join(desk.folder, 'logs', 'program.log'), clock, echo: false });
  call = async (channel, input) => {
    const answer = await answerCall(
      { channel, input, sender },
      { session: async () => desk.session, log, windowContentsId: () => 7, checksOutput: true },
    );
    for (const error of desk.reported.splice(0)) log.error('desk', channel, error);
    // The two answers that exist to carry a secret to the page are looked at by themselves.
    if (channel !== 'vault:look' && !('recoveryKey' in Object((answer as { value?: object }).value)))
      answers.push(JSON.stringify(answer));
    return answer;
  };
});
afterEach(async () => {
  vi.restoreAllMocks();
  await desk.discard();
});

/** The bytes as they lie there, and of a PDF also what is in its compressed streams and what it says. */
async function formsOf(path: string): Promise<Buffer[]> {
  const bytes = await readFile(path);
  if (!path.endsWith('.pdf')) return [bytes];
  const unpacked = execFileSync('qpdf', ['--qdf', '--object-streams=disable', path, '-'], { maxBuffer: 64_000_000 });
  return [bytes, unpacked, Buffer.from(flatText(bytes))];
}

type Written = { readonly path: string; readonly forms: readonly Buffer[] };

/** Everything in the folder, read once. */
async function writtenIn(folder: string): Promise<Written[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return Promise.all(
    entries.map(async (entry) => {
      const path = join(entry.parentPath, entry.name);
      const forms = entry.isFile() ? await formsOf(path) : [];
      return { path, forms: [Buffer.from(entry.name), ...forms] };
    }),
  );
}

function holding(written: readonly Written[], secret: string): string[] {
  return written.filter(({ forms }) => forms.some((bytes) => holdsClear(bytes, secret))).map(({ path }) => path);
}

async function filesHolding(folder: string, secret: string): Promise<string[]> {
  return holding(await writtenIn(folder), secret);
}

function put(requestId: string, value: string, more: object = {}): ChannelInput<'vault:put-code'> {
  return { vehicleId, requestId, value, keptBecause: 'as the letter says', replaces: false, ...more };
}
const look = (requestId: string, more: object = {}) => ({
  vehicleId,
  requestId,
  why: 'teaching a key',
  step: null,
  isHandOver: false,
  ...more,
});

async function keepLookAndCopy() {
  await call('vault:put-code', put('request-1', immobiliser));
  await call('vault:put-code', put('request-1', immobiliser, { keptBecause: `it is ${immobiliser}` }));
  await call('vault:put-code', put('request-3', keyCode));
  expect(await call('vault:look', look('request-1'))).toMatchObject({ ok: true, value: { value: immobiliser } });
  await call('vault:copy', { vehicleId, requestId: 'request-1' });
  expect(desk.copied).toContain(immobiliser);
  await call('vault:look', look('request-3'));
  await call('vault:hide', {});
  expect(await call('vault:look', look('request-3'))).toMatchObject({ ok: true, value: { value: keyCode } });
  await call('vault:codes', { vehicleId });
}

/** Calls that go wrong in every way in which they can. */
async function failCalls() {
  await call('vault:put-code', put('request-1', immobiliser));
  await call('vault:put-code', put('no-such-request', immobiliser));
  await call('vault:put-code', { ...put('request-1', immobiliser), [immobiliser]: keyCode });
  await call('vault:put-code', { ...put('request-1', immobiliser), value: [immobiliser] });
  await call('vault:put-code', put('request-1', `${immobiliser}\n${keyCode}`, { replaces: true }));
  await call('vault:put-code', put('request-1', immobiliser.repeat(40)));
  await call('vault:unlock', { passPhrase: immobiliser });
  await call('vault:unlock', { passPhrase: `${managerPhrase}!` });
  await call('vault:change-pass-phrase', { oldPassPhrase: keyCode, newPassPhrase: 'short' });
  await call('vault:recover', { recoveryKey: given.recoveryKey.slice(0, -1), passPhrase: newPhrase });
  await call('vault:add-person', { personId: 'tech-one', passPhrase: technicianPhrase });
  const broken = new TypeError(`sealing ${immobiliser} for ${managerPhrase}`);
  vi.spyOn(Vault.prototype, 'putCode').mockRejectedValueOnce(broken);
  expect(await call('vault:put-code', put('request-2', keyCode))).toMatchObject({ error: { code: 'unexpected' } });
  vi.spyOn(Vault.prototype, 'unlock').mockRejectedValueOnce(new Error(`derived from ${managerPhrase}`));
  expect(await call('vault:unlock', { passPhrase: managerPhrase })).toMatchObject({ error: { code: 'unexpected' } });
}

describe('a code at the desk', () => {
  it('is in nothing that was written or told but the answer to a look', async () => {
    await call('lot:read', {});
    await keepLookAndCopy();
    await failCalls();
    const request = (await desk.ask('vehicle:open', { id: vehicleId })).vehicle.codeRequests[0];
    if (!request) throw new Error('The request is gone.');
    const { entered: _entered, ...item } = request;
    await given.change({ kind: 'put', list: 'codeRequests', item: { ...item, note: 'Letter in the file' } });
    await call('edit:undo', {});
    await call('edit:redo', {});
    await call('fleet:back-up', {});
    await call('sheet:print', { kind: 'job-sheet', vehicleIds: [vehicleId] });
    await call('sheet:print', { kind: 'readiness-sheet', vehicleIds: [vehicleId] });
    for (const table of ['open', 'ageing', 'days-by-cause', 'sold'] as const) await call('money:export', { table });
    await call('shop:read', {});
    await call('lot:read', {});
    await given.at('tech-one');
    await call('vault:unlock', { passPhrase: technicianPhrase });
    await call('vault:look', look('request-1', { step: given.steps[0] }));
    await given.at('manager');
    await call('vault:unlock', { passPhrase: managerPhrase });
    await call('vault:change-pass-phrase', { oldPassPhrase: managerPhrase, newPassPhrase: newPhrase });
    await call('vault:remove-person', { personId: 'tech-one' });
    const renewed = (await call('vault:new-recovery-key', {})) as { value: { recoveryKey: string } };
    await given.sell('2026-03-17');
    await call('vault:look', look('request-3', { isHandOver: true }));
    await call('vault:destroy', { vehicleId, requestId: 'request-3', why: 'Handed to the buyer' });
    await call('fleet:back-up', {});
    await call('sheet:print', { kind: 'job-sheet', vehicleIds: [vehicleId] });
    await call('vehicle:open', { id: vehicleId });
    await call('desk:read', {});
    await desk.session.close();

    const { folder } = desk;
    const names = (await readdir(folder, { recursive: true })).map((name) => name.replaceAll('\\', '/'));
    for (const must of [
      /vault\.json$/,
      /history\/.+\.jsonl$/,
      /backups\/.+\.json$/,
      /\.pdf$/,
      /\.csv$/,
      /program\.log$/,
    ])
      expect(
        names.filter((name) => must.test(name)),
        String(must),
      ).not.toEqual([]);
    expect(await readFile(join(folder, 'logs', 'program.log'), 'utf8')).toContain('words left out');
    const told = JSON.stringify([answers, desk.emitted]);
    expect(answers.filter((answer) => answer.startsWith('{"ok":false')).length).toBeGreaterThan(10);
    const written = await writtenIn(folder);
    const secrets = [immobiliser, keyCode, managerPhrase, technicianPhrase, newPhrase, given.recoveryKey];
    for (const secret of [...secrets, renewed.value.recoveryKey]) {
      expect(holding(written, secret)).toEqual([]);
      expect(holdsClear(Buffer.from(told), secret)).toBe(false);
    }
  }, 90_000);

  it('would be found where it does not belong: in a file, in a name, in the compressed text of a sheet', async () => {
    await given.change({
      kind: 'put',
      list: 'notes',
      item: { id: 'note-0001', on: '2026-03-18', text: `the code is ${keyCode}` },
    } as never);
    expect(await filesHolding(desk.folder, keyCode)).not.toEqual([]);
    // The stock number stands on the sheet and not in clear in its bytes: only unpacking finds it.
    await call('sheet:print', { kind: 'job-sheet', vehicleIds: [vehicleId] });
    const pdfs = (await filesHolding(desk.folder, '1M8GDM9AXKP042788')).filter((path) => path.endsWith('.pdf'));
    expect(pdfs).toHaveLength(1);
    await writeFile(join(desk.folder, `${immobiliser}.txt`), 'empty');
    expect(await filesHolding(desk.folder, immobiliser)).toHaveLength(1);
    await writeFile(join(desk.folder, 'planted.bin'), Buffer.from(managerPhrase).toString('base64'));
    expect(await filesHolding(desk.folder, managerPhrase)).toHaveLength(1);
  });
});
