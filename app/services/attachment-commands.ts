// Adding a photograph or document to a vehicle, reading and opening one. The bytes are on the disk before the record names them.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import { type Attachment, attachmentFileName } from '../domain/vehicle/attachment.ts';
import { readersAtFirst, shownFileName, whyNotAdded, withAttachment } from '../domain/vehicle/attachment-rules.ts';
import { attachmentPath } from '../storage/attachment-files.ts';
import { contentHash } from '../storage/content-hash.ts';
import { pathIn } from '../storage/fleet-folder.ts';
import { isCopyOfPicture, judgeAttachment } from '../storage/judge-attachment.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';
import { maySeeAttachment } from './role-rules.ts';
import { saveChanged } from './vehicle-commands.ts';

function asBuffer(bytes: Uint8Array): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function copyOf(bytes: Uint8Array | null, size: 'small' | 'print'): Buffer | null {
  const buffer = bytes === null ? null : asBuffer(bytes);
  return buffer !== null && isCopyOfPicture(buffer, size) ? buffer : null;
}

const documentsAreOthers = 'Sales adds photographs. Ask the workshop or the manager to add a document.';

export async function addAttachment(
  context: DeskContext,
  { id, baseRevision, name, bytes: given, small, print, on, caption }: ChannelInput<'attachment:add'>,
): Answer<ChannelOutput<'attachment:add'>> {
  const kept = context.visible(id);
  if (!kept) return refuse('not-found');
  const rights = context.rights();
  const bytes = asBuffer(given);
  const form = judgeAttachment(bytes);
  if (typeof form === 'string') return refuse('refused', '', [{ field: 'file', sentence: form }]);
  if (form.kind === 'pdf' && !rights.addsDocuments)
    return refuse('refused', '', [{ field: 'file', sentence: documentsAreOthers }]);
  const readers = readersAtFirst(context.person().role, form.kind);
  if (!rights.puts.includes('attachments') || !rights.readsAttachmentsFor.includes(readers))
    return refuse('not-allowed', 'There may be amounts in a document. Sign in first; then it can be added.');
  if (kept.revision !== baseRevision) return refuse('stale-revision');
  if (on > context.today())
    return refuse('refused', '', [
      { field: 'on', sentence: 'The day lies in the future. Write the day on which it was taken or came.' },
    ]);
  const sha256 = contentHash(bytes);
  const standing = whyNotAdded(kept.data, sha256, (attachment) => maySeeAttachment(rights, attachment));
  if (standing !== null) return refuse('refused', '', [{ field: 'file', sentence: standing }]);
  const isPicture = form.kind !== 'pdf';
  const copies = { small: isPicture ? copyOf(small, 'small') : null, print: isPicture ? copyOf(print, 'print') : null };
  const attachment: Attachment = {
    id: context.deps.newIdentifier(),
    on,
    name: shownFileName(name),
    ...form,
    sha256,
    smallSha256: copies.small && contentHash(copies.small),
    printSha256: copies.print && contentHash(copies.print),
    sizeBytes: bytes.length,
    caption,
    readers,
    isOnSheets: false,
    entered: context.changeContext().stamp,
  };
  const next = withAttachment(kept.data, attachment);
  if (!next.ok) return refuse('refused', '', next.error);
  const files = [
    { name: attachmentFileName(sha256, form.kind), bytes },
    ...[copies.small, copies.print].flatMap((copy) =>
      copy === null ? [] : [{ name: attachmentFileName(contentHash(copy), 'jpeg'), bytes: copy }],
    ),
  ];
  const written = await context.store.keepAttachmentFiles(id, files);
  if (!written.ok) return refuseStorage(written.error);
  return saveChanged(context, kept, next.value, isPicture ? 'a photograph added' : 'a document added');
}

/** The attachment where this person may see the vehicle and it. */
function visibleAttachment(context: DeskContext, id: string, attachmentId: string): Attachment | null {
  const attachment = context.visible(id)?.data.attachments.find((one) => one.id === attachmentId) ?? null;
  return attachment !== null && maySeeAttachment(context.rights(), attachment) ? attachment : null;
}

const sentences = {
  missing: 'Its file is not in the fleet folder any more. Safety copies puts it back where a backup has it.',
  damaged: 'Its file is not as it was written. Safety copies puts it back where a backup has it.',
} as const;

async function readChecked(context: DeskContext, vehicleId: string, fileName: string) {
  const read = await context.store.readAttachment(vehicleId, fileName);
  if (typeof read !== 'string') return ok(new Uint8Array(read));
  context.deps.emit('desk:changed', context.desk());
  return refuse('bad-attachment', sentences[read]);
}

export async function readAttachment(
  context: DeskContext,
  { id, attachmentId, size }: ChannelInput<'attachment:read'>,
): Answer<ChannelOutput<'attachment:read'>> {
  const attachment = visibleAttachment(context, id, attachmentId);
  if (attachment === null) return refuse('not-found');
  const { kind, sha256, smallSha256, printSha256 } = attachment;
  if (size !== 'whole' && kind === 'pdf') return refuse('bad-attachment', 'A PDF has no picture. Open it.');
  const copySha256 = { small: smallSha256, print: printSha256, whole: null }[size];
  if (copySha256 !== null) {
    const copy = await readChecked(context, id, attachmentFileName(copySha256, 'jpeg'));
    if (copy.ok) return ok({ bytes: copy.value, kind: 'jpeg' });
  }
  const whole = await readChecked(context, id, attachmentFileName(sha256, kind));
  return whole.ok ? ok({ bytes: whole.value, kind }) : whole;
}

export async function openAttachment(
  context: DeskContext,
  { id, attachmentId }: ChannelInput<'attachment:open'>,
): Answer<ChannelOutput<'attachment:open'>> {
  const attachment = visibleAttachment(context, id, attachmentId);
  if (attachment === null) return refuse('not-found');
  const fileName = attachmentFileName(attachment.sha256, attachment.kind);
  const read = await readChecked(context, id, fileName);
  if (!read.ok) return read;
  const opened = await context.deps.outside.openFile(pathIn(context.store.folder, attachmentPath(id, fileName)));
  return opened ? ok({}) : refuse('bad-attachment', `No program on this computer opened it; its file is ${fileName}.`);
}
