// Makes the identity of a new fact on the page. Nothing a person typed goes into it.
import type { Identifier } from '../../app/domain/shared/identifier.ts';

const characters = 'abcdefghijklmnopqrstuvwxyz0123456789';

/** 'f-' and 16 random letters and digits. Bytes above 251 are thrown away so that each character is as likely as the next. */
export function newIdentifier(): Identifier {
  let made = '';
  while (made.length < 16) {
    for (const byte of crypto.getRandomValues(new Uint8Array(24))) {
      if (byte < 252 && made.length < 16) made += characters.charAt(byte % characters.length);
    }
  }
  return `f-${made}`;
}
