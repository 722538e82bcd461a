// One programming job: what it is and needs in a line, its steps in order under it, its form in place of both while it is corrected.
import { useRef } from 'react';
import { jobProgress } from '../../../../app/domain/programming/job-progress.ts';
import {
  type ProgrammingJob,
  type ProgrammingJobDraft,
  programmingJobDraftSchema,
} from '../../../../app/domain/programming/programming-job.ts';
import type { DriveKind } from '../../../../app/domain/vehicle/identity.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { useDraftKeys } from '../../../state/use-edit-draft.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { codeText } from '../../../text/vehicle-entries.ts';
import { jobText } from '../../../text/vehicle-work.ts';
import { Button } from '../../../ui/button.tsx';
import { draftKey, FactForm } from '../ledger/fact-form.tsx';
import { type FactKind, withoutStamp } from '../ledger/fact-kind.ts';
import { closeEntry, openEntry, useOpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { finishJob, type JobValue, jobValue } from './job-draft.ts';
import { JobForm } from './job-form.tsx';
import { StepRow } from './step-row.tsx';

export function jobKind(drive: DriveKind): FactKind<ProgrammingJobDraft, JobValue> {
  return {
    list: 'jobs',
    schema: programmingJobDraftSchema,
    toChange: (item) => ({ kind: 'put', list: 'jobs', item }),
    toValue: jobValue,
    finish: (value) => finishJob(value, drive, newIdentifier),
  };
}

export function JobBlock({ job }: { readonly job: ProgrammingJob }) {
  const state = useVehicle();
  const { vehicle } = state;
  const place = `${state.id}/jobs`;
  const entry = useOpenEntry(place);
  const hasDraft = useDraftKeys().has(draftKey(state.id, 'jobs', job.id));
  const root = useRef<HTMLElement>(null);
  const progress = jobProgress(vehicle, job);
  const done = progress.steps.filter((step) => step.state === 'done' || step.state === 'left-out').length;
  const part = vehicle.parts.find((candidate) => candidate.id === job.partId);
  const request = vehicle.codeRequests.find((candidate) => candidate.id === job.codeRequestId);
  const isOpen = entry?.id === job.id && state.canPut('jobs');
  const close = () => {
    closeEntry(place);
    requestAnimationFrame(() => root.current?.querySelector<HTMLElement>('.job-head button')?.focus());
  };
  const needs = [
    jobText.origins[job.origin],
    part === undefined ? '' : `${jobText.part}: ${part.what}`,
    request === undefined ? '' : `${jobText.code}: ${codeText.kinds[request.kind]} ${request.module}`.trim(),
    job.note,
  ].filter((word) => word !== '');
  return (
    <article
      ref={root}
      className={`job${progress.isClosed ? ' is-closed' : ''}`}
      data-fact={job.id}
      aria-label={job.module}
    >
      <header className="job-head">
        <h3>{job.module}</h3>
        <span className="job-progress">
          {progress.isClosed ? jobText.closed : jobText.progress(done, progress.steps.length)}
        </span>
        {hasDraft && !isOpen && <span className="ledger-unsaved">{ledgerText.notSaved}</span>}
        {state.canPut('jobs') && !isOpen && (
          <Button kind="quiet" label={`${jobText.correct}: ${job.module}`} onPress={() => openEntry(place, job.id)}>
            {ledgerText.correct}
          </Button>
        )}
        <p className="job-needs">{needs.join(' · ')}</p>
      </header>
      {progress.missing.length > 0 && !progress.isClosed && (
        <p className="job-missing">{jobText.missing(progress.missing)}</p>
      )}
      {isOpen && entry !== null ? (
        <FactForm
          kind={jobKind(vehicle.identity.drive)}
          fact={withoutStamp<ProgrammingJobDraft>(job)}
          name={job.module}
          entry={entry}
          onSaved={close}
          onClosed={close}
        >
          {(edit) => <JobForm edit={edit} />}
        </FactForm>
      ) : job.steps.length === 0 ? (
        <p className="quiet">{jobText.noSteps}</p>
      ) : (
        <ol className="steps">
          {progress.steps.map((step, index) => (
            <StepRow key={step.step.id} job={job} progress={step} number={index + 1} />
          ))}
        </ol>
      )}
    </article>
  );
}
