// One change to one vehicle as a value: set a section, put a fact into a list, remove a fact. Its rules are in apply-change.ts.
import { z } from 'zod';
import { codeRequestDraftSchema } from '../codes/code-request.ts';
import { batteryReadingDraftSchema } from '../diagnosis/battery-reading.ts';
import { faultDraftSchema } from '../diagnosis/fault.ts';
import { scanDraftSchema } from '../diagnosis/scan.ts';
import { otherCostDraftSchema } from '../money/other-cost.ts';
import { partDraftSchema } from '../parts/part.ts';
import { attemptDraftSchema } from '../programming/attempt.ts';
import { programmingJobDraftSchema } from '../programming/programming-job.ts';
import { signOffDraftSchema } from '../readiness/sign-off.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { labourDraftSchema } from '../work/labour.ts';
import { subletDraftSchema } from '../work/sublet.ts';
import { attachmentDraftSchema } from './attachment.ts';
import { identitySchema } from './identity.ts';
import { noteDraftSchema } from './note.ts';
import { arrivalSchema, purchaseSchema, saleSchema, targetsSchema } from './purchase.ts';

const set = z.literal('set');
const setChangeSchema = z.discriminatedUnion('section', [
  z.strictObject({ kind: set, section: z.literal('identity'), value: identitySchema }),
  z.strictObject({ kind: set, section: z.literal('purchase'), value: purchaseSchema }),
  z.strictObject({ kind: set, section: z.literal('arrival'), value: arrivalSchema }),
  z.strictObject({ kind: set, section: z.literal('targets'), value: targetsSchema }),
  z.strictObject({ kind: set, section: z.literal('sale'), value: saleSchema.nullable() }),
]);

const put = z.literal('put');
const putChangeSchema = z.discriminatedUnion('list', [
  z.strictObject({ kind: put, list: z.literal('scans'), item: scanDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('batteryReadings'), item: batteryReadingDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('faults'), item: faultDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('jobs'), item: programmingJobDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('attempts'), item: attemptDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('parts'), item: partDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('codeRequests'), item: codeRequestDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('labour'), item: labourDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('sublets'), item: subletDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('otherCosts'), item: otherCostDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('signOffs'), item: signOffDraftSchema }),
  z.strictObject({ kind: put, list: z.literal('notes'), item: noteDraftSchema }),
  // Only what is said about a file that is there: the file itself is added by a channel of its own.
  z.strictObject({ kind: put, list: z.literal('attachments'), item: attachmentDraftSchema }),
]);

export const factListSchema = z.enum([
  'scans',
  'batteryReadings',
  'faults',
  'jobs',
  'attempts',
  'parts',
  'codeRequests',
  'labour',
  'sublets',
  'otherCosts',
  'signOffs',
  'notes',
  'attachments',
]);
export type FactList = z.infer<typeof factListSchema>;

const removeChangeSchema = z.strictObject({ kind: z.literal('remove'), list: factListSchema, id: identifierSchema });

export const vehicleChangeSchema = z.discriminatedUnion('kind', [setChangeSchema, putChangeSchema, removeChangeSchema]);
export type VehicleChange = z.infer<typeof vehicleChangeSchema>;
export type SetChange = z.infer<typeof setChangeSchema>;
export type PutChange = z.infer<typeof putChangeSchema>;
export type RemoveChange = z.infer<typeof removeChangeSchema>;
export type Section = SetChange['section'];
