// Who can open the vault, each by a key pair: scrypt of the pass phrase opens the private key, the private key opens the data key.
// The pair in between lets the data key be changed for everybody when one person leaves, without asking the others for their pass phrases
// and without anything that the one who left could still open. RSA-OAEP (RFC 8017) of Node's crypto; nothing of our own in it.
import {
  constants,
  createHash,
  createHmac,
  createPrivateKey,
  createPublicKey,
  generateKeyPair,
  privateDecrypt,
  publicEncrypt,
  randomBytes,
} from 'node:crypto';
import { z } from 'zod';
import { deriveKey, type ScryptCost, scryptCostSchema, usualScryptCost, wipe } from './scrypt-key.ts';
import { about, base64Schema, keyBytes, openSealed, seal, sealedSchema } from './sealed-box.ts';

const saltBytes = 16;
const lockShape = {
  publicKey: base64Schema({ atMost: 1024 }),
  cost: scryptCostSchema,
  salt: base64Schema({ exactly: saltBytes }),
  privateKey: sealedSchema,
};
const lockSchema = z.strictObject(lockShape);
/** A key pair, its private half locked by a secret. */
export type KeyLock = z.infer<typeof lockSchema>;

export const keyHolderSchema = z.strictObject({
  ...lockShape,
  /** The data key, encrypted to the public key. */
  dataKey: base64Schema({ atMost: 1024 }),
  /** Made with the data key: nobody can slip in a public key of his own without it. */
  vouch: sealedSchema,
  /** No secret: tells a damaged entry from a wrong pass phrase. */
  check: z.string().regex(/^[0-9a-f]{16}$/),
});
export type KeyHolder = z.infer<typeof keyHolderSchema>;

/** Which vault and which of its data keys. */
export type VaultIds = { readonly vaultId: string; readonly keyId: string };

/** The data key's name, which only this key has: nobody can pass another one off under it. Does not tell the key. */
export function keyIdOf(vaultId: string, dataKey: Uint8Array): string {
  return createHmac('sha256', dataKey).update(about('key-id', vaultId)).digest('hex').slice(0, 32);
}

export type KeyMaking = { readonly cost: ScryptCost; readonly rsaBits: number };
export const usualKeyMaking: KeyMaking = { cost: usualScryptCost, rsaBits: 3072 };

function makePair(bits: number): Promise<{ publicKey: Buffer; privateKey: Buffer }> {
  const form = {
    modulusLength: bits,
    publicKeyEncoding: { type: 'spki', format: 'der' },
    privateKeyEncoding: { type: 'pkcs8', format: 'der' },
  } as const;
  return new Promise((resolve, reject) => {
    generateKeyPair('rsa', form, (error, publicKey, privateKey) =>
      error ? reject(error) : resolve({ publicKey, privateKey }),
    );
  });
}

function privateKeyAbout(vaultId: string, name: string, publicKey: string): Buffer {
  return about('private-key', vaultId, name, publicKey);
}

function oaep(ids: VaultIds, name: string) {
  return {
    padding: constants.RSA_PKCS1_OAEP_PADDING,
    oaepHash: 'sha256',
    oaepLabel: about('data-key', ids.vaultId, ids.keyId, name),
  };
}

function vouchAbout(ids: VaultIds, name: string, publicKey: string): Buffer {
  return about('vouch', ids.vaultId, ids.keyId, name, publicKey);
}

function checkOf(holder: Omit<KeyHolder, 'check'>, ids: VaultIds, name: string): string {
  const { publicKey, cost, salt, privateKey, dataKey, vouch } = holder;
  const boxes = [privateKey, vouch].flatMap((box) => [box.nonce, box.text, box.tag]);
  const all = [ids.vaultId, ids.keyId, name, publicKey, cost.N, cost.r, cost.p, salt, dataKey, ...boxes];
  return createHash('sha256').update(JSON.stringify(all)).digest('hex').slice(0, 16);
}

/** A new pair for the holder of this name, locked by the secret. The caller wipes the secret. */
export async function lockKeyPair(vaultId: string, name: string, secret: Buffer, making: KeyMaking): Promise<KeyLock> {
  const salt = randomBytes(saltBytes);
  const { cost } = making;
  const [key, pair] = await Promise.all([deriveKey(secret, salt, cost), makePair(making.rsaBits)]);
  const publicKey = pair.publicKey.toString('base64');
  const privateKey = seal(key, pair.privateKey, privateKeyAbout(vaultId, name, publicKey));
  wipe(key, pair.privateKey);
  return { publicKey, cost, salt: salt.toString('base64'), privateKey };
}

/** Gives a holder the data key, by the public half alone. */
export function admit(lock: KeyLock, dataKey: Buffer, ids: VaultIds, name: string): KeyHolder {
  const { publicKey, cost, salt, privateKey } = lock;
  const key = createPublicKey({ key: Buffer.from(publicKey, 'base64'), format: 'der', type: 'spki' });
  const holder = {
    publicKey,
    cost,
    salt,
    privateKey,
    dataKey: publicEncrypt({ key, ...oaep(ids, name) }, dataKey).toString('base64'),
    vouch: seal(dataKey, new Uint8Array(), vouchAbout(ids, name, publicKey)),
  };
  return { ...holder, check: checkOf(holder, ids, name) };
}

/** Whether somebody who had the data key put this holder's public key there. */
export function isVouchedFor(holder: KeyHolder, dataKey: Buffer, ids: VaultIds, name: string): boolean {
  return openSealed(dataKey, holder.vouch, vouchAbout(ids, name, holder.publicKey)) !== null;
}

export function isDamaged(holder: KeyHolder, ids: VaultIds, name: string): boolean {
  return holder.check !== checkOf(holder, ids, name);
}

/** The data key, or null when the secret is wrong. The caller wipes both. */
export async function openHolder(
  holder: KeyHolder,
  secret: Buffer,
  ids: VaultIds,
  name: string,
): Promise<Buffer | null> {
  const key = await deriveKey(secret, Buffer.from(holder.salt, 'base64'), holder.cost);
  const der = openSealed(key, holder.privateKey, privateKeyAbout(ids.vaultId, name, holder.publicKey));
  wipe(key);
  if (der === null) return null;
  try {
    const privateKey = createPrivateKey({ key: der, format: 'der', type: 'pkcs8' });
    const dataKey = privateDecrypt({ key: privateKey, ...oaep(ids, name) }, Buffer.from(holder.dataKey, 'base64'));
    const isIt = dataKey.length === keyBytes && keyIdOf(ids.vaultId, dataKey) === ids.keyId;
    if (isIt && isVouchedFor(holder, dataKey, ids, name)) return dataKey;
    wipe(dataKey);
    return null;
  } catch {
    return null;
  } finally {
    wipe(der);
  }
}
