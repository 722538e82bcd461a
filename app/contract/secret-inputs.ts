// Which inputs hold a secret (a pass phrase, a PIN, a recovery key, a code), declared once, and what may be told of such a call when it
// fails. Nothing of what was typed leaves here: neither in an answer nor for the log.
import { z } from 'zod';

/** A secret as the page sends it. What it must be like is said elsewhere, in sentences that do not repeat it. */
export const secretTextSchema = z.string().min(1, 'Type it here.').max(400, 'This is too long.');

/** Channel → its fields of `secretTextSchema`. A test holds it against the contract. */
export const secretInputs: Readonly<Record<string, readonly string[]>> = {
  'people:sign-in': ['secret'],
  'people:give-secret': ['secret'],
  'people:change-secret': ['oldSecret', 'newSecret'],
  'vault:make': ['passPhrase'],
  'vault:unlock': ['passPhrase'],
  'vault:put-code': ['value'],
  'vault:add-person': ['passPhrase'],
  'vault:change-pass-phrase': ['oldPassPhrase', 'newPassPhrase'],
  'vault:recover': ['recoveryKey', 'passPhrase'],
};

export function carriesSecret(channel: string): boolean {
  return channel in secretInputs;
}

/** The error with its kind and where it arose, without its words: nobody has read those for secrets. */
export function withoutWords(error: unknown): Error {
  const told = new Error('(words left out: the call carried a secret)');
  told.name = error instanceof Error && /^\w{1,40}$/.test(error.name) ? error.name : 'Error';
  const places = error instanceof Error ? (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line)) : [];
  told.stack = [`${told.name}: ${told.message}`, ...places].join('\n');
  return told;
}

/** The problems at the fields of a call that carried a secret: whose field, and no words that could repeat what was typed. */
export function problemsWithoutWords(error: z.ZodError): { field: string; sentence: string }[] {
  const own = ['Type it here.', 'This is too long.'];
  return error.issues.slice(0, 20).map((issue) => ({
    field: issue.path.join('.'),
    sentence: own.includes(issue.message) ? issue.message : 'The program did not understand this field.',
  }));
}
