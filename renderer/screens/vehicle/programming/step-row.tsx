// One step of a plan: where it stands, what blocks it, its cautions and attempts. What can be done with it is in step-buttons.tsx.
import { useRef, useState } from 'react';
import type { Desk } from '../../../../app/contract/views.ts';
import type { AttemptDraft } from '../../../../app/domain/programming/attempt.ts';
import type { JobProgress, StepProgress } from '../../../../app/domain/programming/job-progress.ts';
import { offerRoutes } from '../../../../app/domain/programming/routes.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { useRouteHistory } from '../../../state/route-history.ts';
import { seedDraft } from '../../../state/use-edit-draft.ts';
import { jobText, routeWords } from '../../../text/programming.ts';
import { sayDay } from '../../../text/say-day.ts';
import { showMinutes } from '../labour/minutes-text.ts';
import { personName } from '../ledger/choices.ts';
import { draftKey } from '../ledger/fact-form.tsx';
import { withoutStamp } from '../ledger/fact-kind.ts';
import { closeEntry, openEntry, useOpenEntry } from '../ledger/open-entries.ts';
import { CautionLine } from '../page/caution-line.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { AttemptForm } from './attempt-form.tsx';
import { AttemptLines } from './attempt-lines.tsx';
import { ReasonForm } from './reason-form.tsx';
import { failedRoutes, freshAttempt, likelyRoute, waitsForTitles } from './step-actions.ts';
import { StepButtons } from './step-buttons.tsx';
import { StepWhy } from './step-why.tsx';
import { useJobChange } from './use-job-change.ts';

export type StepRowProps = { readonly job: JobProgress; readonly progress: StepProgress };

function marksOf({ job, steps }: JobProgress, progress: StepProgress, today: string, desk: Desk): readonly string[] {
  const { step, state, doneOn, leftOut } = progress;
  const first = state === 'later' ? waitsForTitles(job, progress, steps) : [];
  const marks = [
    state === 'done' && doneOn !== null ? jobText.doneOn(sayDay(doneOn, today)) : '',
    leftOut === null ? '' : jobText.leftOut(leftOut.reason, personName(desk, leftOut.by), sayDay(leftOut.on, today)),
    first.length > 0 ? jobText.afterSteps(first) : '',
    step.typicalMinutes === null || state === 'done' || state === 'left-out'
      ? ''
      : jobText.about(showMinutes(step.typicalMinutes)),
  ];
  return marks.filter((mark) => mark !== '');
}

export function StepRow({ job, progress }: StepRowProps) {
  const vehicleState = useVehicle();
  const { id: vehicleId, today, desk, view, canPut } = vehicleState;
  const { step, state, attempts, number, reasons, notes } = progress;
  const place = `${vehicleId}/attempts/${job.job.id}/${step.id}`;
  const entry = useOpenEntry(place);
  const row = useRef<HTMLLIElement>(null);
  const [isLeavingOut, setIsLeavingOut] = useState(false);
  const changeJob = useJobChange(job.job);
  const isNext = job.next.includes(progress);
  const isCurrent = isNext || state === 'blocked';
  const isWritable = canPut('attempts') && vehicleState.vehicle.sale === null;
  const module = job.job.modules.find(({ id }) => id === step.moduleId);
  const hasFailed = failedRoutes(progress).length > 0 && state !== 'done';
  // Asked for only where somebody is about to choose a route.
  const wantsHistory = isWritable && step.routes.length > 1 && (entry !== null || hasFailed);
  const history = useRouteHistory(wantsHistory ? (module?.kind ?? null) : null, view.revision);
  const offer = history === null ? null : offerRoutes(step, failedRoutes(progress), history);
  const ranked = hasFailed ? (offer?.routes.map(({ route }) => route) ?? []) : [];
  const about = { jobId: job.job.id, today, person: desk.person.id, route: likelyRoute(progress, ranked) };
  const kept = attempts.find((attempt) => attempt.id === entry?.id);
  const close = () => {
    closeEntry(place);
    setIsLeavingOut(false);
    // Done: on to the step that is next now. Else back to where it was opened.
    requestAnimationFrame(() => {
      const next = row.current?.closest('.job')?.querySelector<HTMLElement>('.step.is-first .step-actions button');
      (next ?? row.current?.querySelector<HTMLElement>('button'))?.focus();
    });
  };
  const open = (route: typeof about.route | null) => {
    const id = newIdentifier();
    if (route !== null) seedDraft(draftKey(vehicleId, 'attempts', id), { route });
    openEntry(place, id, { isNew: true });
  };
  const leaveOut = (reason: string) =>
    changeJob({ leftOut: [...job.job.leftOut, { stepId: step.id, reason, by: desk.person.id, on: today }] });
  const isFirst = isNext && job.next[0] === progress;
  const names = ['step', `is-${state}`, isCurrent ? 'is-current' : '', isFirst ? 'is-first' : ''];
  return (
    <li
      ref={row}
      className={names.filter((name) => name !== '').join(' ')}
      aria-current={isFirst ? 'step' : undefined}
      data-step={step.id}
    >
      <span className="step-number">{number}</span>
      <div className="step-body">
        <div className="step-head">
          <span className="step-title">{step.title}</span>
          <span className={isNext ? 'step-next' : 'unseen'}>{isFirst ? jobText.isNext : jobText.states[state]}</span>
          <span className="step-marks">{marksOf(job, progress, today, desk).join(' · ')}</span>
          {step.cannotBeUndone && state !== 'done' && <b className="step-final">{jobText.cannotBeUndone}</b>}
        </div>
        {isCurrent && step.detail !== '' && <p className="step-detail">{step.detail}</p>}
        {isCurrent && step.routes.some((route) => route !== 'by-hand') && (
          <p className="step-detail">{jobText.routesOf(step.routes.map((route) => routeWords[route]))}</p>
        )}
        {isCurrent && step.cautions.map((caution) => <CautionLine key={caution} caution={caution} />)}
        {state === 'blocked' && (
          <ul className="step-reasons">
            {reasons.map(({ what, sentence }) => (
              <li key={what}>{sentence}</li>
            ))}
          </ul>
        )}
        {notes.map((note) => (
          <p key={note} className="step-note">
            {note}
          </p>
        ))}
        <AttemptLines attempts={attempts} onOpen={canPut('attempts') ? (id) => openEntry(place, id) : null} />
        {isWritable && hasFailed && entry === null && (
          <p className="step-offer" role="status">
            {offer === null ? jobText.readingHistory : offer.sentence}
          </p>
        )}
        {isWritable && entry === null && !isLeavingOut && (
          <StepButtons
            job={job}
            progress={progress}
            isNext={isNext}
            offer={hasFailed ? offer : null}
            onOpen={open}
            onLeaveOut={() => setIsLeavingOut(true)}
            onDone={close}
          />
        )}
        {isCurrent && <StepWhy job={job.job} stepId={step.id} />}
        {isLeavingOut && (
          <ReasonForm
            label={jobText.forStep(jobText.leaveOut, step.title)}
            ask={jobText.leaveOutReason}
            saveLabel={jobText.leaveOutSave}
            onSave={leaveOut}
            onClose={close}
          />
        )}
        {entry !== null && canPut('attempts') && (
          <AttemptForm
            attempt={kept === undefined ? freshAttempt(entry.id, progress, about) : withoutStamp<AttemptDraft>(kept)}
            progress={progress}
            offer={offer}
            entry={entry}
            onClosed={close}
          />
        )}
      </div>
    </li>
  );
}
