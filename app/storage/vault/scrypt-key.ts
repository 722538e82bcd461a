// Keys from pass phrases by scrypt (RFC 7914), the parameters as data so that they can grow. Keeps nothing.
import { scrypt } from 'node:crypto';
import { z } from 'zod';
import { phraseForm } from '../../domain/people/pass-phrase.ts';

const mostBytesOfMemory = 2 ** 30;

function memoryOf({ N, r }: { readonly N: number; readonly r: number }): number {
  return 128 * N * r;
}

/** As RFC 7914 names them. Bounded, because a file that asks for too much must not stop the program. */
export const scryptCostSchema = z
  .strictObject({
    N: z
      .int()
      .min(2)
      .max(2 ** 20),
    r: z.int().min(1).max(32),
    p: z.int().min(1).max(16),
  })
  .refine(({ N }) => (N & (N - 1)) === 0, 'N is a power of two.')
  .refine((cost) => memoryOf(cost) <= mostBytesOfMemory, 'More memory than this program gives to one pass phrase.');
export type ScryptCost = z.infer<typeof scryptCostSchema>;

/** 128 MiB and a second or so on a slow desk; kept beside each key, so that it can be raised later. */
export const usualScryptCost: ScryptCost = { N: 2 ** 17, r: 8, p: 1 };

/** A secret as the bytes that scrypt takes. The caller wipes them. */
export function phraseBytes(passPhrase: string): Buffer {
  return Buffer.from(phraseForm(passPhrase), 'utf8');
}

/** Overwrites secrets. Strings and what the runtime has copied elsewhere are beyond its reach. */
export function wipe(...secrets: readonly (Uint8Array | null)[]): void {
  for (const secret of secrets) secret?.fill(0);
}

/** @throws the runtime's error when the memory cannot be had; it does not repeat the secret. */
export function deriveKey(secret: Buffer, salt: Uint8Array, cost: ScryptCost, length = 32): Promise<Buffer> {
  const { N, r, p } = cost;
  // A little more than 128·r·(N + p): the runtime counts its own working space too.
  const maxmem = 128 * r * (N + p + 8) + 2 ** 20;
  return new Promise((resolve, reject) => {
    scrypt(secret, salt, length, { N, r, p, maxmem }, (error, key) => (error ? reject(error) : resolve(key)));
  });
}
