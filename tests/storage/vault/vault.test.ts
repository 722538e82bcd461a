// The vault on a real folder: putting, seeing and destroying codes, people and their pass phrases, the recovery key.
import { cp, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createVault, openVault } from '../../../app/storage/vault/open-vault.ts';
import { tempFolder, unwrapped } from '../fleet-fixture.ts';
import {
  adaPhrase,
  adasVault,
  benPhrase,
  otherRef,
  problemOf,
  ref,
  secretCode,
  settingIn,
  startedAgain,
  vaultDataIn,
} from './vault-fixture.ts';

describe('a code', () => {
  it('is seen again after the program was started again and the pass phrase entered', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.putCode(ref, ` ${secretCode} `));
    unwrapped(await vault.putCode(otherRef, '3041'));
    const again = await startedAgain(setting);
    expect(again.unlockedBy).toBeNull();
    expect(problemOf(await again.lookAt(ref))).toBe('locked');
    unwrapped(await again.unlock('ada-1', adaPhrase));
    expect(again.unlockedBy).toBe('ada-1');
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
    expect(unwrapped(await again.lookAt(otherRef))).toBe('3041');
  });

  it('is not seen, put or changed while the vault is locked', async () => {
    const { vault } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    vault.lock();
    const outcomes = [
      await vault.lookAt(ref),
      await vault.putCode(otherRef, '3041'),
      await vault.addPerson('ben-1', benPhrase),
      await vault.removePerson('ada-1'),
      await vault.replaceRecoveryKey(),
    ];
    expect(outcomes.map(problemOf)).toEqual(Array(5).fill('locked'));
    expect(unwrapped(await vault.marks()).map((mark) => mark.ref)).toEqual([ref]);
  });

  it('replaces another one only when told to', async () => {
    const { vault } = await adasVault();
    unwrapped(await vault.putCode(ref, '11111'));
    expect(problemOf(await vault.putCode(ref, '22222'))).toBe('code-there');
    expect(unwrapped(await vault.lookAt(ref))).toBe('11111');
    unwrapped(await vault.putCode(ref, '22222', { replaces: true }));
    expect(unwrapped(await vault.lookAt(ref))).toBe('22222');
    expect(unwrapped(await vault.marks())).toHaveLength(1);
  });

  it('is one line that says something', async () => {
    const { vault } = await adasVault();
    for (const value of ['', '   ', 'a\nb', 'a\u0000b', 'x'.repeat(201)])
      expect(problemOf(await vault.putCode(ref, value))).toBe('bad-value');
    expect(problemOf(await vault.lookAt(ref))).toBe('no-code');
  });

  it('is found under its own kind of request only', async () => {
    const { vault } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    expect(problemOf(await vault.lookAt({ ...ref, kind: 'radio' }))).toBe('other-kind');
    expect(problemOf(await vault.lookAt({ ...ref, requestId: 'request-9' }))).toBe('no-code');
    expect(problemOf(await vault.lookAt({ ...ref, vehicleId: 'vehicle-9' }))).toBe('no-code');
  });

  it('is destroyed without a pass phrase, and that there was one stays', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    const sealed = (await vaultDataIn(setting.folder)).codes[0];
    if (sealed?.state !== 'held') throw new Error('not held');
    vault.lock();
    unwrapped(await vault.destroy(ref, 'cleo-1', '30 days after the sale'));
    expect(problemOf(await vault.destroy(ref, 'cleo-1', 'again'))).toBe('destroyed');
    expect(problemOf(await vault.destroy(otherRef, 'cleo-1', ''))).toBe('no-code');
    expect(unwrapped(await vault.marks())[0]).toMatchObject({ ref, state: 'destroyed', putAt: sealed.putAt });
    expect((await vaultDataIn(setting.folder)).codes[0]).toMatchObject({
      putBy: 'ada-1',
      destroyedBy: 'cleo-1',
      why: '30 days after the sale',
    });
    unwrapped(await vault.unlock('ada-1', adaPhrase));
    expect(problemOf(await vault.lookAt(ref))).toBe('destroyed');
    expect(await readFile(join(setting.folder, 'vault.json'), 'utf8')).not.toContain(sealed.sealed.text);
  });

  it('put twice is sealed differently each time', async () => {
    const { setting, vault } = await adasVault();
    const seen = new Set<string>();
    for (let time = 0; time < 5; time++) {
      unwrapped(await vault.putCode(ref, secretCode, { replaces: true }));
      const entry = (await vaultDataIn(setting.folder)).codes[0];
      if (entry?.state === 'held') seen.add(`${entry.sealed.nonce} ${entry.sealed.text}`);
    }
    expect(seen.size).toBe(5);
  });
});

describe('making the vault', () => {
  it('is refused with a weak pass phrase, and where there is one', async () => {
    const setting = await settingIn(await tempFolder());
    expect(problemOf(await createVault(setting, 'ada-1', '1234'))).toBe('weak-pass-phrase');
    expect(problemOf(await openVault(setting))).toBe('no-vault');
    unwrapped(await createVault(setting, 'ada-1', adaPhrase));
    const before = await readFile(join(setting.folder, 'vault.json'));
    expect(problemOf(await createVault(setting, 'ben-1', benPhrase))).toBe('vault-there');
    expect((await readFile(join(setting.folder, 'vault.json'))).equals(before)).toBe(true);
  });

  it('uses the strong parameters unless told otherwise', async () => {
    const { making: _quick, ...usual } = await settingIn(await tempFolder());
    const { vault } = unwrapped(await createVault(usual, 'ada-1', adaPhrase));
    const data = await vaultDataIn(usual.folder);
    for (const holder of [data.people[0]?.holder, data.recovery.holder]) {
      expect(holder?.cost).toEqual({ N: 131_072, r: 8, p: 1 });
      // An RSA public key of 3,072 bits is 422 bytes as SubjectPublicKeyInfo.
      expect(Buffer.from(holder?.publicKey ?? '', 'base64')).toHaveLength(422);
    }
    await vault.close();
  });

  it('is not possible where nothing may be written, and leaves nothing', async () => {
    const setting = await settingIn(await tempFolder());
    setting.refusal = { code: 'read-only', detail: 'open elsewhere' };
    expect(problemOf(await createVault(setting, 'ada-1', adaPhrase))).toBe('storage');
    setting.refusal = null;
    expect(problemOf(await openVault(setting))).toBe('no-vault');
  });
});

describe('people', () => {
  it('each open the vault with a pass phrase of their own', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    unwrapped(await vault.addPerson('ben-1', benPhrase));
    expect(problemOf(await vault.addPerson('ben-1', benPhrase))).toBe('already-admitted');
    expect(problemOf(await vault.addPerson('cleo-1', 'weak'))).toBe('weak-pass-phrase');
    const again = await startedAgain(setting);
    expect(unwrapped(await again.people())).toEqual(['ada-1', 'ben-1']);
    expect(problemOf(await again.unlock('cleo-1', adaPhrase))).toBe('not-admitted');
    expect(problemOf(await again.unlock('ben-1', adaPhrase))).toBe('wrong-pass-phrase');
    unwrapped(await again.unlock('ben-1', benPhrase));
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
    // Quick switch: the one opens it after the other.
    unwrapped(await again.unlock('ada-1', adaPhrase));
    expect(again.unlockedBy).toBe('ada-1');
  });

  it('may type the same pass phrase on another keyboard', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.addPerson('ben-1', 'Br\u00fccke \u00fcber dem Flu\u00df'));
    const again = await startedAgain(setting);
    unwrapped(await again.unlock('ben-1', 'Bru\u0308cke u\u0308ber dem Flu\u00df '));
  });

  it('that are taken out do not get in any more, and the others do without being asked for anything', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.addPerson('ben-1', benPhrase));
    unwrapped(await vault.addPerson('cleo-1', 'three green iron bridges'));
    unwrapped(await vault.putCode(ref, secretCode));
    expect(unwrapped(await vault.removePerson('ben-1'))).toEqual({ unreadable: [] });
    expect(unwrapped(await vault.lookAt(ref))).toBe(secretCode);
    unwrapped(await vault.putCode(otherRef, '3041'));
    const again = await startedAgain(setting);
    expect(problemOf(await again.unlock('ben-1', benPhrase))).toBe('not-admitted');
    unwrapped(await again.unlock('cleo-1', 'three green iron bridges'));
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
    expect(unwrapped(await again.lookAt(otherRef))).toBe('3041');
  });

  it('that are taken out have nothing that opens the new data key, even with a copy of the file from before', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.addPerson('ben-1', benPhrase));
    unwrapped(await vault.putCode(ref, secretCode));
    const before = await vaultDataIn(setting.folder);
    unwrapped(await vault.removePerson('ben-1'));
    const after = await vaultDataIn(setting.folder);
    expect(after.keyId).not.toBe(before.keyId);
    expect(after.codes[0]).not.toEqual(before.codes[0]);
    // Ben's old entry put back into the new file: his key opens, but what it opens is not this data key.
    const ben = before.people.find((person) => person.personId === 'ben-1');
    if (!ben) throw new Error('no entry');
    const { openHolder, isDamaged } = await import('../../../app/storage/vault/key-holder.ts');
    const secret = Buffer.from(benPhrase);
    expect(await openHolder(ben.holder, secret, before, 'person ben-1')).not.toBeNull();
    expect(await openHolder(ben.holder, secret, after, 'person ben-1')).toBeNull();
    expect(isDamaged(ben.holder, after, 'person ben-1')).toBe(true);
    // And the old data key, which he may have written down, opens no code of the new file.
    const oldKey = await openHolder(ben.holder, secret, before, 'person ben-1');
    const { openCode } = await import('../../../app/storage/vault/vault-codes.ts');
    if (oldKey === null) throw new Error('no key');
    expect(unwrapped(openCode(oldKey, before, ref)).toString()).toBe(secretCode);
    expect(problemOf(openCode(oldKey, after, ref))).toBe('damaged-code');
  });

  it('can take themselves out, which locks, but not the last one', async () => {
    const { vault } = await adasVault();
    expect(problemOf(await vault.removePerson('ada-1'))).toBe('last-person');
    expect(problemOf(await vault.removePerson('ben-1'))).toBe('not-admitted');
    unwrapped(await vault.addPerson('ben-1', benPhrase));
    unwrapped(await vault.removePerson('ada-1'));
    expect(vault.unlockedBy).toBeNull();
    unwrapped(await vault.unlock('ben-1', benPhrase));
  });

  it('change their pass phrase; the old one and a copy of the old data key are worth nothing then', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    const before = await vaultDataIn(setting.folder);
    expect(problemOf(await vault.changePassPhrase('ada-1', 'not the old one', benPhrase))).toBe('wrong-pass-phrase');
    expect(problemOf(await vault.changePassPhrase('ada-1', adaPhrase, 'weak'))).toBe('weak-pass-phrase');
    unwrapped(await vault.changePassPhrase('ada-1', adaPhrase, benPhrase));
    expect(vault.unlockedBy).toBe('ada-1');
    expect(unwrapped(await vault.lookAt(ref))).toBe(secretCode);
    const after = await vaultDataIn(setting.folder);
    expect(after.keyId).not.toBe(before.keyId);
    expect(after.people[0]?.holder.publicKey).not.toBe(before.people[0]?.holder.publicKey);
    expect(after.people[0]?.tries.failures).toBe(0);
    const again = await startedAgain(setting);
    expect(problemOf(await again.unlock('ada-1', adaPhrase))).toBe('wrong-pass-phrase');
    unwrapped(await again.unlock('ada-1', benPhrase));
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
  });

  it('change it without opening the vault for anybody, and without closing it for who has it open', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.addPerson('ben-1', benPhrase));
    unwrapped(await vault.changePassPhrase('ben-1', benPhrase, 'three green iron bridges'));
    expect(vault.unlockedBy).toBe('ada-1');
    unwrapped(await vault.putCode(ref, secretCode));
    const locked = await startedAgain(setting);
    unwrapped(await locked.changePassPhrase('ben-1', 'three green iron bridges', benPhrase));
    expect(locked.unlockedBy).toBeNull();
    // The one that was open before does not have the new data key: it is locked, nothing is sealed under the old one.
    expect(problemOf(await vault.putCode(otherRef, '3041'))).toBe('locked');
    expect(vault.unlockedBy).toBeNull();
  });
});

describe('the recovery key', () => {
  it('gives somebody a new pass phrase and is then worth nothing; the new one works', async () => {
    const { setting, vault, recoveryKey } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    const again = await startedAgain(setting);
    const recovered = unwrapped(await again.recover(recoveryKey, 'ada-1', benPhrase));
    expect(recovered.unreadable).toEqual([]);
    expect(recovered.recoveryKey).not.toBe(recoveryKey);
    expect(again.unlockedBy).toBe('ada-1');
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
    const third = await startedAgain(setting);
    expect(problemOf(await third.recover(recoveryKey, 'ada-1', adaPhrase))).toBe('wrong-recovery-key');
    expect(problemOf(await third.unlock('ada-1', adaPhrase))).toBe('wrong-pass-phrase');
    unwrapped(await third.recover(recovered.recoveryKey, 'ada-1', adaPhrase));
    expect(unwrapped(await third.lookAt(ref))).toBe(secretCode);
  });

  it('admits somebody who had no key, and leaves the others theirs', async () => {
    const { setting, vault, recoveryKey } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    unwrapped(await vault.recover(recoveryKey.toLowerCase(), 'ben-1', benPhrase));
    expect(vault.unlockedBy).toBe('ben-1');
    const again = await startedAgain(setting);
    unwrapped(await again.unlock('ada-1', adaPhrase));
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
  });

  it('with a slip of the pen is not counted as a try', async () => {
    const { setting, vault, recoveryKey } = await adasVault();
    const last = recoveryKey.at(-1) === '7' ? '8' : '7';
    const refused = await vault.recover(recoveryKey.slice(0, -1) + last, 'ada-1', benPhrase);
    expect(problemOf(refused)).toBe('recovery-mistyped');
    expect(refused.ok ? '' : refused.error.sentence).toContain('Group 8 of 8');
    expect((await vaultDataIn(setting.folder)).recovery.tries.failures).toBe(0);
    expect(problemOf(await vault.recover(recoveryKey, 'ada-1', 'weak'))).toBe('weak-pass-phrase');
    unwrapped(await vault.recover(recoveryKey, 'ada-1', benPhrase));
  });

  it('can be replaced by who has the vault open', async () => {
    const { setting, vault, recoveryKey } = await adasVault();
    const { recoveryKey: fresh } = unwrapped(await vault.replaceRecoveryKey());
    const again = await startedAgain(setting);
    expect(problemOf(await again.recover(recoveryKey, 'ada-1', benPhrase))).toBe('wrong-recovery-key');
    unwrapped(await again.recover(fresh, 'ada-1', benPhrase));
  });

  it('is nowhere in the folder', async () => {
    const { setting, recoveryKey } = await adasVault();
    const text = await readFile(join(setting.folder, 'vault.json'), 'utf8');
    for (const group of [recoveryKey, recoveryKey.replaceAll('-', '')]) expect(text).not.toContain(group);
  });
});

describe('closing', () => {
  it('waits for what was asked before, then locks', async () => {
    const { setting, vault } = await adasVault();
    const putting = vault.putCode(ref, secretCode);
    await vault.close();
    unwrapped(await putting);
    expect(vault.unlockedBy).toBeNull();
    expect(problemOf(await vault.lookAt(ref))).toBe('locked');
    const again = await startedAgain(setting);
    unwrapped(await again.unlock('ada-1', adaPhrase));
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
  });
});

describe('the fleet folder', () => {
  it('can be moved to another computer: nothing in the vault hangs on this one', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    const elsewhere = await tempFolder();
    await cp(setting.folder, elsewhere, { recursive: true });
    const moved = await startedAgain(await settingIn(elsewhere));
    unwrapped(await moved.unlock('ada-1', adaPhrase));
    expect(unwrapped(await moved.lookAt(ref))).toBe(secretCode);
  });

  it('open for reading only gives no way of trying pass phrases without being counted', async () => {
    const { setting } = await adasVault();
    const again = await startedAgain(setting);
    setting.refusal = { code: 'read-only', detail: 'open elsewhere' };
    expect(problemOf(await again.unlock('ada-1', adaPhrase))).toBe('storage');
    expect(again.unlockedBy).toBeNull();
  });
});
