// The SHA-256 of a file's bytes (FIPS 180-4), in lower-case hexadecimal. For telling changes, not for secrets.
import { createHash } from 'node:crypto';

export function contentHash(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
