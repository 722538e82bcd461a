// The steps of a job while they are being written: order, words, what each needs, and why one is left out.
import type { ProgrammingStep } from '../../../../app/domain/programming/programming-job.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { jobText } from '../../../text/vehicle-work.ts';
import { Button } from '../../../ui/button.tsx';
import { CheckField } from '../../../ui/check-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { MinutesField } from '../labour/minutes-field.tsx';
import { blankStep, type JobValue, movedStep } from './job-draft.ts';

export function StepEditor({ edit }: { readonly edit: Editing<JobValue> }) {
  const { steps } = edit.value;
  const setStep = (index: number, more: Partial<ProgrammingStep>) =>
    edit.set({ steps: steps.map((step, at) => (at === index ? { ...step, ...more } : step)) });
  return (
    <fieldset className="field-group">
      <legend>{jobText.steps}</legend>
      <ol className="step-editor">
        {steps.map((step, index) => {
          const name = step.title || jobText.stepTitle(index + 1);
          return (
            <li key={step.id}>
              <div className="step-editor-main">
                <span className="step-number">{index + 1}</span>
                <TextField
                  label={jobText.step}
                  value={step.title}
                  onChange={(title) => setStep(index, { title })}
                  problem={edit.problemAt(`steps.${index}`)}
                  isLabelUnseen
                />
                <Button
                  kind="quiet"
                  label={jobText.moveUp(name)}
                  onPress={() => edit.set({ steps: movedStep(steps, index, -1) })}
                >
                  {jobText.up}
                </Button>
                <Button
                  kind="quiet"
                  label={jobText.moveDown(name)}
                  onPress={() => edit.set({ steps: movedStep(steps, index, 1) })}
                >
                  {jobText.down}
                </Button>
                <Button
                  kind="quiet"
                  label={jobText.takeOut(name)}
                  onPress={() => edit.set({ steps: steps.filter((_, at) => at !== index) })}
                >
                  {jobText.out}
                </Button>
              </div>
              <div className="step-editor-more">
                <TextField
                  label={jobText.detail}
                  value={step.detail}
                  onChange={(detail) => setStep(index, { detail })}
                />
                <MinutesField
                  label={jobText.minutes}
                  value={step.typicalMinutes}
                  onChange={(typicalMinutes) => setStep(index, { typicalMinutes })}
                  hint={undefined}
                />
                <TextField
                  label={jobText.leftOutReason}
                  value={step.leftOutReason}
                  onChange={(leftOutReason) => setStep(index, { leftOutReason })}
                />
                <CheckField
                  label={jobText.needsPart}
                  value={step.needsPart}
                  onChange={(needsPart) => setStep(index, { needsPart })}
                />
                <CheckField
                  label={jobText.needsCode}
                  value={step.needsCode}
                  onChange={(needsCode) => setStep(index, { needsCode })}
                />
                <CheckField
                  label={jobText.cannotBeUndone}
                  value={step.cannotBeUndone}
                  onChange={(cannotBeUndone) => setStep(index, { cannotBeUndone })}
                />
              </div>
            </li>
          );
        })}
      </ol>
      <Button onPress={() => edit.set({ steps: [...steps, blankStep(newIdentifier())] })}>{jobText.addStep}</Button>
    </fieldset>
  );
}
