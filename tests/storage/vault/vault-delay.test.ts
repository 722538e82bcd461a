// Wrong pass phrases: the wait grows, survives starting again, and is not got round by the clock or by stopping the program.
import { describe, expect, it } from 'vitest';
import { unwrapped } from '../fleet-fixture.ts';
import {
  adaPhrase,
  adasVault,
  benPhrase,
  problemOf,
  startedAgain,
  type TestSetting,
  vaultDataIn,
} from './vault-fixture.ts';

async function failTimes(setting: TestSetting, times: number): Promise<void> {
  for (let time = 0; time < times; time++) {
    const vault = await startedAgain(setting);
    expect(problemOf(await vault.unlock('ada-1', 'this is not the phrase'))).toBe('wrong-pass-phrase');
    await vault.close();
  }
}

describe('after wrong pass phrases', () => {
  it('two are free, then one waits, though the program was started again each time', async () => {
    const { setting } = await adasVault();
    await failTimes(setting, 3);
    const vault = await startedAgain(setting);
    const refused = await vault.unlock('ada-1', adaPhrase);
    expect(problemOf(refused)).toBe('wait');
    const error = refused.ok ? null : refused.error;
    expect(error?.waitMilliseconds).toBeGreaterThan(4_000);
    expect(error?.sentence).toMatch(/Wait 5 seconds before the next try\.$/);
    expect(unwrapped(await vault.waitFor('ada-1'))).toBeGreaterThan(4_000);
  });

  it('the right one opens after the wait and takes the count back', async () => {
    const { setting } = await adasVault();
    await failTimes(setting, 3);
    setting.clock.moveTo('2026-03-04T10:01:00.000Z');
    const vault = await startedAgain(setting);
    unwrapped(await vault.unlock('ada-1', adaPhrase));
    expect((await vaultDataIn(setting.folder)).people[0]?.tries).toEqual({ failures: 0, lastAt: null });
    expect(unwrapped(await vault.waitFor('ada-1'))).toBe(0);
  });

  it('each further one doubles the wait', async () => {
    const { setting } = await adasVault();
    await failTimes(setting, 3);
    const waits: number[] = [];
    for (let time = 1; time <= 3; time++) {
      setting.clock.moveTo(`2026-03-04T1${time}:30:00.000Z`);
      const vault = await startedAgain(setting);
      const refused = await vault.unlock('ada-1', 'this is not the phrase');
      waits.push(refused.ok ? 0 : refused.error.waitMilliseconds);
    }
    expect(waits).toEqual([10_000, 20_000, 40_000]);
  });

  it('setting the clock back does not shorten the wait: it begins anew, and that is kept', async () => {
    const { setting } = await adasVault();
    await failTimes(setting, 3);
    setting.clock.moveTo('2026-03-04T09:00:00.000Z');
    const vault = await startedAgain(setting);
    const refused = await vault.unlock('ada-1', adaPhrase);
    expect(refused.ok ? null : refused.error).toMatchObject({ code: 'wait', waitMilliseconds: 5_000 });
    expect((await vaultDataIn(setting.folder)).people[0]?.tries.lastAt).toMatch(/^2026-03-04T09:00:00/);
    setting.clock.moveTo('2026-03-04T09:00:04.000Z');
    expect(problemOf(await vault.unlock('ada-1', adaPhrase))).toBe('wait');
    setting.clock.moveTo('2026-03-04T09:00:06.000Z');
    unwrapped(await vault.unlock('ada-1', adaPhrase));
  });

  it('trying during the wait does not count, nor is the phrase looked at', async () => {
    const { setting } = await adasVault();
    await failTimes(setting, 3);
    const vault = await startedAgain(setting);
    for (let time = 0; time < 5; time++)
      expect(problemOf(await vault.unlock('ada-1', 'wrong again and again'))).toBe('wait');
    expect((await vaultDataIn(setting.folder)).people[0]?.tries.failures).toBe(3);
  });

  it('of one person others do not wait', async () => {
    const { setting, vault } = await adasVault();
    unwrapped(await vault.addPerson('ben-1', benPhrase));
    await failTimes(setting, 3);
    const again = await startedAgain(setting);
    unwrapped(await again.unlock('ben-1', benPhrase));
    expect(unwrapped(await again.waitFor('ben-1'))).toBe(0);
    expect(unwrapped(await again.waitFor('nobody-1'))).toBe(0);
    expect(problemOf(await again.unlock('ada-1', adaPhrase))).toBe('wait');
  });

  it('changing the pass phrase and the recovery key are no way round the wait', async () => {
    const { setting, vault, recoveryKey } = await adasVault();
    const { recoveryKey: present } = unwrapped(await vault.replaceRecoveryKey());
    await failTimes(setting, 3);
    const again = await startedAgain(setting);
    expect(problemOf(await again.changePassPhrase('ada-1', adaPhrase, benPhrase))).toBe('wait');
    for (let time = 0; time < 3; time++)
      expect(problemOf(await again.recover(recoveryKey, 'ada-1', benPhrase))).toBe('wrong-recovery-key');
    expect(problemOf(await again.recover(present, 'ada-1', benPhrase))).toBe('wait');
    setting.clock.moveTo('2026-03-04T11:00:00.000Z');
    unwrapped(await again.recover(present, 'ada-1', benPhrase));
  });
});
