// Vaults in real folders for tests, with keys that are quick to make and far too weak for use.
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { makeSubfolders } from '../../../app/storage/fleet-folder.ts';
import type { StorageProblem } from '../../../app/storage/storage-problem.ts';
import { createVault, openVault } from '../../../app/storage/vault/open-vault.ts';
import type { Vault } from '../../../app/storage/vault/vault.ts';
import { type CodeRef, type VaultData, vaultFile } from '../../../app/storage/vault/vault-data.ts';
import type { VaultSetting } from '../../../app/storage/vault/vault-file.ts';
import { tempFolder, testClock, unwrapped } from '../fleet-fixture.ts';

export const quickMaking = { cost: { N: 16, r: 1, p: 1 }, rsaBits: 1024 };
export const adaPhrase = 'copper lamp under ferry';
export const benPhrase = 'seven quiet orange doors';
/** Long enough not to turn up in random base64 by chance. */
export const secretCode = 'K93-4417-PLUM-20586';
export const ref: CodeRef = { vehicleId: 'vehicle-1', requestId: 'request-1', kind: 'immobiliser' };
export const otherRef: CodeRef = { vehicleId: 'vehicle-2', requestId: 'request-2', kind: 'radio' };

export type TestSetting = VaultSetting & {
  readonly clock: ReturnType<typeof testClock>;
  /** Refuses every write while set. */
  refusal: StorageProblem | null;
};

export async function settingIn(folder: string): Promise<TestSetting> {
  await makeSubfolders(folder);
  const setting: TestSetting = {
    folder,
    clock: testClock(),
    guard: async () => setting.refusal,
    making: quickMaking,
    refusal: null,
  };
  return setting;
}

/** A vault that Ada has opened. */
export async function adasVault(): Promise<{ setting: TestSetting; vault: Vault; recoveryKey: string }> {
  const setting = await settingIn(await tempFolder());
  const { vault, recoveryKey } = unwrapped(await createVault(setting, 'ada-1', adaPhrase));
  onTestFinished(() => vault.close());
  return { setting, vault, recoveryKey };
}

/** The same file opened anew, as after starting the program again. */
export async function startedAgain(setting: VaultSetting): Promise<Vault> {
  const vault = unwrapped(await openVault(setting));
  onTestFinished(() => vault.close());
  return vault;
}

export function problemOf(result: { readonly ok: boolean } & ({ ok: true } | { ok: false; error: { code: string } })) {
  return result.ok ? null : result.error.code;
}

export async function vaultDataIn(folder: string): Promise<VaultData> {
  return JSON.parse(await readFile(join(folder, vaultFile), 'utf8')).data;
}

/** Changes the file behind the program's back. */
export async function tamper(folder: string, change: (data: VaultData) => void): Promise<void> {
  const path = join(folder, vaultFile);
  const envelope = JSON.parse(await readFile(path, 'utf8'));
  change(envelope.data);
  await writeFile(path, `${JSON.stringify(envelope, null, 2)}\n`);
}

/** Another bit pattern of the same length. */
export function flipped(base64: string): string {
  const bytes = Buffer.from(base64, 'base64');
  bytes[0] = (bytes[0] ?? 0) ^ 1;
  return bytes.toString('base64');
}

/** Whether the text is in the bytes, in clear or in a form that anybody would try. */
export function holdsClear(bytes: Buffer, text: string): boolean {
  const clear = Buffer.from(text, 'utf8');
  const inBase64 = [0, 1, 2].map((shift) => {
    // The same text at each of the three places it can have in base64, without the characters that its neighbours share.
    const shifted = Buffer.concat([Buffer.alloc(shift), clear])
      .toString('base64')
      .replace(/=+$/, '');
    return shifted.slice(shift === 0 ? 0 : shift + 1, -1);
  });
  const forms = [text, text.toLowerCase(), clear.toString('hex'), encodeURIComponent(text), ...inBase64];
  return (
    forms.some((form) => bytes.includes(form)) ||
    bytes.includes(Buffer.from(text, 'utf16le')) ||
    bytes.includes([...text].reverse().join(''))
  );
}

/** Files of the folder in which the text is found. */
export async function filesHolding(folder: string, text: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const found: string[] = [];
  for (const entry of entries) {
    const path = join(entry.parentPath, entry.name);
    if (holdsClear(Buffer.from(entry.name), text)) found.push(path);
    else if (entry.isFile() && holdsClear(await readFile(path), text)) found.push(path);
  }
  return found;
}
