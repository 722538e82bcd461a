// Words of the photographs and documents of a vehicle.
import { plural } from '../../app/domain/shared/text.ts';
import { type AttachmentReaders, mostAttachmentBytes } from '../../app/domain/vehicle/attachment.ts';

const mostMegabytes = mostAttachmentBytes / 1_000_000;

function size(bytes: number): string {
  if (bytes < 100_000) return `${Math.max(1, Math.round(bytes / 1000))} kB`;
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}

const readers: Readonly<Record<AttachmentReaders, string>> = {
  everyone: 'Everyone, sales too',
  workshop: 'Workshop and manager',
  manager: 'The manager alone',
};

export const attachmentsText = {
  add: 'Add files …',
  addHintPictures: `JPEG or PNG photographs, at most ${mostMegabytes} MB each`,
  addHint: `JPEG or PNG photographs and PDF documents, at most ${mostMegabytes} MB each`,
  empty: 'Nothing here yet. Drop photographs or PDF documents anywhere on this page, paste a picture, or choose files.',
  emptyPictures: 'Nothing here yet. Drop photographs anywhere on this page, paste a picture, or choose files.',
  emptyToRead: 'There is no photograph and no document for you to see.',
  photographs: 'Photographs',
  documents: 'Documents',
  dropHere: (stockNumber: string) => `Drop to add to ${stockNumber}`,

  adding: (nth: number, of: number, name: string) => `Adding ${nth} of ${of}: ${name}`,
  added: (count: number) => `${plural(count, 'file', 'files')} added.`,
  notAdded: (count: number) => (count === 1 ? 'This file was not added' : `These ${count} files were not added`),
  tryAgain: 'Try again',
  leaveOut: 'Leave it out',
  ofFile: (action: string, name: string) => `${action}: ${name}`,
  tooLarge: (bytes: number) =>
    `The file has ${Math.ceil(bytes / 1_000_000)} MB; at most ${mostMegabytes} MB are kept. Make it smaller, then add it.`,
  isEmpty: 'The file is empty. Copy it to this computer once more, then add it.',
  unread: 'The file could not be read. Is it still where it was? A folder cannot be added: open it and take its files.',

  somebodyElse:
    'Somebody else sat down at the desk before it was added. Try again to add it under the name that is there now.',

  notDescribed: 'Not described yet',
  show: (name: string) => `Show large: ${name}`,
  open: 'Open',
  openOutside: 'Open in another program',
  correct: 'Correct',
  describe: 'Describe',
  onSheets: 'on sheets',
  reading: 'Reading the picture …',
  unseen: 'This picture cannot be shown.',
  size,

  caption: 'What it shows',
  documentCaption: 'What it is',
  captionHint: 'Printed under the picture, and read out to whoever cannot see it',
  on: 'Day',
  readers,
  /** In a line, where the whole words have no room. */
  readersShort: { everyone: 'everyone', workshop: 'workshop', manager: 'manager' } satisfies Record<
    AttachmentReaders,
    string
  >,
  whoSees: 'Who sees it',
  print: 'Print it on sheets',
  printHint:
    'For everyone: on the readiness sheet and the job sheet. For the workshop: on the job sheet. For the manager alone: on none',
  takenOff: 'Removed, it leaves its file in the fleet folder, so that undo and backups stay true.',

  place: (nth: number, of: number) => `${nth} of ${of}`,
  previous: 'Previous',
  next: 'Next',
  isFirst: 'This is the first.',
  isLast: 'This is the last.',
  facts: (name: string, bytes: number, dots: string) =>
    [name, size(bytes), dots].filter((word) => word !== '').join(' · '),
  addedBy: (who: string, day: string) => `Added by ${who}, ${day}`,
} as const;
