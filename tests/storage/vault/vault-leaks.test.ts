// Nothing that the program writes or says holds a code in clear: every byte given to the disk, every file left in the folder, every error.
import { cp, mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { changedParts } from '../../../app/domain/people/history-entry.ts';
import { appendHistory } from '../../../app/storage/change-log.ts';
import { SignInStore } from '../../../app/storage/vault/sign-in-store.ts';
import { vaultFile } from '../../../app/storage/vault/vault-data.ts';
import { makeCodeRequest, makeVehicle } from '../../helpers/vehicle-maker.ts';
import { unwrapped } from '../fleet-fixture.ts';
import {
  adaPhrase,
  adasVault,
  benPhrase,
  filesHolding,
  flipped,
  holdsClear,
  otherRef,
  quickMaking,
  ref,
  secretCode,
  startedAgain,
  tamper,
} from './vault-fixture.ts';

const given = vi.hoisted(() => ({ toTheDisk: [] as Buffer[] }));
vi.mock('../../../app/storage/atomic-file.ts', async (original) => {
  const real = await original<typeof import('../../../app/storage/atomic-file.ts')>();
  return {
    ...real,
    // What goes to the disk passes through a temp file with these very bytes.
    writeFileAtomically: (path: string, bytes: Buffer) => {
      given.toTheDisk.push(Buffer.from(bytes));
      return real.writeFileAtomically(path, bytes);
    },
  };
});

describe('looking for a code', () => {
  it('finds it in clear and in the forms that anybody would try', () => {
    for (const form of ['utf8', 'utf16le', 'hex', 'base64'] as const) {
      const bytes =
        form === 'utf16le' ? Buffer.from(secretCode, form) : Buffer.from(Buffer.from(secretCode).toString(form));
      expect([form, holdsClear(Buffer.concat([Buffer.from('x'), bytes, Buffer.from('y')]), secretCode)]).toEqual([
        form,
        true,
      ]);
    }
    for (const shift of ['', 'a', 'ab']) {
      const inside = Buffer.from(`${shift}${secretCode}zz`).toString('base64');
      expect([shift, holdsClear(Buffer.from(inside), secretCode)]).toEqual([shift, true]);
    }
    expect(holdsClear(Buffer.from('K93-4417-PLUM-20587'), secretCode)).toBe(false);
  });

  it('finds a planted one in the folder', async () => {
    const { setting } = await adasVault();
    expect(await filesHolding(setting.folder, secretCode)).toEqual([]);
    await writeFile(join(setting.folder, 'quarantine', 'note.txt'), `the code is ${secretCode}`);
    expect(await filesHolding(setting.folder, secretCode)).toHaveLength(1);
  });
});

describe('a code in clear', () => {
  it('is in nothing that was written, left or said in the whole life of a vault', async () => {
    const said: string[] = [];
    const listen = (...words: unknown[]) =>
      void said.push(words.map((word) => JSON.stringify(word) ?? String(word)).join(' '));
    const spies = (['log', 'warn', 'error', 'info', 'debug'] as const).map((name) =>
      vi.spyOn(console, name).mockImplementation(listen),
    );
    const answers: unknown[] = [];
    given.toTheDisk.length = 0;
    const { setting, vault, recoveryKey } = await adasVault();
    const keepCopy = async (name: string) => {
      await mkdir(join(setting.folder, 'backups', name), { recursive: true });
      await cp(join(setting.folder, vaultFile), join(setting.folder, 'backups', name, vaultFile));
    };
    answers.push(await vault.putCode(ref, secretCode));
    answers.push(await vault.putCode(ref, secretCode));
    answers.push(await vault.putCode(otherRef, secretCode));
    answers.push(await vault.putCode({ ...ref, requestId: 'request-3' }, `${secretCode}\n${secretCode}`));
    await keepCopy('first');
    expect(unwrapped(await vault.lookAt(ref))).toBe(secretCode);
    answers.push(await vault.addPerson('ben-1', benPhrase));
    answers.push(await vault.changePassPhrase('ada-1', adaPhrase, 'three green iron bridges'));
    answers.push(await vault.removePerson('ben-1'));
    await keepCopy('second');
    answers.push(await vault.marks(), await vault.people());
    answers.push(await vault.lookAt({ ...ref, kind: 'radio' }));
    const again = await startedAgain(setting);
    answers.push(await again.unlock('ada-1', secretCode), await again.unlock('ada-1', 'three green iron bridges'));
    await tamper(setting.folder, (data) => {
      const code = data.codes[0];
      if (code?.state === 'held') Object.assign(code.sealed, { tag: flipped(code.sealed.tag) });
    });
    answers.push(await again.lookAt(ref));
    const { recoveryKey: freshKey } = unwrapped(await again.recover(recoveryKey, 'ada-1', benPhrase));
    answers.push(await again.destroy(otherRef, 'ada-1', 'sold'));
    await keepCopy('third');
    const before = makeVehicle('2026-03-01');
    const after = { ...before, codeRequests: [makeCodeRequest('2026-03-02', { kind: 'immobiliser' })] };
    answers.push(
      await appendHistory(setting.folder, 'vehicle-1', {
        at: setting.clock(),
        by: 'ada-1',
        kind: 'look-at-code',
        label: 'Immobiliser code looked at',
        reason: 'Teaching a key',
        revision: null,
        parts: changedParts(before, after),
        isShortened: false,
      }),
    );
    const signIn = new SignInStore({ ...setting, cost: quickMaking.cost });
    answers.push(await signIn.setSecret('ada-1', secretCode), await signIn.signIn('ada-1', secretCode));
    answers.push(await signIn.signIn('ada-1', `${secretCode}!`));
    await writeFile(
      join(setting.folder, vaultFile),
      (await readFile(join(setting.folder, vaultFile))).subarray(0, 900),
    );
    answers.push(await again.lookAt(ref));

    for (const spy of spies) spy.mockRestore();
    expect(given.toTheDisk.length).toBeGreaterThan(12);
    for (const secret of [secretCode, adaPhrase, benPhrase, 'three green iron bridges', recoveryKey, freshKey]) {
      expect(given.toTheDisk.filter((bytes) => holdsClear(bytes, secret))).toEqual([]);
      expect(await filesHolding(setting.folder, secret)).toEqual([]);
      expect(said.filter((words) => holdsClear(Buffer.from(words), secret))).toEqual([]);
      expect(answers.filter((answer) => holdsClear(Buffer.from(JSON.stringify(answer)), secret))).toEqual([]);
    }
    expect(answers.filter((answer) => JSON.stringify(answer).startsWith('{"ok":false'))).toHaveLength(7);
  });

  it('is not in the vault itself when somebody prints it by mistake', async () => {
    const { inspect } = await import('node:util');
    const { vault } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    unwrapped(await vault.lookAt(ref));
    expect(inspect(vault, { depth: 10, showHidden: true })).not.toMatch(/dataKey|PLUM/);
    expect(JSON.stringify(vault)).toBe('{}');
  });
});
