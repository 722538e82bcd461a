// The record of one vehicle: dated facts and who entered them, nothing derived. Everything shown beside it is worked out elsewhere.
import { z } from 'zod';
import { codeRequestSchema } from '../codes/code-request.ts';
import { batteryReadingSchema } from '../diagnosis/battery-reading.ts';
import { faultSchema } from '../diagnosis/fault.ts';
import { scanSchema } from '../diagnosis/scan.ts';
import { otherCostSchema } from '../money/other-cost.ts';
import { partSchema } from '../parts/part.ts';
import { attemptSchema } from '../programming/attempt.ts';
import { programmingJobSchema } from '../programming/programming-job.ts';
import { signOffSchema } from '../readiness/sign-off.ts';
import { stampSchema } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { labourSchema } from '../work/labour.ts';
import { subletSchema } from '../work/sublet.ts';
import { attachmentSchema, mostAttachments } from './attachment.ts';
import { identitySchema } from './identity.ts';
import { noteSchema } from './note.ts';
import { arrivalSchema, purchaseSchema, saleSchema, targetsSchema } from './purchase.ts';

const mostFactsInAList = 2000;

export const vehicleSchema = z.strictObject({
  id: identifierSchema,
  takenIn: stampSchema,
  identity: identitySchema,
  purchase: purchaseSchema,
  arrival: arrivalSchema,
  targets: targetsSchema,
  scans: z.array(scanSchema).max(mostFactsInAList),
  batteryReadings: z.array(batteryReadingSchema).max(mostFactsInAList),
  faults: z.array(faultSchema).max(mostFactsInAList),
  jobs: z.array(programmingJobSchema).max(mostFactsInAList),
  attempts: z.array(attemptSchema).max(mostFactsInAList),
  parts: z.array(partSchema).max(mostFactsInAList),
  codeRequests: z.array(codeRequestSchema).max(mostFactsInAList),
  labour: z.array(labourSchema).max(mostFactsInAList),
  sublets: z.array(subletSchema).max(mostFactsInAList),
  otherCosts: z.array(otherCostSchema).max(mostFactsInAList),
  signOffs: z.array(signOffSchema).max(mostFactsInAList),
  notes: z.array(noteSchema).max(mostFactsInAList),
  attachments: z.array(attachmentSchema).max(mostAttachments),
  sale: saleSchema.nullable(),
});
export type Vehicle = z.infer<typeof vehicleSchema>;
