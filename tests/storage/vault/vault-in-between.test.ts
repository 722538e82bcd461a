// What happens in the middle of slow work with keys: the desk is locked, or the program is stopped.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { vaultFile } from '../../../app/storage/vault/vault-data.ts';
import { unwrapped } from '../fleet-fixture.ts';
import { adaPhrase, adasVault, benPhrase, problemOf, ref, secretCode, startedAgain } from './vault-fixture.ts';

const hooks = vi.hoisted(() => ({ whileMaking: () => {}, whileOpening: () => {} }));
vi.mock('../../../app/storage/vault/key-holder.ts', async (original) => {
  const real = await original<typeof import('../../../app/storage/vault/key-holder.ts')>();
  return {
    ...real,
    lockKeyPair: async (...given: Parameters<typeof real.lockKeyPair>) => {
      hooks.whileMaking();
      return real.lockKeyPair(...given);
    },
    openHolder: async (...given: Parameters<typeof real.openHolder>) => {
      hooks.whileOpening();
      return real.openHolder(...given);
    },
  };
});
afterEach(() => {
  hooks.whileMaking = () => {};
  hooks.whileOpening = () => {};
});

describe('locking', () => {
  it('while a key is made for somebody does not give them a key of zeros', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    hooks.whileMaking = () => vault.lock();
    unwrapped(await vault.addPerson('ben-1', benPhrase));
    expect(vault.unlockedBy).toBeNull();
    const again = await startedAgain(setting);
    unwrapped(await again.unlock('ben-1', benPhrase));
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
  });

  it('while the data key changes leaves it locked and every code readable', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.putCode(ref, secretCode));
    hooks.whileMaking = () => vault.lock();
    expect(unwrapped(await vault.replaceRecoveryKey()).unreadable).toEqual([]);
    expect(vault.unlockedBy).toBeNull();
    const again = await startedAgain(setting);
    unwrapped(await again.unlock('ada-1', adaPhrase));
    expect(unwrapped(await again.lookAt(ref))).toBe(secretCode);
  });

  it('while it is being opened keeps it locked', async () => {
    const { setting } = await adasVault();
    const again = await startedAgain(setting);
    hooks.whileOpening = () => again.lock();
    expect(problemOf(await again.unlock('ada-1', adaPhrase))).toBe('locked');
    expect(again.unlockedBy).toBeNull();
    hooks.whileOpening = () => {};
    unwrapped(await again.unlock('ada-1', adaPhrase));
  });
});

describe('a try', () => {
  it('is counted on the disk before it is made, so that stopping the program in between does not make it free', async () => {
    const { setting } = await adasVault();
    const counts: unknown[] = [];
    const count = () => JSON.parse(readFileSync(join(setting.folder, vaultFile), 'utf8')).data.people[0].tries.failures;
    hooks.whileOpening = () => void counts.push(count());
    const again = await startedAgain(setting);
    unwrapped(await again.unlock('ada-1', adaPhrase));
    expect([counts, count()]).toEqual([[1], 0]);
  });

  it('that the program did not live to end counts as a wrong one', async () => {
    const { setting } = await adasVault();
    hooks.whileOpening = () => {
      throw new Error('stopped');
    };
    for (let time = 0; time < 3; time++)
      expect(problemOf(await (await startedAgain(setting)).unlock('ada-1', adaPhrase))).toBe('storage');
    hooks.whileOpening = () => {};
    expect(problemOf(await (await startedAgain(setting)).unlock('ada-1', adaPhrase))).toBe('wait');
  });
});
