// Saves a change of one programming job by one press: a step left out, a tick, a contradiction accepted. What is refused is said at once.
import type { ProgrammingJob, ProgrammingJobDraft } from '../../../../app/domain/programming/programming-job.ts';
import { notify } from '../../../state/notice-store.ts';
import { errorSentence } from '../../../text/errors.ts';
import { withoutStamp } from '../ledger/fact-kind.ts';
import { useVehicle } from '../page/vehicle-context.ts';

/** True when it was saved. */
export type ChangeJob = (fields: Partial<ProgrammingJobDraft>) => Promise<boolean>;

export function useJobChange(job: ProgrammingJob): ChangeJob {
  const { change } = useVehicle();
  return async (fields) => {
    const item = { ...withoutStamp<ProgrammingJobDraft>(job), ...fields };
    const answer = await change({ kind: 'put', list: 'jobs', item });
    if (answer.ok) return true;
    const sentences = answer.error.problems.map(({ sentence }) => sentence);
    notify('problem', sentences.length > 0 ? sentences.join(' ') : errorSentence(answer.error));
    return false;
  };
}
