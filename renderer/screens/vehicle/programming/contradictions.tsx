// What does not agree in a plan, with the rules that make it. Where a rule of the pack gives way to the maker, a named person may accept it.
import { useState } from 'react';
import type { ProgrammingJob, ProgrammingJobDraft } from '../../../../app/domain/programming/programming-job.ts';
import { remakePlan } from '../../../../app/domain/programming/remake-plan.ts';
import type { RulePack } from '../../../../app/domain/programming/rule-pack.ts';
import { jobText } from '../../../text/programming.ts';
import { sayDay, sayDaysIn } from '../../../text/say-day.ts';
import { Button } from '../../../ui/button.tsx';
import { personName } from '../ledger/choices.ts';
import { withoutStamp } from '../ledger/fact-kind.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { ReasonForm } from './reason-form.tsx';
import { useJobChange } from './use-job-change.ts';

export type ContradictionsProps = { readonly job: ProgrammingJob; readonly pack: RulePack | null };

export function Contradictions({ job, pack }: ContradictionsProps) {
  const { desk, today, vehicle, canPut } = useVehicle();
  const [accepting, setAccepting] = useState<number | null>(null);
  const changeJob = useJobChange(job);
  const { contradictions } = job.plan;
  if (contradictions.length === 0) return null;
  const accept = async (at: number, reason: string) => {
    const link = contradictions[at]?.setAside;
    if (!link || job.makerOrder === null || pack === null) return false;
    const accepted = [...job.makerOrder.accepted, { ...link, by: desk.person.id, on: today, reason }];
    const changed = { ...withoutStamp<ProgrammingJobDraft>(job), makerOrder: { ...job.makerOrder, accepted } };
    return changeJob(remakePlan(changed, vehicle.attempts, pack, today).job);
  };
  /** Only where a rule of the pack gives way to the maker there is something to accept. */
  const isMine = (at: number) => {
    const one = contradictions[at];
    return one?.kind === 'pack-against-maker' && one.accepted === null && one.setAside !== null && canPut('jobs');
  };
  const isOpen = contradictions.some(({ accepted }) => accepted === null);
  return (
    <section className="contradictions" aria-label={jobText.contradictions}>
      {isOpen && <p className="job-missing">{jobText.contradicted}</p>}
      <ol>
        {contradictions.map(({ sentence, accepted }, at) => (
          <li key={sentence} className={accepted === null ? 'is-open' : undefined}>
            <p>{sayDaysIn(sentence, today)}</p>
            {accepted !== null && (
              <p className="quiet">
                {jobText.accepted(personName(desk, accepted.by), sayDay(accepted.on, today), accepted.reason)}
              </p>
            )}
            {isMine(at) && accepting === at && (
              <ReasonForm
                label={jobText.acceptLabel(at + 1)}
                ask={jobText.acceptReason}
                saveLabel={jobText.acceptSave}
                onSave={(reason) => accept(at, reason)}
                onClose={() => setAccepting(null)}
              />
            )}
            {isMine(at) && accepting !== at && (
              <Button label={jobText.acceptLabel(at + 1)} onPress={() => setAccepting(at)}>
                {jobText.accept}
              </Button>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
