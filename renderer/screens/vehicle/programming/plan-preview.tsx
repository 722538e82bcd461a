// The plan as it would be kept, under the form that it follows from: its steps in order, what to think of, and what would change.
import type { Remade } from '../../../../app/domain/programming/remake-plan.ts';
import { jobText } from '../../../text/programming.ts';
import { showMinutes } from '../labour/minutes-text.ts';

function Changes({ remade }: { readonly remade: Remade }) {
  const lines = [
    remade.added.length > 0 ? jobText.previewAdded(remade.added) : '',
    remade.gone.length > 0 ? jobText.previewGone(remade.gone) : '',
    remade.isReordered ? jobText.previewReordered : '',
  ].filter((line) => line !== '');
  return (
    <>
      {lines.length === 0 && remade.losing.length === 0 && <p className="quiet">{jobText.previewSame}</p>}
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {remade.losing.length > 0 && <p className="plan-losing">{jobText.previewLosing(remade.losing)}</p>}
    </>
  );
}

export function PlanPreview({ remade, isNew }: { readonly remade: Remade | null; readonly isNew: boolean }) {
  const steps = remade?.job.plan.steps ?? [];
  const minutes = steps.reduce((sum, { typicalMinutes }) => sum + (typicalMinutes ?? 0), 0);
  return (
    <fieldset className="field-group plan-preview">
      <legend>{jobText.preview}</legend>
      {remade === null ? (
        <p className="quiet">{jobText.nameFirst}</p>
      ) : steps.length === 0 ? (
        <p className="plan-losing">{jobText.noSteps}</p>
      ) : (
        <>
          {!isNew && <Changes remade={remade} />}
          {remade.job.plan.reminders.map((reminder) => (
            <p key={reminder} className="plan-reminder">
              {reminder}
            </p>
          ))}
          {remade.job.plan.contradictions
            .filter(({ accepted }) => accepted === null)
            .map(({ sentence }) => (
              <p key={sentence} className="plan-losing">
                {sentence}
              </p>
            ))}
          <p>{jobText.previewSteps(steps.length, showMinutes(minutes))}</p>
          <ol>
            {steps.map(({ id, title, cannotBeUndone }) => (
              <li key={id}>
                {title}
                {cannotBeUndone && <b className="step-final"> {jobText.cannotBeUndone}</b>}
              </li>
            ))}
          </ol>
        </>
      )}
    </fieldset>
  );
}
