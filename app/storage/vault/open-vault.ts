// Making the vault of a fleet, and opening the one that is there (locked).
import { randomBytes } from 'node:crypto';
import { passPhraseProblem } from '../../domain/people/pass-phrase.ts';
import { ok } from '../../domain/shared/result.ts';
import { problemFromError } from '../storage-problem.ts';
import { Vault } from './vault.ts';
import { newDataKey } from './vault-codes.ts';
import { vaultFile } from './vault-data.ts';
import { loadVault, type Outcome, saveVault, type VaultSetting } from './vault-file.ts';
import { makePersonKey, makeRecovery } from './vault-holders.ts';
import { refuseVault, refuseVaultStorage } from './vault-problem.ts';

/**
 * Makes the vault where there is none; it is open for the first person. The recovery key is told this once and kept nowhere. Refused while
 * an unreadable vault waits in quarantine for a decision (`settleKeyFile`, `putBackKeyFile`).
 */
export async function createVault(
  setting: VaultSetting,
  personId: string,
  passPhrase: string,
): Outcome<{ readonly vault: Vault; readonly recoveryKey: string }> {
  const weak = passPhraseProblem(passPhrase);
  if (weak !== null) return refuseVault('weak-pass-phrase', weak);
  const there = await loadVault(setting);
  if (there.ok) return refuseVault('vault-there');
  if (there.error.code !== 'no-vault') return there;
  const { ids, dataKey } = newDataKey(randomBytes(16).toString('hex'));
  try {
    const person = await makePersonKey(setting, ids, dataKey, personId, passPhrase);
    if (!person.ok) return person;
    const { recovery, recoveryKey } = await makeRecovery(setting, ids, dataKey);
    const data = { ...ids, people: [person.value], recovery, codes: [] };
    const saved = await saveVault(setting, { data, revision: 0 });
    return saved.ok ? ok({ vault: new Vault(setting, { personId, ...ids, dataKey }), recoveryKey }) : saved;
  } catch (error) {
    return refuseVaultStorage(problemFromError(error, `Making ${vaultFile}`));
  }
}

/** The vault of this fleet, locked. Refused with 'no-vault' where there is none, with 'damaged-vault' where it cannot be read. */
export async function openVault(setting: VaultSetting): Outcome<Vault> {
  const loaded = await loadVault(setting);
  return loaded.ok ? ok(new Vault(setting, null)) : loaded;
}
