// What the forms of a programming job have to know of it: how it is judged, and that its plan follows from what is typed.
import {
  type ProgrammingJobDraft,
  programmingJobDraftSchema,
} from '../../../../app/domain/programming/programming-job.ts';
import type { FactKind } from '../ledger/fact-kind.ts';
import { finishJob, type JobValue, jobValue, type Planning, type UnplannedJob } from './job-draft.ts';

export function jobKind(planning: Planning, isRemade = false): FactKind<UnplannedJob, JobValue> {
  return {
    list: 'jobs',
    schema: programmingJobDraftSchema,
    // Judged by the schema before, so its plan is there.
    toChange: (item) => ({ kind: 'put', list: 'jobs', item: item as ProgrammingJobDraft }),
    toValue: (job) => jobValue(job, isRemade),
    finish: (value) => finishJob(value, planning),
  };
}
