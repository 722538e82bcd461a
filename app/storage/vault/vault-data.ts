// What vault.json holds: who has a key, the recovery key's lock, and each code sealed or the mark that there was one. No clear value.
import { z } from 'zod';
import { triesSchema } from '../../domain/people/try-delay.ts';
import { instantSchema } from '../../domain/shared/day.ts';
import { identifierSchema } from '../../domain/shared/identifier.ts';
import { lineSchema } from '../../domain/shared/text.ts';
import type { RecordKind } from '../record-kind.ts';
import { keyHolderSchema } from './key-holder.ts';
import { sealedSchema } from './sealed-box.ts';

export const vaultFile = 'vault.json';

/** Which request a code belongs to. Sealed with the code: in another place it does not open. */
export const codeRefSchema = z.strictObject({
  vehicleId: identifierSchema,
  requestId: identifierSchema,
  kind: identifierSchema,
});
export type CodeRef = z.infer<typeof codeRefSchema>;

const randomIdSchema = z.string().regex(/^[0-9a-f]{32}$/);
const put = { ref: codeRefSchema, putAt: instantSchema, putBy: identifierSchema };

const heldCodeSchema = z.strictObject({
  state: z.literal('held'),
  ...put,
  /** The data key it is sealed under. */
  keyId: randomIdSchema,
  sealed: sealedSchema,
});
export type HeldCode = z.infer<typeof heldCodeSchema>;

const destroyedCodeSchema = z.strictObject({
  state: z.literal('destroyed'),
  ...put,
  destroyedAt: instantSchema,
  destroyedBy: identifierSchema,
  why: lineSchema(200),
});

export const codeEntrySchema = z.discriminatedUnion('state', [heldCodeSchema, destroyedCodeSchema]);
export type CodeEntry = z.infer<typeof codeEntrySchema>;

const personKeySchema = z.strictObject({
  personId: identifierSchema,
  admittedAt: instantSchema,
  tries: triesSchema,
  holder: keyHolderSchema,
});
export type PersonKey = z.infer<typeof personKeySchema>;

export const vaultDataSchema = z.strictObject({
  vaultId: randomIdSchema,
  /** The data key's name, see `keyIdOf`; another one each time the data key changes. */
  keyId: randomIdSchema,
  people: z.array(personKeySchema).min(1).max(60),
  recovery: z.strictObject({ madeAt: instantSchema, tries: triesSchema, holder: keyHolderSchema }),
  codes: z.array(codeEntrySchema).max(100_000),
});
export type VaultData = z.infer<typeof vaultDataSchema>;

export const vaultKind: RecordKind<VaultData> = {
  format: 'lotwright-vault',
  version: 1,
  schema: vaultDataSchema,
  migrations: [],
  what: 'vault for codes',
  idOf: () => null,
};

export const recoveryName = 'recovery';

/** The holder's name in everything that is sealed for them; no person's can be that of the recovery key. */
export function holderName(personId: string): string {
  return `person ${personId}`;
}

export function isSameRequest(a: CodeRef, b: CodeRef): boolean {
  return a.vehicleId === b.vehicleId && a.requestId === b.requestId;
}

export function codeEntryOf(data: VaultData, ref: CodeRef): CodeEntry | null {
  return data.codes.find((entry) => isSameRequest(entry.ref, ref)) ?? null;
}

export function withCode(data: VaultData, entry: CodeEntry): VaultData {
  return { ...data, codes: [...data.codes.filter((other) => !isSameRequest(other.ref, entry.ref)), entry] };
}
