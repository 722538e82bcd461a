// Modules to be programmed: the jobs with their plans. Finished jobs are folded to their head.
import './programming.css';
import './steps.css';
import { useRef } from 'react';
import { jobProgress } from '../../../../app/domain/programming/job-progress.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { useRulePack } from '../../../state/rule-pack-store.ts';
import { jobText } from '../../../text/programming.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { Button } from '../../../ui/button.tsx';
import { EmptyState } from '../../../ui/empty-state.tsx';
import { likelyFault } from '../fresh-facts.ts';
import { FactForm } from '../ledger/fact-form.tsx';
import { closeEntry, openEntry, useOpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';
import { JobBlock } from './job-block.tsx';
import { freshJob } from './job-draft.ts';
import { JobForm } from './job-form.tsx';
import { jobKind } from './job-kind.ts';

export function ProgrammingSection() {
  const state = useVehicle();
  const { vehicle, today } = state;
  const place = `${state.id}/jobs`;
  const entry = useOpenEntry(place);
  const root = useRef<HTMLDivElement>(null);
  const canWrite = state.canPut('jobs');
  const { pack, hasFailed } = useRulePack(canWrite);
  const isNew = entry?.isNew === true && !vehicle.jobs.some((job) => job.id === entry.id);
  const progress = vehicle.jobs.map((job) => jobProgress(vehicle, job, state.desk.shop?.codeKinds));
  const open = progress.filter((job) => !job.isClosed);
  const closed = progress.filter((job) => job.isClosed);
  const planning = { pack, today, attempts: vehicle.attempts, before: null };
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
      {hasFailed && <p className="job-missing">{jobText.noRules}</p>}
      {isNew && entry !== null && canWrite && (
        <div className="ledger-new job-new">
          <FactForm
            key={entry.id}
            kind={jobKind(planning)}
            fact={freshJob(entry.id, today, vehicle, likelyFault(vehicle))}
            name={jobText.add}
            entry={entry}
            onSaved={close}
            onClosed={close}
          >
            {(edit) => <JobForm edit={edit} planning={planning} />}
          </FactForm>
        </div>
      )}
      {vehicle.jobs.length === 0 && !isNew && <EmptyState sentence={jobText.empty} />}
      {open.length > 0 && <p className="section-note">{jobText.comesFirst}</p>}
      {open.map(({ job }) => (
        <JobBlock key={job.id} job={job} pack={pack} />
      ))}
      {closed.map(({ job }) => (
        <details key={job.id} className="closed-job">
          <summary>
            {job.title} <span className="quiet">{jobText.closed}</span>
          </summary>
          <JobBlock job={job} pack={pack} />
        </details>
      ))}
    </VehicleSection>
  );
}
