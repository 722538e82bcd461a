// What the page knows of the vault and of the codes of the open vehicle: states, names and reasons. No code, no pass phrase, ever.
import { useEffect } from 'react';
import type { AppError } from '../../app/contract/app-error.ts';
import type { KeptCode, KeptCodes, VaultState } from '../../app/contract/vault-view.ts';
import type { Result } from '../../app/domain/shared/result.ts';
import { ask, on } from '../bridge.ts';
import { vaultSentence } from '../text/vault.ts';
import { deskStore } from './desk-store.ts';
import { createStore, useStore } from './store.ts';

/** Null before the first answer, and for who may not ask. */
export const vaultStore = createStore<VaultState | null>(null);

type CodesOfVehicle = { readonly vehicleId: string; readonly codes: KeptCodes | null; readonly trouble: string };
const codesStore = createStore<CodesOfVehicle>({ vehicleId: '', codes: null, trouble: '' });

export async function readVault(): Promise<void> {
  const answer = await ask('vault:state', {});
  vaultStore.set(answer.ok ? answer.value : null);
}

export async function readKeptCodes(vehicleId: string): Promise<void> {
  const answer = await ask('vault:codes', { vehicleId });
  if (codesStore.read().vehicleId !== vehicleId) return;
  codesStore.set({
    vehicleId,
    codes: answer.ok ? answer.value : null,
    trouble: answer.ok ? '' : vaultSentence(answer.error),
  });
}

/** Reads the vault now and whenever it changes, as long as the component is drawn. */
export function useVault(): VaultState | null {
  const personId = useStore(deskStore)?.person.id;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another person may have another key.
  useEffect(() => {
    void readVault();
    const stops = [on('vault:changed', () => void readVault()), on('vault:locked', () => void readVault())];
    return () => {
      for (const stop of stops) stop();
    };
  }, [personId]);
  return useStore(vaultStore);
}

/** Keeps the codes of this vehicle read as long as the component is drawn. `version`: read again when it changes. */
export function useFollowCodes(vehicleId: string, version: string): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of the record may change who may see what.
  useEffect(() => {
    codesStore.update((before) => (before.vehicleId === vehicleId ? before : { vehicleId, codes: null, trouble: '' }));
    void readKeptCodes(vehicleId);
    return on('vault:changed', () => void readKeptCodes(vehicleId));
  }, [vehicleId, version]);
}

export function useKeptCodes(): KeptCodes | null {
  return useStore(codesStore).codes;
}

export function useKeptCode(requestId: string): KeptCode | null {
  return useKeptCodes()?.codes.find((code) => code.requestId === requestId) ?? null;
}

/** Opens the vault where it is locked; nothing to do where it is open. The pass phrase is the caller's to forget. */
export async function unlockVault(passPhrase: string): Promise<Result<null, AppError>> {
  if (vaultStore.read()?.state === 'open') return { ok: true, value: null };
  const answer = await ask('vault:unlock', { passPhrase });
  if (!answer.ok) {
    void readVault();
    return answer;
  }
  vaultStore.set(answer.value);
  return { ok: true, value: null };
}
