// What may be added to the photographs and documents of a vehicle, and what may be changed about one. Pure; judges no bytes.
import type { Role } from '../fleet/shop.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import {
  type Attachment,
  type AttachmentDraft,
  type AttachmentKind,
  type AttachmentReaders,
  attachmentDraftSchema,
  longestAttachmentName,
  mostAttachments,
} from './attachment.ts';
import type { ChangeProblem } from './change-problem.ts';
import type { Vehicle } from './vehicle.ts';

/**
 * Who sees it until somebody says otherwise. A manager's document may be an invoice with the purchase price; a photograph may show
 * what is not for buyers yet.
 */
export function readersAtFirst(role: Role, kind: AttachmentKind): AttachmentReaders {
  // Sales takes the pictures that sell it, and sees nothing else.
  if (role === 'sales') return 'everyone';
  return role === 'manager' && kind === 'pdf' ? 'manager' : 'workshop';
}

/** A file's name as it may be shown: one line of plain text, cut in the middle so that its ending stays. */
export function shownFileName(given: string): string {
  const plain = given.replace(/\p{Cc}/gu, ' ').trim();
  if (plain === '') return 'without a name';
  if (plain.length <= longestAttachmentName) return plain;
  const tail = plain.slice(-20);
  return `${plain.slice(0, longestAttachmentName - tail.length - 1)}…${tail}`;
}

/** What the bytes are, and what the page has made of them, never changes: other bytes are another attachment. */
const fixedFields = [
  'name',
  'kind',
  'sha256',
  'smallSha256',
  'printSha256',
  'sizeBytes',
  'widthDots',
  'heightDots',
] as const satisfies readonly (keyof AttachmentDraft)[];

function sheetProblems({ isOnSheets, kind, printSha256, caption, readers }: AttachmentDraft): ChangeProblem[] {
  if (!isOnSheets) return [];
  if (kind === 'pdf')
    return [{ field: 'isOnSheets', sentence: 'Sheets carry pictures only. Print the document itself.' }];
  const problems: ChangeProblem[] = [];
  if (printSha256 === null)
    problems.push({
      field: 'isOnSheets',
      sentence: 'No copy for sheets could be made of this picture. Save it as JPEG, then add that one.',
    });
  if (caption.trim() === '')
    problems.push({
      field: 'caption',
      sentence: 'Say what the picture shows: on paper it is read out to whoever cannot see it.',
    });
  if (readers === 'manager')
    problems.push({
      field: 'readers',
      sentence:
        'A picture for the manager alone is on no sheet. Let the workshop or everyone see it, or keep it off sheets.',
    });
  return problems;
}

/** What stands against this change of an attachment; `before` is null where the record has none with this identity. */
export function attachmentChangeProblems(before: Attachment | null, item: AttachmentDraft): readonly ChangeProblem[] {
  if (before === null)
    return [{ field: '', sentence: 'This photograph or document is no longer there. Add the file again.' }];
  const changed = fixedFields.filter((field) => before[field] !== item[field]);
  return [
    ...changed.map((field) => ({
      field,
      sentence: 'This belongs to the file itself and stays. Take this one off and add the other file.',
    })),
    ...sheetProblems(item),
  ];
}

/** Why no further file with these bytes may be added, in a sentence; null when it may. `mayRead`: whether this person sees that one. */
export function whyNotAdded(
  vehicle: Vehicle,
  sha256: string,
  mayRead: (attachment: Attachment) => boolean,
): string | null {
  const same = vehicle.attachments.find((attachment) => attachment.sha256 === sha256);
  if (same)
    return mayRead(same)
      ? `This file is on this vehicle already: ${[same.name, same.caption].filter((text) => text.trim() !== '').join(', ')}.`
      : 'This file is on this vehicle already, for the manager alone.';
  if (vehicle.attachments.length >= mostAttachments)
    return `A vehicle has ${mostAttachments} photographs and documents at most. Take off one that is not needed, then add this one.`;
  return null;
}

/** The record with one more, or what stands against it. */
export function withAttachment(vehicle: Vehicle, attachment: Attachment): Result<Vehicle, readonly ChangeProblem[]> {
  const { entered: _stamp, ...draft } = attachment;
  const parsed = attachmentDraftSchema.safeParse(draft);
  if (!parsed.success)
    return fail(parsed.error.issues.map(({ path, message }) => ({ field: path.join('.'), sentence: message })));
  return ok({ ...vehicle, attachments: [...vehicle.attachments, attachment] });
}
