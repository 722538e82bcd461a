// What can be pressed at a step, large enough for a gloved hand where it is the step's turn: done, write down, the routes left, vouch,
// go on regardless, leave out.
import type { JobProgress, StepProgress } from '../../../../app/domain/programming/job-progress.ts';
import type { ProgrammingRoute } from '../../../../app/domain/programming/programming-route.ts';
import type { RouteOffer } from '../../../../app/domain/programming/routes.ts';
import { cautions } from '../../../../app/domain/work/cautions.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { notify } from '../../../state/notice-store.ts';
import { errorSentence } from '../../../text/errors.ts';
import { jobText, routeWords } from '../../../text/programming.ts';
import { Button } from '../../../ui/button.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { freshAttempt, isSimple, mayGoOnRegardless, vouchables } from './step-actions.ts';
import { useJobChange } from './use-job-change.ts';

export type StepButtonsProps = {
  readonly job: JobProgress;
  readonly progress: StepProgress;
  readonly isNext: boolean;
  /** After a failed attempt: the routes left, in the order to offer them. */
  readonly offer: RouteOffer | null;
  readonly onOpen: (route: ProgrammingRoute | null) => void;
  readonly onLeaveOut: () => void;
  readonly onDone: () => void;
};

function DoneButtons({ job, progress, onDone }: Pick<StepButtonsProps, 'job' | 'progress' | 'onDone'>) {
  const { change, today, desk } = useVehicle();
  const { step } = progress;
  const done = async (route: ProgrammingRoute) => {
    const about = { jobId: job.job.id, today, person: desk.person.id, route };
    const item = freshAttempt(newIdentifier(), progress, about);
    const answer = await change({ kind: 'put', list: 'attempts', item });
    const sentences = answer.ok ? [] : answer.error.problems.map(({ sentence }) => sentence);
    if (answer.ok) onDone();
    else notify('problem', sentences.length > 0 ? sentences.join(' ') : errorSentence(answer.error));
  };
  return step.routes.map((route, at) => {
    const words = step.routes.length === 1 ? jobText.done : jobText.doneBy(routeWords[route]);
    return (
      <Button
        key={route}
        kind={at === 0 ? 'main' : 'plain'}
        label={jobText.forStep(words, step.title)}
        onPress={() => void done(route)}
      >
        {words}
      </Button>
    );
  });
}

function NextButtons({ job, progress, offer, onOpen, onDone }: StepButtonsProps) {
  const { step } = progress;
  const left = offer?.routes.filter(({ failedHere }) => !failedHere) ?? [];
  if (left.length > 0)
    return left.map(({ route }, at) => {
      const words = jobText.nextRoute(routeWords[route]);
      return (
        <Button
          key={route}
          kind={at === 0 ? 'main' : 'plain'}
          label={jobText.forStep(words, step.title)}
          onPress={() => onOpen(route)}
        >
          {words}
        </Button>
      );
    });
  const simple = isSimple(step) && step.routes.length <= 2;
  const words = simple ? jobText.writeDown : jobText.doIt;
  return (
    <>
      {simple && <DoneButtons job={job} progress={progress} onDone={onDone} />}
      <Button kind={simple ? 'plain' : 'main'} label={jobText.forStep(words, step.title)} onPress={() => onOpen(null)}>
        {words}
      </Button>
    </>
  );
}

function VouchButtons({ job, progress }: Pick<StepButtonsProps, 'job' | 'progress'>) {
  const { desk, today } = useVehicle();
  const changeJob = useJobChange(job.job);
  return vouchables(job.job, progress).map(({ gate, moduleId, words }) => (
    <Button
      key={gate}
      onPress={() => void changeJob({ ticks: [...job.job.ticks, { gate, moduleId, on: today, by: desk.person.id }] })}
    >
      {jobText.vouch(words)}
    </Button>
  ));
}

export function StepButtons(props: StepButtonsProps) {
  const { job, progress, isNext, onOpen, onLeaveOut } = props;
  const { step, state } = progress;
  const changeJob = useJobChange(job.job);
  if (state === 'done') return null;
  if (state === 'left-out')
    return (
      <div className="step-actions">
        <Button
          kind="quiet"
          label={jobText.forStep(jobText.takeUp, step.title)}
          onPress={() => void changeJob({ leftOut: job.job.leftOut.filter(({ stepId }) => stepId !== step.id) })}
        >
          {jobText.takeUp}
        </Button>
      </div>
    );
  const isBlocked = state === 'blocked' || state === 'later';
  const leaveOut = (
    <Button kind="quiet" label={jobText.forStep(jobText.leaveOut, step.title)} onPress={onLeaveOut}>
      {jobText.leaveOut}
    </Button>
  );
  const regardless = isBlocked && mayGoOnRegardless(progress) && (
    <Button
      kind={state === 'blocked' ? 'danger' : 'quiet'}
      label={jobText.forStep(jobText.regardless, step.title)}
      onPress={() => onOpen(null)}
    >
      {jobText.regardless}
    </Button>
  );
  if (state === 'later')
    return (
      <details className="step-more">
        <summary aria-label={jobText.forStep(jobText.more, step.title)}>{jobText.more}</summary>
        {step.detail !== '' && <p className="step-detail">{step.detail}</p>}
        {step.cautions.length > 0 && (
          <p className="step-detail">{step.cautions.map((key) => cautions[key].title).join(' · ')}</p>
        )}
        <ul className="step-reasons">
          {progress.reasons.map(({ what, sentence }) => (
            <li key={what}>{sentence}</li>
          ))}
        </ul>
        <div className="step-actions">
          {regardless}
          {leaveOut}
        </div>
      </details>
    );
  return (
    <div className={`step-actions${isNext || state === 'blocked' ? ' is-large' : ''}`}>
      {state === 'next' && <NextButtons {...props} />}
      {state === 'blocked' && <VouchButtons job={job} progress={progress} />}
      {regardless}
      {leaveOut}
    </div>
  );
}
