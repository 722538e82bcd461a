// One programming job: its head, what does not agree, the picture of its order, its steps; one of its forms in place of them while it is open.
import { useRef } from 'react';
import { jobProgress } from '../../../../app/domain/programming/job-progress.ts';
import type { ProgrammingJob, ProgrammingJobDraft } from '../../../../app/domain/programming/programming-job.ts';
import type { RulePack } from '../../../../app/domain/programming/rule-pack.ts';
import { jobText } from '../../../text/programming.ts';
import { FactForm } from '../ledger/fact-form.tsx';
import { withoutStamp } from '../ledger/fact-kind.ts';
import { closeEntry, openEntry, useOpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { AttemptLines } from './attempt-lines.tsx';
import { Contradictions } from './contradictions.tsx';
import type { UnplannedJob } from './job-draft.ts';
import { JobForm } from './job-form.tsx';
import { JobHead } from './job-head.tsx';
import { jobKind } from './job-kind.ts';
import { MakerOrderForm } from './maker-order-form.tsx';
import { PlanPicture } from './plan-picture.tsx';
import { StepRow } from './step-row.tsx';

export type JobBlockProps = { readonly job: ProgrammingJob; readonly pack: RulePack | null };

/** Which form of the job is open is told by the field it was opened at. */
const orderField = 'makerOrder';
const againField = 'plan';

function FormerSteps({ job }: { readonly job: ProgrammingJob }) {
  const { vehicle } = useVehicle();
  if (job.formerSteps.length === 0) return null;
  return (
    <details className="former-steps">
      <summary>{jobText.formerSteps}</summary>
      {job.formerSteps.map(({ id, title }) => (
        <div key={id}>
          {title}
          <AttemptLines
            attempts={vehicle.attempts.filter(({ jobId, stepId }) => jobId === job.id && stepId === id)}
            onOpen={null}
          />
        </div>
      ))}
    </details>
  );
}

export function JobBlock({ job, pack }: JobBlockProps) {
  const state = useVehicle();
  const { vehicle, today } = state;
  const place = `${state.id}/jobs`;
  const entry = useOpenEntry(place);
  const root = useRef<HTMLElement>(null);
  const progress = jobProgress(vehicle, job, state.desk.shop?.codeKinds);
  const isOpen = entry?.id === job.id && state.canPut('jobs');
  const close = () => {
    closeEntry(place);
    requestAnimationFrame(() => root.current?.querySelector<HTMLElement>('.job-head button')?.focus());
  };
  const draft = withoutStamp<ProgrammingJobDraft>(job);
  const planning = { pack, today, attempts: vehicle.attempts, before: draft };
  const fields = { job: null, order: orderField, again: againField } as const;
  return (
    <article
      ref={root}
      className={`job${progress.isClosed ? ' is-closed' : ''}`}
      data-fact={job.id}
      aria-label={job.title}
    >
      <JobHead
        progress={progress}
        pack={pack}
        onOpen={state.canPut('jobs') && !isOpen ? (form) => openEntry(place, job.id, { focusOn: fields[form] }) : null}
      />
      {isOpen && entry !== null ? (
        <FactForm
          kind={jobKind(planning, entry.focusOn === againField)}
          fact={draft as UnplannedJob}
          name={job.title}
          entry={entry}
          onSaved={close}
          onClosed={close}
        >
          {(edit) =>
            entry.focusOn === orderField ? (
              <MakerOrderForm edit={edit} planning={planning} />
            ) : (
              <JobForm edit={edit} planning={planning} />
            )
          }
        </FactForm>
      ) : (
        <>
          <Contradictions job={job} pack={pack} />
          <PlanPicture progress={progress} />
          <ol className="steps">
            {progress.steps.map((step) => (
              <StepRow key={step.step.id} job={progress} progress={step} />
            ))}
          </ol>
          <FormerSteps job={job} />
        </>
      )}
    </article>
  );
}
