// Trying a pass phrase or the recovery key on the vault. A try is counted on the disk before it is made, so that stopping the program in
// between does not make it free.
import { noTries, oneMoreTry, type Tries, waitLeft, waitMillisecondsAfter } from '../../domain/people/try-delay.ts';
import { ok } from '../../domain/shared/result.ts';
import { isDamaged, type KeyHolder, openHolder } from './key-holder.ts';
import { phraseBytes, wipe } from './scrypt-key.ts';
import { holderName, recoveryName, type VaultData } from './vault-data.ts';
import { type Loaded, type Outcome, saveVault, type VaultSetting } from './vault-file.ts';
import { refuseVault, type VaultProblemCode } from './vault-problem.ts';

/** `loaded` has the count taken back and is to be saved by the caller, with whatever else changes. The caller wipes the data key. */
export type Opened = { readonly loaded: Loaded; readonly dataKey: Buffer };

type Door = {
  readonly name: string;
  readonly holder: KeyHolder;
  readonly tries: Tries;
  readonly withTries: (data: VaultData, tries: Tries) => VaultData;
  readonly whenWrong: Exclude<VaultProblemCode, 'storage'>;
  readonly whenDamaged: Exclude<VaultProblemCode, 'storage'>;
};

async function tryDoor(setting: VaultSetting, loaded: Loaded, door: Door, secret: Buffer): Outcome<Opened> {
  const now = setting.clock();
  const wait = waitLeft(door.tries, now);
  if (wait.waitMilliseconds > 0) {
    // The clock was set back: the wait that begins anew is kept.
    if (wait.tries !== door.tries)
      await saveVault(setting, { ...loaded, data: door.withTries(loaded.data, wait.tries) });
    return refuseVault('wait', '', wait.waitMilliseconds);
  }
  if (isDamaged(door.holder, loaded.data, door.name)) return refuseVault(door.whenDamaged);
  const counted = oneMoreTry(wait.tries, now);
  const saved = await saveVault(setting, { ...loaded, data: door.withTries(loaded.data, counted) });
  if (!saved.ok) return saved;
  const dataKey = await openHolder(door.holder, secret, loaded.data, door.name);
  if (dataKey === null) return refuseVault(door.whenWrong, '', waitMillisecondsAfter(counted.failures));
  return ok({ loaded: { ...saved.value, data: door.withTries(saved.value.data, noTries) }, dataKey });
}

export async function tryPerson(
  setting: VaultSetting,
  loaded: Loaded,
  personId: string,
  passPhrase: string,
): Outcome<Opened> {
  const person = loaded.data.people.find((candidate) => candidate.personId === personId);
  if (!person) return refuseVault('not-admitted');
  const secret = phraseBytes(passPhrase);
  const door: Door = {
    name: holderName(personId),
    holder: person.holder,
    tries: person.tries,
    withTries: (data, tries) => ({
      ...data,
      people: data.people.map((other) => (other.personId === personId ? { ...other, tries } : other)),
    }),
    whenWrong: 'wrong-pass-phrase',
    whenDamaged: 'damaged-key',
  };
  try {
    return await tryDoor(setting, loaded, door, secret);
  } finally {
    wipe(secret);
  }
}

/** `key`: the bytes of the recovery key. The caller wipes them. */
export function tryRecovery(setting: VaultSetting, loaded: Loaded, key: Buffer): Outcome<Opened> {
  const { holder, tries } = loaded.data.recovery;
  const door: Door = {
    name: recoveryName,
    holder,
    tries,
    withTries: (data, counted) => ({ ...data, recovery: { ...data.recovery, tries: counted } }),
    whenWrong: 'wrong-recovery-key',
    whenDamaged: 'damaged-recovery',
  };
  return tryDoor(setting, loaded, door, key);
}
