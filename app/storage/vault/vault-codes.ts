// Codes of a vault in and out of their sealed form, and all of it under a new data key. Touches no disk.
import { randomBytes } from 'node:crypto';
import { ok, type Result } from '../../domain/shared/result.ts';
import { admit, isVouchedFor, keyIdOf, type VaultIds } from './key-holder.ts';
import { wipe } from './scrypt-key.ts';
import { about, keyBytes, openSealed, seal } from './sealed-box.ts';
import { type CodeRef, codeEntryOf, type HeldCode, holderName, recoveryName, type VaultData } from './vault-data.ts';
import { refuseVault, type VaultProblem } from './vault-problem.ts';

function codeAbout(ids: VaultIds, { vehicleId, requestId, kind }: CodeRef): Buffer {
  return about('code', ids.vaultId, ids.keyId, vehicleId, requestId, kind);
}

export function sealCode(
  dataKey: Buffer,
  ids: VaultIds,
  ref: CodeRef,
  clear: Buffer,
  put: Pick<HeldCode, 'putAt' | 'putBy'>,
): HeldCode {
  return { state: 'held', ref, ...put, keyId: ids.keyId, sealed: seal(dataKey, clear, codeAbout(ids, ref)) };
}

function openHeld(dataKey: Buffer, data: VaultData, entry: HeldCode): Buffer | null {
  if (entry.keyId !== data.keyId) return null;
  return openSealed(dataKey, entry.sealed, codeAbout(data, entry.ref));
}

/** The clear bytes of the code; the caller wipes them. */
export function openCode(dataKey: Buffer, data: VaultData, ref: CodeRef): Result<Buffer, VaultProblem> {
  const entry = codeEntryOf(data, ref);
  if (entry === null) return refuseVault('no-code');
  if (entry.state === 'destroyed') return refuseVault('destroyed');
  if (entry.ref.kind !== ref.kind) return refuseVault('other-kind');
  const clear = openHeld(dataKey, data, entry);
  return clear === null ? refuseVault('damaged-code') : ok(clear);
}

export type Rekeyed = {
  readonly data: VaultData;
  /** The caller wipes it. */
  readonly dataKey: Buffer;
  /** Codes that could not be opened. They are kept as they were. */
  readonly unreadable: readonly CodeRef[];
};

export function newDataKey(vaultId: string): { readonly ids: VaultIds; readonly dataKey: Buffer } {
  const dataKey = randomBytes(keyBytes);
  return { ids: { vaultId, keyId: keyIdOf(vaultId, dataKey) }, dataKey };
}

/**
 * Everything under a new data key, which is given to everybody in `data` by their public keys. Refused when one of these was not put
 * there by somebody who had the data key.
 */
export function rekey(data: VaultData, oldKey: Buffer): Result<Rekeyed, VaultProblem> {
  for (const { personId, holder } of data.people) {
    const name = holderName(personId);
    if (!isVouchedFor(holder, oldKey, data, name)) return refuseVault('not-vouched', `(${personId})`);
  }
  if (!isVouchedFor(data.recovery.holder, oldKey, data, recoveryName))
    return refuseVault('not-vouched', 'It is the recovery key: make a new one.');
  const { ids, dataKey } = newDataKey(data.vaultId);
  const unreadable: CodeRef[] = [];
  const codes = data.codes.map((entry) => {
    if (entry.state === 'destroyed') return entry;
    const clear = openHeld(oldKey, data, entry);
    if (clear === null) {
      unreadable.push(entry.ref);
      return entry;
    }
    const again = sealCode(dataKey, ids, entry.ref, clear, { putAt: entry.putAt, putBy: entry.putBy });
    wipe(clear);
    return again;
  });
  const people = data.people.map((person) => ({
    ...person,
    holder: admit(person.holder, dataKey, ids, holderName(person.personId)),
  }));
  const recovery = { ...data.recovery, holder: admit(data.recovery.holder, dataKey, ids, recoveryName) };
  return ok({ data: { ...data, ...ids, people, recovery, codes }, dataKey, unreadable });
}
