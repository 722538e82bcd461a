// A record as the bytes of its file and back: envelope, version, migrations, schema. Touches no disk.
import { z } from 'zod';
import { instantSchema } from '../domain/shared/day.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { migrateData } from './migrations/migration.ts';
import type { RecordKind } from './record-kind.ts';
import { describeUnreadable, type UnreadableText } from './unreadable-text.ts';

export type RecordFaultKind =
  | UnreadableText['kind']
  | 'foreign-format'
  | 'newer-version'
  | 'fails-schema'
  | 'migration-failed'
  | 'wrong-name';

export type ReadRecord<Data> = {
  readonly data: Data;
  readonly revision: number;
  readonly savedAt: string;
  /** The version the file was written in; lower than the kind's when it has been migrated. */
  readonly version: number;
};

export type RecordFault<Data> = {
  readonly kind: RecordFaultKind;
  readonly reason: string;
  /** The record, where all is well but its place ('wrong-name'). */
  readonly record: ReadRecord<Data> | null;
};

const envelopeSchema = z.strictObject({
  format: z.string(),
  version: z.int().min(1),
  revision: z.int().min(1),
  savedAt: instantSchema,
  data: z.unknown(),
});

/** Read before the rest: a newer version may have changed the envelope too. */
const headSchema = z.looseObject({ format: z.string(), version: z.int().min(1) });

export function firstProblem(error: z.ZodError): string {
  const issue = error.issues[0];
  const path = issue?.path.map(String).join('.') || 'the record itself';
  return `${path}: ${issue?.message ?? 'not as expected'}`;
}

/** Anything that is JSON at all; else in which way it is not. */
export function readJson(bytes: Uint8Array): Result<unknown, UnreadableText> {
  let text: string | null = null;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return ok(JSON.parse(text));
  } catch {
    return fail(describeUnreadable(bytes, text));
  }
}

/** `expectedId` is the file's name without its ending; null where the kind has no identity. */
export function readRecord<Data>(
  bytes: Uint8Array,
  kind: RecordKind<Data>,
  expectedId: string | null,
): Result<ReadRecord<Data>, RecordFault<Data>> {
  const fault = (faultKind: RecordFaultKind, reason: string, record: ReadRecord<Data> | null = null) =>
    fail({ kind: faultKind, reason, record });
  const json = readJson(bytes);
  if (!json.ok) return fault(json.error.kind, json.error.reason);
  const head = headSchema.safeParse(json.value);
  if (!head.success || head.data.format !== kind.format) {
    return fault('foreign-format', `This is not a ${kind.what} of this program.`);
  }
  const { version } = head.data;
  if (version > kind.version) {
    return fault(
      'newer-version',
      `This was written by a newer version of the program (format ${version}; this program knows ${kind.version}). It has not been touched. Update the program on this desk.`,
    );
  }
  const envelope = envelopeSchema.safeParse(json.value);
  if (!envelope.success) return fault('fails-schema', `The envelope does not hold: ${firstProblem(envelope.error)}`);
  let migrated: unknown;
  try {
    migrated = migrateData(envelope.data.data, version, kind.version, kind.migrations);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return fault('migration-failed', `It could not be brought from format ${version} to ${kind.version}: ${why}`);
  }
  const data = kind.schema.safeParse(migrated);
  if (!data.success) return fault('fails-schema', `The ${kind.what} does not hold at ${firstProblem(data.error)}`);
  const record = { data: data.data, revision: envelope.data.revision, savedAt: envelope.data.savedAt, version };
  const id = kind.idOf(data.data);
  if (id !== expectedId)
    return fault('wrong-name', `The file holds the record ${id}, which its name does not say.`, record);
  return ok(record);
}

/**
 * The bytes of the file: two-space JSON with the keys in the schema's order and a newline at the end, so that equal records are equal
 * files. Fails when the record would not read back.
 */
export function recordBytes<Data>(
  kind: RecordKind<Data>,
  record: { readonly data: Data; readonly revision: number; readonly savedAt: string },
): Result<{ readonly bytes: Buffer; readonly data: Data }, string> {
  const data = kind.schema.safeParse(record.data);
  if (!data.success) return fail(firstProblem(data.error));
  const { revision, savedAt } = record;
  const envelope = { format: kind.format, version: kind.version, revision, savedAt, data: data.data };
  const held = envelopeSchema.safeParse(envelope);
  if (!held.success) return fail(firstProblem(held.error));
  return ok({ bytes: Buffer.from(`${JSON.stringify(envelope, null, 2)}\n`), data: data.data });
}
