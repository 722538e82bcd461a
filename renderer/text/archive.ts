// Words of saving the whole fleet as one file and of opening such a file.
import { plural } from '../../app/domain/shared/text.ts';

export const archiveText = {
  title: 'The whole fleet as one file',
  hint: 'Settings, vehicles, histories, withdrawn vehicles and, if you like, photographs and documents in one zip file, to move the fleet to another computer or to hand it on. It holds prices and people’s names: keep it as you keep those.',
  withKeys: 'With the vault and people’s keys',
  withKeysHint:
    'Left out unless you ask: whoever has the file could try pass phrases at the vault for as long as they like.',
  withAttachments: (attachments: number) =>
    `With ${plural(attachments, 'photograph or document', 'photographs and documents')}`,
  withAttachmentsHint: (bytes: number) =>
    `${bytes < 1_000_000 ? 'Less than 1 MB' : `About ${Math.round(bytes / 1_000_000)} MB`}. A fleet that is opened from a file without them says on Safety copies what it misses.`,
  write: 'Save the fleet as one file…',
  written: (fileName: string, vehicles: number) =>
    `${fileName} was written and read back: ${plural(vehicles, 'vehicle', 'vehicles')}.`,
  missing: (names: readonly string[]) =>
    `Not in it, because it could not be read: ${names.slice(0, 5).join(', ')}${names.length > 5 ? ' and more' : ''}.`,
  open: 'Open an archive as a new fleet…',
  openHint: 'You choose the file, then an empty folder for it. The fleet that is open stays where it is.',
} as const;
