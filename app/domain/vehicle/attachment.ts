// A photograph or document of a vehicle: what the record says of it. Its bytes lie in files of their own; none are here.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';

/** 25 MB: more than any phone's photograph, little enough to be read at once. */
export const mostAttachmentBytes = 25_000_000;
export const mostAttachments = 200;
/** The small picture for the list, made by the page: its longer edge in dots, and its bytes. */
export const smallEdgeDots = 320;
export const mostSmallBytes = 60_000;
/** The picture that sheets carry, made by the page on a white ground: its longer edge in dots, and its bytes. */
export const printEdgeDots = 1600;
export const mostPrintBytes = 3_000_000;
export const longestAttachmentName = 200;

export const attachmentKindSchema = z.enum(['jpeg', 'png', 'pdf']);
export type AttachmentKind = z.infer<typeof attachmentKindSchema>;

/** Who may see it: everyone is sales too; the workshop is technicians and managers; the manager alone. */
export const attachmentReadersSchema = z.enum(['everyone', 'workshop', 'manager']);
export type AttachmentReaders = z.infer<typeof attachmentReadersSchema>;

/** Hashes also name the files: see `attachmentFiles`. */
const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/, 'No SHA-256 in hexadecimal.');
const dotsSchema = z.int().min(1).max(100_000).nullable();

const shape = {
  on: daySchema,
  /** The file's name as it was given: for showing only, never part of a path. */
  name: filledLineSchema(longestAttachmentName),
  kind: attachmentKindSchema,
  sha256: sha256Schema,
  /** The small picture and the one for sheets, each a file of its own; null for a PDF, or where the page could make none. */
  smallSha256: sha256Schema.nullable(),
  printSha256: sha256Schema.nullable(),
  sizeBytes: z.int().min(1).max(mostAttachmentBytes),
  /** As the picture is looked at, upright; null for a PDF. */
  widthDots: dotsSchema,
  heightDots: dotsSchema,
  /** What it shows; on paper it is also read out in place of the picture. */
  caption: lineSchema(200),
  readers: attachmentReadersSchema,
  /** Whether sheets carry it; pictures only. */
  isOnSheets: z.boolean(),
};
export const attachmentDraftSchema = factDraft(shape);
export const attachmentSchema = keptFact(shape);
export type AttachmentDraft = z.infer<typeof attachmentDraftSchema>;
export type Attachment = z.infer<typeof attachmentSchema>;

const endings: Readonly<Record<AttachmentKind, string>> = { jpeg: 'jpg', png: 'png', pdf: 'pdf' };

/** The name of a file in the folder of its vehicle: the hash of its bytes and what it is. */
export function attachmentFileName(sha256: string, kind: AttachmentKind): string {
  return `${sha256}.${endings[kind]}`;
}

/** Every file that belongs to it: as it was given, then the small picture and the one for sheets. */
export function attachmentFiles({ sha256, kind, smallSha256, printSha256 }: AttachmentDraft): readonly string[] {
  const copies = [smallSha256, printSha256].flatMap((hash) => hash ?? []);
  return [attachmentFileName(sha256, kind), ...copies.map((hash) => attachmentFileName(hash, 'jpeg'))];
}
