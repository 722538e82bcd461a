// Sealing bytes under a key so that they can be opened only unchanged and only as what they were sealed as: AES-256-GCM of Node's crypto
// (NIST SP 800-38D) with a fresh 96-bit nonce each time.
import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import { z } from 'zod';

export const keyBytes = 32;
const nonceBytes = 12;
const tagBytes = 16;

/** Base64 text of at most so many bytes, or of exactly so many. */
export function base64Schema(bytes: { readonly atMost: number } | { readonly exactly: number }) {
  return z
    .string()
    .regex(/^[A-Za-z0-9+/]*={0,2}$/, 'Not base64.')
    .refine((text) => {
      const { length } = Buffer.from(text, 'base64');
      return 'exactly' in bytes ? length === bytes.exactly : length <= bytes.atMost;
    }, 'Not of the length that it must have.');
}

export const sealedSchema = z.strictObject({
  nonce: base64Schema({ exactly: nonceBytes }),
  text: base64Schema({ atMost: 8192 }),
  tag: base64Schema({ exactly: tagBytes }),
});
export type Sealed = z.infer<typeof sealedSchema>;

/** What a box is about, as the associated data: the parts cannot run into each other. */
export function about(...parts: readonly string[]): Buffer {
  return Buffer.from(JSON.stringify(parts), 'utf8');
}

export function seal(key: Uint8Array, clear: Uint8Array, associated: Uint8Array): Sealed {
  const nonce = randomBytes(nonceBytes);
  const cipher = createCipheriv('aes-256-gcm', key, nonce, { authTagLength: tagBytes });
  cipher.setAAD(associated);
  const text = Buffer.concat([cipher.update(clear), cipher.final()]);
  return {
    nonce: nonce.toString('base64'),
    text: text.toString('base64'),
    tag: cipher.getAuthTag().toString('base64'),
  };
}

/** Null when the key is another one, or anything was changed, or it was sealed as something else. */
export function openSealed(key: Uint8Array, sealed: Sealed, associated: Uint8Array): Buffer | null {
  const nonce = Buffer.from(sealed.nonce, 'base64');
  const decipher = createDecipheriv('aes-256-gcm', key, nonce, { authTagLength: tagBytes });
  decipher.setAAD(associated);
  decipher.setAuthTag(Buffer.from(sealed.tag, 'base64'));
  const clear = decipher.update(Buffer.from(sealed.text, 'base64'));
  try {
    return Buffer.concat([clear, decipher.final()]);
  } catch {
    return null;
  } finally {
    // Never to be used when the tag does not hold, and copied when it does.
    clear.fill(0);
  }
}
