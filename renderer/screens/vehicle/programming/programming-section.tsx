// Modules to be programmed: the jobs with their steps in order. Finished jobs are folded to their head.
import './programming.css';
import { useRef } from 'react';
import { jobProgress } from '../../../../app/domain/programming/job-progress.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { jobText } from '../../../text/vehicle-work.ts';
import { Button } from '../../../ui/button.tsx';
import { EmptyState } from '../../../ui/empty-state.tsx';
import { likelyFault } from '../fresh-facts.ts';
import { FactForm } from '../ledger/fact-form.tsx';
import { closeEntry, openEntry, useOpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';
import { freshJob } from './fresh-job.ts';
import { JobBlock, jobKind } from './job-block.tsx';
import { JobForm } from './job-form.tsx';

export function ProgrammingSection() {
  const state = useVehicle();
  const { vehicle, today } = state;
  const place = `${state.id}/jobs`;
  const entry = useOpenEntry(place);
  const root = useRef<HTMLDivElement>(null);
  const canWrite = state.canPut('jobs');
  const isNew = entry?.isNew === true && !vehicle.jobs.some((job) => job.id === entry.id);
  const progress = vehicle.jobs.map((job) => jobProgress(vehicle, job));
  const open = progress.filter((job) => !job.isClosed);
  const closed = progress.filter((job) => job.isClosed);
  const close = () => {
    closeEntry(place);
    requestAnimationFrame(() => root.current?.querySelector<HTMLElement>('.ledger-add button')?.focus());
  };
  return (
    <VehicleSection
      section="programming"
      title={sectionNames.programming}
      count={vehicle.jobs.length}
      rootRef={root}
      action={
        canWrite ? (
          <span className="ledger-add">
            <Button onPress={() => openEntry(place, newIdentifier(), { isNew: true })}>{jobText.add}</Button>
          </span>
        ) : undefined
      }
    >
      {isNew && entry !== null && canWrite && (
        <div className="ledger-new">
          <FactForm
            key={entry.id}
            kind={jobKind(vehicle.identity.drive)}
            fact={freshJob(entry.id, today, vehicle, likelyFault(vehicle))}
            name={jobText.add}
            entry={entry}
            onSaved={close}
            onClosed={close}
          >
            {(edit) => <JobForm edit={edit} />}
          </FactForm>
        </div>
      )}
      {vehicle.jobs.length === 0 && !isNew && <EmptyState sentence={jobText.empty} />}
      {open.length > 0 && <p className="section-note">{jobText.comesFirst}</p>}
      {open.map(({ job }) => (
        <JobBlock key={job.id} job={job} />
      ))}
      {closed.map(({ job }) => (
        <details key={job.id} className="closed-job">
          <summary>
            {job.module} <span className="quiet">{jobText.closed}</span>
          </summary>
          <JobBlock job={job} />
        </details>
      ))}
    </VehicleSection>
  );
}
