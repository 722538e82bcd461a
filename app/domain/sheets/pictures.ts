// The photographs of a vehicle that a person chose for sheets, as blocks: those for the readers of this sheet and no others. What is for the
// manager alone is on none.
import { type DayForm, showDay } from '../shared/show-day.ts';
import type { Attachment, AttachmentReaders } from '../vehicle/attachment.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { SheetBlock, SheetPicture } from './sheet.ts';
import { joined } from './sheet-words.ts';

/** Sales hands its sheets to buyers; the job sheet stays in the workshop. */
export type PictureReaders = readonly Exclude<AttachmentReaders, 'manager'>[];

function asPicture({ id, printSha256, caption, on }: Attachment, dayForm: DayForm): SheetPicture[] {
  // Without a copy made for paper there is nothing that a sheet may carry.
  if (printSha256 === null) return [];
  const day = showDay(on, dayForm);
  const words = caption.trim();
  return [
    {
      attachmentId: id,
      sha256: printSha256,
      caption: joined([words, day]),
      alternateText: words === '' ? `Photograph of ${day}, not described` : `Photograph of ${day}: ${words}`,
    },
  ];
}

/** A heading and the photographs, the oldest day first; nothing where none is chosen. */
export function pictureBlocks({ id, attachments }: Vehicle, readers: PictureReaders, dayForm: DayForm): SheetBlock[] {
  const items = attachments
    .filter((attachment) => attachment.isOnSheets && readers.some((one) => one === attachment.readers))
    .toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
    .flatMap((attachment) => asPicture(attachment, dayForm));
  if (items.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Photographs' },
    { kind: 'pictures', vehicleId: id, items },
  ];
}
