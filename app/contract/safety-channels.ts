// Damaged files, backups and the second folder: what may be asked. Folders are chosen in the system's dialog, never said by the page.
import { z } from 'zod';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { backupPreviewSchema, putBackPreviewSchema, safetyViewSchema } from './safety-view.ts';
import { deskSchema } from './views.ts';

const manager = ['manager'] as const;
const nothing = z.strictObject({});
const backup = z.strictObject({ backupId: z.string().max(80) });
const vehicleInBackup = z.strictObject({ backupId: z.string().max(80), vehicleId: identifierSchema });
const seen = z.strictObject({ safety: safetyViewSchema, desk: deskSchema });
/** With what takes the putting back itself back: the backup that was made just before. */
const putBack = z.strictObject({ desk: deskSchema, undoBackupId: z.string() });

export const safetyChannels = {
  'safety:read': { input: nothing, output: safetyViewSchema, roles: manager, mutates: false },
  'safety:preview-trouble': {
    input: z.strictObject({ id: z.string().max(200) }),
    output: putBackPreviewSchema,
    roles: manager,
    mutates: false,
  },
  /** Reads every file of the backup and holds it against its hash. */
  'safety:preview-backup': { input: backup, output: backupPreviewSchema, roles: manager, mutates: false },
  'safety:preview-vehicle': { input: vehicleInBackup, output: putBackPreviewSchema, roles: manager, mutates: false },
  /** Damaged files of the backup stay as they are; `leaving` names those that the person has been told of, and no other is left out. */
  'safety:restore-all': {
    input: backup.extend({ leaving: z.array(z.string().max(300)).max(20_000) }),
    output: putBack.extend({ restored: z.int(), withdrawn: z.int() }),
    roles: manager,
    mutates: true,
  },
  /** Makes one vehicle what it is in that backup; where it is not in it, takes it out of the lot. */
  'safety:restore-vehicle': { input: vehicleInBackup, output: putBack, roles: manager, mutates: true },
  'safety:choose-second': { input: nothing, output: seen, roles: manager, mutates: true },
  'safety:leave-second': { input: nothing, output: seen, roles: manager, mutates: true },
} as const;
