// Photographs and documents of a vehicle: added, read and opened. The page hands over the bytes of a file that the person chose, and
// gets bytes; never a path. What is said about one (caption, who sees it, taking it off) is changed as every other fact is.
import { z } from 'zod';
import { roleSchema } from '../domain/fleet/shop.ts';
import { daySchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { lineSchema } from '../domain/shared/text.ts';
import {
  attachmentKindSchema,
  mostAttachmentBytes,
  mostPrintBytes,
  mostSmallBytes,
} from '../domain/vehicle/attachment.ts';
import { bytesSchema } from './bytes.ts';
import { changedVehicleSchema } from './changed-vehicle.ts';

const everybody = roleSchema.options;
const oneAttachment = z.strictObject({ id: identifierSchema, attachmentId: identifierSchema });

export const attachmentChannels = {
  'attachment:add': {
    input: z.strictObject({
      id: identifierSchema,
      baseRevision: z.int().min(1),
      /** For showing only. */
      name: z.string().max(1000),
      bytes: bytesSchema(mostAttachmentBytes + 1_000_000),
      /** JPEGs that the page has made of a picture; null for a PDF, or where it could make none. */
      small: bytesSchema(mostSmallBytes).nullable(),
      print: bytesSchema(mostPrintBytes).nullable(),
      on: daySchema,
      caption: lineSchema(200),
    }),
    output: changedVehicleSchema,
    roles: everybody,
    mutates: true,
  },
  /** 'small' and 'print' answer the whole picture where there is no such copy; a PDF has none. */
  'attachment:read': {
    input: oneAttachment.extend({ size: z.enum(['small', 'print', 'whole']) }),
    output: z.strictObject({ bytes: z.instanceof(Uint8Array), kind: attachmentKindSchema }),
    roles: everybody,
    mutates: false,
  },
  /** With the system's own program for such files. */
  'attachment:open': { input: oneAttachment, output: z.strictObject({}), roles: everybody, mutates: false },
} as const;
