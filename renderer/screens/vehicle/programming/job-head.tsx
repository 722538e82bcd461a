// The head of a programming job: what it is, how far it has come, what it waits for, what was vouched for, and what can be changed about it.
import { codeName } from '../../../../app/domain/codes/code-name.ts';
import type { JobProgress } from '../../../../app/domain/programming/job-progress.ts';
import type { RulePack } from '../../../../app/domain/programming/rule-pack.ts';
import { useDraftKeys } from '../../../state/use-edit-draft.ts';
import { jobText, originChoices, tickWords } from '../../../text/programming.ts';
import { sayDay } from '../../../text/say-day.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { personName } from '../ledger/choices.ts';
import { draftKey } from '../ledger/fact-form.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { useJobChange } from './use-job-change.ts';

export type JobHeadProps = {
  readonly progress: JobProgress;
  readonly pack: RulePack | null;
  /** Null while one of the forms is open, and for whoever may not change it. */
  readonly onOpen: ((form: 'job' | 'order' | 'again') => void) | null;
};

function moduleWords(
  { job }: JobProgress,
  { vehicle, desk }: Pick<ReturnType<typeof useVehicle>, 'vehicle' | 'desk'>,
): readonly string[] {
  return job.modules.map(({ name, origin, partId, codeRequestId }) => {
    const part = vehicle.parts.find(({ id }) => id === partId);
    const request = vehicle.codeRequests.find(({ id }) => id === codeRequestId);
    const linked = [part?.what ?? '', request ? codeName(request, desk.shop?.codeKinds) : ''].filter(
      (word) => word !== '',
    );
    const what = originChoices[origin];
    const words = `${name}: ${what.charAt(0).toLowerCase()}${what.slice(1)}`;
    return linked.length > 0 ? `${words} (${linked.join(', ')})` : words;
  });
}

function Ticks({ progress }: { readonly progress: JobProgress }) {
  const { desk, today, canPut } = useVehicle();
  const { job, isClosed } = progress;
  const changeJob = useJobChange(job);
  if (job.ticks.length === 0) return null;
  return (
    <ul className="job-ticks" aria-label={jobText.vouchedFor}>
      {job.ticks.map((tick) => {
        const module = job.modules.find(({ id }) => id === tick.moduleId);
        const words = `${module ? `${module.name}: ` : ''}${tickWords[tick.gate] ?? tick.gate}`;
        return (
          <li key={`${tick.gate} ${tick.moduleId}`}>
            {jobText.vouched(words, personName(desk, tick.by), sayDay(tick.on, today))}
            {canPut('jobs') && !isClosed && (
              <Button
                kind="quiet"
                label={jobText.forStep(jobText.takeBack, words)}
                onPress={() => void changeJob({ ticks: job.ticks.filter((other) => other !== tick) })}
              >
                {jobText.takeBack}
              </Button>
            )}
          </li>
        );
      })}
    </ul>
  );
}

export function JobHead({ progress, pack, onOpen }: JobHeadProps) {
  const { id, vehicle, today, desk } = useVehicle();
  const { job, steps, isClosed, missing, waitsFor } = progress;
  const hasDraft = useDraftKeys().has(draftKey(id, 'jobs', job.id));
  const done = steps.filter(({ state }) => state === 'done' || state === 'left-out').length;
  const { plan, makerOrder } = job;
  const isOlder = pack !== null && pack.id === plan.packId && pack.version !== plan.packVersion;
  const about = [
    ...moduleWords(progress, { vehicle, desk }),
    makerOrder === null ? '' : jobText.makerKept(makerOrder.document, sayDay(makerOrder.readOn, today)),
    job.note,
  ].filter((word) => word !== '');
  return (
    <header className="job-head">
      <h3>{job.title}</h3>
      <span className="job-progress">{isClosed ? jobText.closed : jobText.progress(done, steps.length)}</span>
      {hasDraft && onOpen !== null && <span className="ledger-unsaved">{ledgerText.notSaved}</span>}
      {onOpen !== null && (
        <span className="job-buttons">
          <Button kind="quiet" label={jobText.forStep(jobText.correct, job.title)} onPress={() => onOpen('job')}>
            {ledgerText.correct}
          </Button>
          <Button kind="quiet" label={jobText.makerOrderFor(job.title)} onPress={() => onOpen('order')}>
            {jobText.makerOrder}
          </Button>
          <Button kind="quiet" label={jobText.forStep(jobText.makeAgain, job.title)} onPress={() => onOpen('again')}>
            {jobText.makeAgain}
          </Button>
        </span>
      )}
      <p className="job-needs">{about.join(' · ')}</p>
      <p className="job-needs">
        {jobText.madeFrom(
          pack?.id === plan.packId ? pack.name : plan.packId,
          plan.packVersion,
          sayDay(plan.madeOn, today),
        )}
        {isOlder && !isClosed && <b className="job-older"> {jobText.newerRules(pack.version)}</b>}
      </p>
      <Ticks progress={progress} />
      {missing.length > 0 && !isClosed && (
        <p className="job-missing">{jobText.missing(missing.map(({ what }) => what))}</p>
      )}
      {waitsFor !== null && missing.length === 0 && <p className="job-missing">{jobText.waitsFor(waitsFor.what)}</p>}
      {plan.reminders.length > 0 && !isClosed && (
        <details className="job-reminders">
          <summary>{jobText.reminders}</summary>
          <ul>
            {plan.reminders.map((reminder) => (
              <li key={reminder}>{reminder}</li>
            ))}
          </ul>
        </details>
      )}
    </header>
  );
}
