// Loading and saving vault.json for the operations on it, with the vault's own words for what can go wrong. Opens no key.
import { ok, type Result } from '../../domain/shared/result.ts';
import { type KeyFileSetting, readKeyFile, writeKeyFile } from './key-file.ts';
import { type KeyMaking, usualKeyMaking } from './key-holder.ts';
import { type VaultData, vaultFile, vaultKind } from './vault-data.ts';
import { refuseVault, refuseVaultStorage, type VaultProblem } from './vault-problem.ts';

export type VaultSetting = KeyFileSetting & {
  /** How hard keys are made; smaller in tests only. */
  readonly making?: KeyMaking;
};
export type Outcome<Value> = Promise<Result<Value, VaultProblem>>;
export type Loaded = { readonly data: VaultData; readonly revision: number };

export function makingOf(setting: VaultSetting): KeyMaking {
  return setting.making ?? usualKeyMaking;
}

/** Refused with 'no-vault' where there is none, with 'damaged-vault' where it cannot be read (it is then in quarantine). */
export async function loadVault(setting: VaultSetting): Outcome<Loaded> {
  const found = await readKeyFile(setting, vaultFile, vaultKind);
  if (found.kind === 'none') return refuseVault('no-vault');
  return found.kind === 'good' ? ok(found) : refuseVault('damaged-vault', found.trouble.sentence);
}

/** Writes it as the revision after the one it was loaded at; 0 for a vault that is made now. */
export async function saveVault(setting: VaultSetting, { data, revision }: Loaded): Outcome<Loaded> {
  const written = await writeKeyFile(setting, vaultFile, vaultKind, data, revision + 1);
  return written.ok ? ok({ data: written.value, revision: revision + 1 }) : refuseVaultStorage(written.error);
}
