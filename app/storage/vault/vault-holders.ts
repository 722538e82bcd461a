// Giving people and the recovery key a lock of their own in the vault. Changes data only; saving is the caller's part.
import { randomBytes } from 'node:crypto';
import { passPhraseProblem } from '../../domain/people/pass-phrase.ts';
import { noTries } from '../../domain/people/try-delay.ts';
import { ok } from '../../domain/shared/result.ts';
import { admit, type KeyHolder, lockKeyPair, type VaultIds } from './key-holder.ts';
import { recoveryKeyBytes, showRecoveryKey } from './recovery-key.ts';
import { phraseBytes, wipe } from './scrypt-key.ts';
import { holderName, type PersonKey, recoveryName, type VaultData } from './vault-data.ts';
import { makingOf, type Outcome, type VaultSetting } from './vault-file.ts';
import { refuseVault } from './vault-problem.ts';

export async function makePersonKey(
  setting: VaultSetting,
  ids: VaultIds,
  dataKey: Buffer,
  personId: string,
  passPhrase: string,
): Outcome<PersonKey> {
  const weak = passPhraseProblem(passPhrase);
  if (weak !== null) return refuseVault('weak-pass-phrase', weak);
  const name = holderName(personId);
  const secret = phraseBytes(passPhrase);
  try {
    const lock = await lockKeyPair(ids.vaultId, name, secret, makingOf(setting));
    return ok({ personId, admittedAt: setting.clock(), tries: noTries, holder: admit(lock, dataKey, ids, name) });
  } finally {
    wipe(secret);
  }
}

/** The person's key put in the place of an earlier one, or added. */
export function withPersonKey(data: VaultData, key: PersonKey): VaultData {
  const isThere = data.people.some((person) => person.personId === key.personId);
  const replaced = data.people.map((person) => (person.personId === key.personId ? key : person));
  return { ...data, people: isThere ? replaced : [...data.people, key] };
}

type RecoveryMade = {
  readonly recovery: { readonly madeAt: string; readonly tries: typeof noTries; readonly holder: KeyHolder };
  /** To be shown once and kept nowhere. */
  readonly recoveryKey: string;
};

export async function makeRecovery(setting: VaultSetting, ids: VaultIds, dataKey: Buffer): Promise<RecoveryMade> {
  const secret = randomBytes(recoveryKeyBytes);
  try {
    const lock = await lockKeyPair(ids.vaultId, recoveryName, secret, makingOf(setting));
    const holder = admit(lock, dataKey, ids, recoveryName);
    return { recovery: { madeAt: setting.clock(), tries: noTries, holder }, recoveryKey: showRecoveryKey(secret) };
  } finally {
    wipe(secret);
  }
}
