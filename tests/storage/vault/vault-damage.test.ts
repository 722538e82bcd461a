// A vault that something else has touched: each kind of damage is refused with a sentence, and nothing else is lost.
import { readdir, readFile, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { listQuarantine } from '../../../app/storage/quarantine.ts';
import { recordKinds } from '../../../app/storage/record-kind.ts';
import { keyFileTroubles, putBackKeyFile, settleKeyFile } from '../../../app/storage/vault/key-file.ts';
import { admit, lockKeyPair } from '../../../app/storage/vault/key-holder.ts';
import { createVault, openVault } from '../../../app/storage/vault/open-vault.ts';
import { type CodeRef, type HeldCode, vaultFile, vaultKind } from '../../../app/storage/vault/vault-data.ts';
import { unwrapped } from '../fleet-fixture.ts';
import {
  adaPhrase,
  adasVault,
  benPhrase,
  flipped,
  otherRef,
  problemOf,
  quickMaking,
  ref,
  secretCode,
  startedAgain,
  tamper,
  vaultDataIn,
} from './vault-fixture.ts';

async function twoCodes() {
  const made = await adasVault();
  unwrapped(await made.vault.putCode(ref, secretCode));
  unwrapped(await made.vault.putCode(otherRef, '3041'));
  return made;
}

function held(entry: unknown): HeldCode {
  const code = entry as HeldCode | undefined;
  if (code?.state !== 'held') throw new Error('not held');
  return code;
}

describe('a code', () => {
  it.each(['nonce', 'text', 'tag'] as const)('whose %s was changed is refused; the other one is seen', async (part) => {
    const { setting, vault } = await twoCodes();
    await tamper(setting.folder, (data) => {
      const { sealed } = held(data.codes[0]);
      Object.assign(sealed, { [part]: flipped(sealed[part]) });
    });
    const refused = await vault.lookAt(ref);
    expect(problemOf(refused)).toBe('damaged-code');
    expect(refused.ok ? '' : refused.error.sentence).toContain('All other codes are untouched.');
    expect(unwrapped(await vault.lookAt(otherRef))).toBe('3041');
  });

  it('whose ciphertext was swapped with that of another request is refused, and so is the other', async () => {
    const { setting, vault } = await twoCodes();
    await tamper(setting.folder, (data) => {
      const [first, second] = [held(data.codes[0]), held(data.codes[1])];
      [first.sealed, second.sealed] = [second.sealed, first.sealed];
    });
    expect(problemOf(await vault.lookAt(ref))).toBe('damaged-code');
    expect(problemOf(await vault.lookAt(otherRef))).toBe('damaged-code');
  });

  it('moved to another request, vehicle or kind in the file is refused there', async () => {
    const moves: readonly Partial<CodeRef>[] = [
      { requestId: 'request-9' },
      { vehicleId: 'vehicle-9' },
      { kind: 'radio' },
    ];
    for (const move of moves) {
      const { setting, vault } = await twoCodes();
      await tamper(setting.folder, (data) => Object.assign(held(data.codes[0]).ref, move));
      expect([move, problemOf(await vault.lookAt({ ...ref, ...move }))]).toEqual([move, 'damaged-code']);
    }
  });

  it('that is damaged is kept as it is when the data key changes, and is told', async () => {
    const { setting, vault } = await twoCodes();
    await tamper(setting.folder, (data) => {
      const { sealed } = held(data.codes[0]);
      Object.assign(sealed, { text: flipped(sealed.text) });
    });
    const before = (await vaultDataIn(setting.folder)).codes[0];
    expect(unwrapped(await vault.replaceRecoveryKey()).unreadable).toEqual([ref]);
    expect((await vaultDataIn(setting.folder)).codes[0]).toEqual(before);
    expect(problemOf(await vault.lookAt(ref))).toBe('damaged-code');
    expect(unwrapped(await vault.lookAt(otherRef))).toBe('3041');
  });
});

describe('the key of a person', () => {
  it.each(['publicKey', 'salt', 'dataKey'] as const)(
    'whose %s was changed is called damaged, not a wrong pass phrase; others still open',
    async (part) => {
      const { setting, vault } = await twoCodes();
      unwrapped(await vault.addPerson('ben-1', benPhrase));
      await tamper(setting.folder, (data) => {
        const holder = data.people[0]?.holder;
        if (holder) holder[part] = flipped(holder[part]);
      });
      const again = await startedAgain(setting);
      for (let time = 0; time < 4; time++)
        expect(problemOf(await again.unlock('ada-1', adaPhrase))).toBe('damaged-key');
      unwrapped(await again.unlock('ben-1', benPhrase));
      expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
    },
  );

  it('that is damaged is made good by the recovery key', async () => {
    const { setting, recoveryKey } = await twoCodes();
    await tamper(setting.folder, (data) => {
      const holder = data.people[0]?.holder;
      if (holder) holder.privateKey.text = flipped(holder.privateKey.text);
    });
    const again = await startedAgain(setting);
    expect(problemOf(await again.unlock('ada-1', adaPhrase))).toBe('damaged-key');
    unwrapped(await again.recover(recoveryKey, 'ada-1', benPhrase));
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
  });

  it('swapped with that of another person opens for neither', async () => {
    const { setting, vault } = await twoCodes();
    unwrapped(await vault.addPerson('ben-1', benPhrase));
    await tamper(setting.folder, (data) => {
      const [ada, ben] = data.people;
      if (ada && ben) [ada.holder, ben.holder] = [ben.holder, ada.holder];
    });
    const again = await startedAgain(setting);
    expect(problemOf(await again.unlock('ada-1', benPhrase))).toBe('damaged-key');
    expect(problemOf(await again.unlock('ben-1', adaPhrase))).toBe('damaged-key');
  });

  it('slipped in by somebody without the data key is not given the next one', async () => {
    const { setting, vault } = await twoCodes();
    const data = await vaultDataIn(setting.folder);
    const name = 'person mallory-1';
    const lock = await lockKeyPair(data.vaultId, name, Buffer.from('whatever it is'), quickMaking);
    const holder = admit(lock, Buffer.alloc(32), data, name);
    await tamper(setting.folder, ({ people }) => {
      people.push({ personId: 'mallory-1', admittedAt: setting.clock(), tries: { failures: 0, lastAt: null }, holder });
    });
    const before = await readFile(join(setting.folder, vaultFile));
    const refused = await vault.replaceRecoveryKey();
    expect(problemOf(refused)).toBe('not-vouched');
    expect(refused.ok ? '' : refused.error.sentence).toContain('mallory-1');
    expect((await readFile(join(setting.folder, vaultFile))).equals(before)).toBe(true);
    // What it would open is not this vault's data key, and is not taken for it.
    expect(problemOf(await vault.unlock('mallory-1', 'whatever it is'))).toBe('wrong-pass-phrase');
    expect(vault.unlockedBy).toBe('ada-1');
    unwrapped(await vault.removePerson('mallory-1'));
    unwrapped(await vault.replaceRecoveryKey());
  });

  it('of the recovery that is damaged is said to be, and can be replaced', async () => {
    const { setting, vault, recoveryKey } = await twoCodes();
    await tamper(setting.folder, (data) => {
      data.recovery.holder.vouch.tag = flipped(data.recovery.holder.vouch.tag);
    });
    expect(problemOf(await vault.recover(recoveryKey, 'ada-1', benPhrase))).toBe('damaged-recovery');
    const { recoveryKey: fresh } = unwrapped(await vault.replaceRecoveryKey());
    unwrapped(await vault.recover(fresh, 'ada-1', benPhrase));
  });
});

describe('the whole file', () => {
  it.each([
    ['cut off', (bytes: Buffer) => bytes.subarray(0, bytes.length - 40), 'cut off'],
    ['empty', () => Buffer.alloc(0), 'empty'],
    ['zero-filled', (bytes: Buffer) => Buffer.alloc(bytes.length), 'zero bytes'],
    ['of something else', () => Buffer.from('{"format":"invented"}'), 'not a vault for codes'],
    [
      'asking for too much memory',
      (bytes: Buffer) => Buffer.from(bytes.toString().replace('"N": 16', '"N": 1073741824')),
      'does not hold',
    ],
  ])(
    '%s is put into quarantine unchanged, with a sentence, and nothing is written in its place',
    async (_name, spoil, words) => {
      const { setting, vault } = await twoCodes();
      const path = join(setting.folder, vaultFile);
      const spoilt = spoil(await readFile(path));
      await writeFile(path, spoilt);
      const refused = await vault.lookAt(ref);
      expect(problemOf(refused)).toBe('damaged-vault');
      expect(refused.ok ? '' : refused.error.sentence).toContain(words);
      const names = await readdir(join(setting.folder, 'quarantine'));
      const kept = names.find((name) => name.endsWith('-vault.json')) ?? '';
      expect((await readFile(join(setting.folder, 'quarantine', kept))).equals(spoilt)).toBe(true);
      expect(await readFile(join(setting.folder, 'quarantine', `${kept}.reason.txt`), 'utf8')).toContain(words);
      // Nothing puts a new one in its place before somebody has decided.
      for (const later of [
        await vault.putCode(ref, '1', { replaces: true }),
        await vault.unlock('ada-1', adaPhrase),
        await openVault(setting),
        await createVault(setting, 'ada-1', adaPhrase),
      ])
        expect(problemOf(later)).toBe('damaged-vault');
      expect(await readdir(setting.folder)).not.toContain(vaultFile);
    },
  );

  it('in quarantine is not taken for a vehicle', async () => {
    const { setting, vault } = await twoCodes();
    await writeFile(join(setting.folder, vaultFile), '');
    await vault.lookAt(ref);
    expect(await keyFileTroubles(setting.folder, vaultFile)).toHaveLength(1);
    expect(await listQuarantine(setting.folder, recordKinds)).toEqual([]);
  });

  it('can be brought back from a copy, and then opens as before', async () => {
    const { setting, vault } = await twoCodes();
    const path = join(setting.folder, vaultFile);
    const copy = await readFile(path);
    expect(problemOf(await putBackKeyFile(setting, vaultFile, vaultKind, copy))).toBe('stale-revision');
    await writeFile(path, copy.subarray(0, 100));
    await vault.lookAt(ref);
    expect(problemOf(await putBackKeyFile(setting, vaultFile, vaultKind, copy.subarray(0, 100)))).toBe('damaged');
    unwrapped(await putBackKeyFile(setting, vaultFile, vaultKind, copy));
    expect(await keyFileTroubles(setting.folder, vaultFile)).toEqual([]);
    const again = await startedAgain(setting);
    unwrapped(await again.unlock('ada-1', adaPhrase));
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
  });

  it('can be begun anew once somebody has decided so; the unreadable one is still kept', async () => {
    const { setting, vault } = await twoCodes();
    await writeFile(join(setting.folder, vaultFile), 'oops');
    await vault.lookAt(ref);
    unwrapped(await settleKeyFile(setting, vaultFile));
    expect(problemOf(await openVault(setting))).toBe('no-vault');
    unwrapped(await createVault(setting, 'ada-1', adaPhrase));
    const names = await readdir(join(setting.folder, 'quarantine'));
    expect(names.filter((name) => name.endsWith('-vault.json'))).toHaveLength(1);
  });

  it('of a newer version is left where it is', async () => {
    const { setting, vault } = await twoCodes();
    const path = join(setting.folder, vaultFile);
    const newer = (await readFile(path, 'utf8')).replace('"version": 1', '"version": 2');
    await writeFile(path, newer);
    const refused = await vault.lookAt(ref);
    expect(refused.ok ? '' : refused.error.sentence).toContain('newer version');
    expect(await readFile(path, 'utf8')).toBe(newer);
  });

  it('is left where it is while nothing may be written', async () => {
    const { setting, vault } = await twoCodes();
    const path = join(setting.folder, vaultFile);
    await writeFile(path, 'oops');
    setting.refusal = { code: 'read-only', detail: 'open elsewhere' };
    expect(problemOf(await vault.lookAt(ref))).toBe('damaged-vault');
    expect(await readFile(path, 'utf8')).toBe('oops');
  });

  it('taken away while the vault is open is not made anew from memory', async () => {
    const { setting, vault } = await twoCodes();
    await unlink(join(setting.folder, vaultFile));
    expect(problemOf(await vault.putCode(otherRef, '9', { replaces: true }))).toBe('no-vault');
    expect(await readdir(setting.folder)).not.toContain(vaultFile);
  });

  it('exchanged for another vault while open locks it', async () => {
    const { setting, vault } = await twoCodes();
    const other = await twoCodes();
    await writeFile(join(setting.folder, vaultFile), await readFile(join(other.setting.folder, vaultFile)));
    expect(problemOf(await vault.lookAt(ref))).toBe('locked');
    expect(vault.unlockedBy).toBeNull();
  });
});
