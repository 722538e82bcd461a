// One step of a programming job: where it stands, its cautions, its attempts, and the place to record the next one.
import { useRef } from 'react';
import type { StepProgress } from '../../../../app/domain/programming/job-progress.ts';
import type { Attempt, AttemptDraft, ProgrammingJob } from '../../../../app/domain/programming/programming-job.ts';
import { cautions } from '../../../../app/domain/work/cautions.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { notify } from '../../../state/notice-store.ts';
import { errorSentence } from '../../../text/errors.ts';
import { sayDay } from '../../../text/say-day.ts';
import { jobText } from '../../../text/vehicle-work.ts';
import { Button } from '../../../ui/button.tsx';
import { showMinutes } from '../labour/minutes-text.ts';
import { personName } from '../ledger/choices.ts';
import { withoutStamp } from '../ledger/fact-kind.ts';
import { closeEntry, openEntry, useOpenEntry } from '../ledger/open-entries.ts';
import { CautionLine } from '../page/caution-line.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { AttemptForm } from './attempt-form.tsx';
import { freshAttempt, isSimple } from './fresh-attempt.ts';

export type StepRowProps = {
  readonly job: ProgrammingJob;
  readonly progress: StepProgress;
  readonly number: number;
};

function volts(attempt: Attempt): string {
  const { voltsBefore, voltsLowest, voltsAfter } = attempt;
  if (voltsBefore === null && voltsLowest === null && voltsAfter === null) return '';
  const show = (value: number | null) => (value === null ? '–' : value.toFixed(1));
  return jobText.volts(show(voltsBefore), show(voltsLowest), show(voltsAfter));
}

function Attempts({
  attempts,
  onOpen,
}: {
  readonly attempts: readonly Attempt[];
  readonly onOpen: (id: string) => void;
}) {
  const { desk, today, canPut } = useVehicle();
  if (attempts.length === 0) return null;
  return (
    <ul className="attempts" aria-label={jobText.attempts}>
      {attempts.map((attempt) => {
        const words = [
          sayDay(attempt.on, today),
          jobText.routes[attempt.route],
          personName(desk, attempt.person),
          volts(attempt),
          attempt.message,
        ].filter((word) => word !== '');
        const line = (
          <>
            <b className={`attempt-outcome is-${attempt.outcome}`}>{jobText.outcomes[attempt.outcome]}</b>{' '}
            {words.join(' · ')}
          </>
        );
        return (
          <li key={attempt.id}>
            {canPut('attempts') ? (
              <button type="button" className="ledger-open" onClick={() => onOpen(attempt.id)}>
                {line}
              </button>
            ) : (
              line
            )}
          </li>
        );
      })}
    </ul>
  );
}

export function StepRow({ job, progress, number }: StepRowProps) {
  const vehicleState = useVehicle();
  const { today, desk, canPut } = vehicleState;
  const { step, state, attempts } = progress;
  const place = `${vehicleState.id}/attempts/${step.id}`;
  const entry = useOpenEntry(place);
  const row = useRef<HTMLLIElement>(null);
  const isCurrent = state === 'next' || state === 'blocked';
  const fresh = (id: string): AttemptDraft => freshAttempt(id, { job, step, today, person: desk.person.id, attempts });
  const kept = attempts.find((attempt) => attempt.id === entry?.id);
  const close = () => {
    closeEntry(place);
    // Done: on to the step that is next now. Else back to where it was opened.
    requestAnimationFrame(() => {
      const next = row.current?.closest('.job')?.querySelector<HTMLElement>('.step.is-current .step-actions button');
      (next ?? row.current?.querySelector<HTMLElement>('button'))?.focus();
    });
  };
  const doneToday = async () => {
    const attempt = { ...fresh(newIdentifier()), route: 'by-hand' as const };
    const answer = await vehicleState.change({ kind: 'put', list: 'attempts', item: attempt });
    if (answer.ok) close();
    else notify('problem', errorSentence(answer.error));
  };
  const marks = [
    state === 'done' && progress.doneOn !== null ? jobText.doneOn(sayDay(progress.doneOn, today)) : '',
    state === 'left-out' ? jobText.leftOut(step.leftOutReason) : '',
    state === 'blocked' ? jobText.waits(progress.blockedBy) : '',
    step.typicalMinutes === null || state === 'done' ? '' : jobText.about(`${showMinutes(step.typicalMinutes)} h`),
  ].filter((mark) => mark !== '');
  const canRecord =
    canPut('attempts') && entry === null && (state === 'next' || state === 'later' || attempts.length > 0);
  return (
    <li
      ref={row}
      className={`step is-${state}${isCurrent ? ' is-current' : ''}`}
      aria-current={isCurrent ? 'step' : undefined}
    >
      <span className="step-number">{number}</span>
      <div className="step-body">
        <div className="step-head">
          <span className="step-title">{step.title}</span>
          <span className="unseen">{jobText.states[state]}</span>
          <span className="step-marks">{marks.join(' · ')}</span>
          {step.cannotBeUndone && state !== 'done' && <b className="step-final">{jobText.cannotBeUndone}</b>}
          <span className="step-actions">
            {canRecord && state === 'next' && isSimple(step) && (
              <Button label={`${jobText.doneToday}: ${step.title}`} onPress={() => void doneToday()}>
                {jobText.doneToday}
              </Button>
            )}
            {canRecord && (
              <Button
                kind={state === 'next' && !isSimple(step) ? 'main' : state === 'next' ? 'plain' : 'quiet'}
                label={jobText.recordFor(step.title)}
                onPress={() => openEntry(place, newIdentifier(), { isNew: true })}
              >
                {state === 'next' ? jobText.record : jobText.recordShort}
              </Button>
            )}
          </span>
        </div>
        {state !== 'done' && step.detail !== '' && <p className="step-detail">{step.detail}</p>}
        {isCurrent && step.cautions.map((caution) => <CautionLine key={caution} caution={caution} />)}
        {state === 'later' && step.cautions.length > 0 && (
          <p className="step-detail">{step.cautions.map((caution) => cautions[caution].title).join(' · ')}</p>
        )}
        <Attempts attempts={attempts} onOpen={(id) => openEntry(place, id)} />
        {entry !== null && canPut('attempts') && (
          <AttemptForm
            attempt={kept === undefined ? fresh(entry.id) : withoutStamp<AttemptDraft>(kept)}
            name={step.title}
            entry={entry}
            onClosed={close}
          />
        )}
      </div>
    </li>
  );
}
