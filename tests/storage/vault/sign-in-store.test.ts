// Signing in: verifiers in a file of their own, waits as for the vault, and a damaged file lets nobody choose a new pass phrase.
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { peopleKeysFile } from '../../../app/storage/vault/people-keys.ts';
import { SignInStore } from '../../../app/storage/vault/sign-in-store.ts';
import { tempFolder, unwrapped } from '../fleet-fixture.ts';
import { problemOf, quickMaking, settingIn } from './vault-fixture.ts';

async function aStore() {
  const setting = { ...(await settingIn(await tempFolder())), cost: quickMaking.cost };
  return { setting, store: new SignInStore(setting) };
}
const fileOf = async (folder: string) => JSON.parse(await readFile(join(folder, peopleKeysFile), 'utf8'));

describe('signing in', () => {
  it('works with a PIN or a pass phrase, after starting again too', async () => {
    const { setting, store } = await aStore();
    unwrapped(await store.setSecret('ada-1', '730219'));
    unwrapped(await store.setSecret('ben-1', 'green door'));
    const again = new SignInStore(setting);
    expect([...unwrapped(await again.people())]).toEqual([
      ['ada-1', 'pin'],
      ['ben-1', 'pass-phrase'],
    ]);
    unwrapped(await again.signIn('ada-1', '730219'));
    unwrapped(await again.signIn('ben-1', ' green door'));
    expect(problemOf(await again.signIn('ben-1', '730219'))).toBe('wrong');
    expect(problemOf(await again.signIn('cleo-1', '730219'))).toBe('no-secret');
  });

  it('writes no file before the first pass phrase or PIN is set', async () => {
    const { setting, store } = await aStore();
    expect(unwrapped(await store.people()).size).toBe(0);
    expect(problemOf(await store.signIn('ada-1', '730219'))).toBe('no-secret');
    expect(await readdir(setting.folder)).not.toContain(peopleKeysFile);
  });

  it('keeps neither PIN nor pass phrase, and the same one of two people looks different', async () => {
    const { setting, store } = await aStore();
    unwrapped(await store.setSecret('ada-1', 'green door'));
    unwrapped(await store.setSecret('ben-1', 'green door'));
    const { data } = await fileOf(setting.folder);
    expect(data.people[0].verifier).not.toBe(data.people[1].verifier);
    expect(JSON.stringify(data)).not.toContain('green');
    expect(JSON.stringify(data)).not.toContain(Buffer.from('green door').toString('base64').slice(0, 12));
  });

  it('uses the strong parameters unless told otherwise', async () => {
    const setting = await settingIn(await tempFolder());
    const store = new SignInStore(setting);
    unwrapped(await store.setSecret('ada-1', '730219'));
    expect((await fileOf(setting.folder)).data.people[0].cost).toEqual({ N: 131_072, r: 8, p: 1 });
    unwrapped(await store.signIn('ada-1', '730219'));
  });

  it('is changed by who knows the present one, and taken away by the manager', async () => {
    const { store } = await aStore();
    unwrapped(await store.setSecret('ada-1', '730219'));
    expect(problemOf(await store.setSecret('ada-1', '5555577'))).toBe('has-secret');
    expect(problemOf(await store.setSecret('ben-1', '1234'))).toBe('weak');
    expect(problemOf(await store.changeSecret('ada-1', '730218', 'green door'))).toBe('wrong');
    expect(problemOf(await store.changeSecret('ada-1', '730219', '1234'))).toBe('weak');
    unwrapped(await store.changeSecret('ada-1', '730219', 'green door'));
    expect(problemOf(await store.signIn('ada-1', '730219'))).toBe('wrong');
    unwrapped(await store.signIn('ada-1', 'green door'));
    unwrapped(await store.removeSecret('ada-1'));
    expect(problemOf(await store.removeSecret('ada-1'))).toBe('no-secret');
    expect(problemOf(await store.signIn('ada-1', 'green door'))).toBe('no-secret');
  });
});

describe('after wrong tries', () => {
  it('the wait grows, is kept across starts, and is not shortened by setting the clock back', async () => {
    const { setting, store } = await aStore();
    unwrapped(await store.setSecret('ada-1', '730219'));
    for (let time = 0; time < 3; time++)
      expect(problemOf(await new SignInStore(setting).signIn('ada-1', '0000'))).toBe('wrong');
    const again = new SignInStore(setting);
    expect(problemOf(await again.signIn('ada-1', '730219'))).toBe('wait');
    expect(problemOf(await again.changeSecret('ada-1', '730219', 'green door'))).toBe('wait');
    expect(unwrapped(await again.waitFor('ada-1'))).toBeGreaterThan(4_000);
    setting.clock.moveTo('2026-03-03T10:00:00.000Z');
    const refused = await again.signIn('ada-1', '730219');
    expect(refused.ok ? null : refused.error).toMatchObject({ code: 'wait', waitMilliseconds: 5_000 });
    setting.clock.moveTo('2026-03-03T10:00:06.000Z');
    unwrapped(await again.signIn('ada-1', '730219'));
    expect((await fileOf(setting.folder)).data.people[0].tries.failures).toBe(0);
  });

  it('nobody is tried where the count cannot be kept', async () => {
    const { setting, store } = await aStore();
    unwrapped(await store.setSecret('ada-1', '730219'));
    const readOnly = new SignInStore({ ...setting, guard: async () => ({ code: 'read-only', detail: '' }) });
    expect(problemOf(await readOnly.signIn('ada-1', '730219'))).toBe('storage');
  });
});

describe('a damaged file', () => {
  it('is put aside, and nobody may choose a new pass phrase until somebody has decided', async () => {
    const { setting, store } = await aStore();
    unwrapped(await store.setSecret('ada-1', '730219'));
    const path = join(setting.folder, peopleKeysFile);
    const cut = (await readFile(path)).subarray(0, 200);
    await writeFile(path, cut);
    const again = new SignInStore(setting);
    const refused = await again.signIn('ada-1', '730219');
    expect(problemOf(refused)).toBe('damaged-keys');
    expect(refused.ok ? '' : refused.error.sentence).toContain('cut off');
    expect(problemOf(await again.setSecret('ada-1', '999000'))).toBe('damaged-keys');
    expect(problemOf(await new SignInStore(setting).setSecret('ada-1', '999000'))).toBe('damaged-keys');
    expect(await readdir(setting.folder)).not.toContain(peopleKeysFile);
    const kept = (await readdir(join(setting.folder, 'quarantine'))).find((name) =>
      name.endsWith(`-${peopleKeysFile}`),
    );
    expect((await readFile(join(setting.folder, 'quarantine', kept ?? ''))).equals(cut)).toBe(true);
    unwrapped(await again.startAnew());
    unwrapped(await again.setSecret('ada-1', '999000'));
    unwrapped(await again.signIn('ada-1', '999000'));
  });
});
