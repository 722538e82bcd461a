// The maker's own order, typed in from service information: the document, its steps in a row, steps that only it has; and the plan then.
import type { Editing } from '../../../state/use-edit-draft.ts';
import { jobText } from '../../../text/programming.ts';
import { Button } from '../../../ui/button.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { type JobValue, type Planning, plannedJob } from './job-draft.ts';
import { blankOrder, blankOwnStep, moved, stepsToChoose, titleOfStep } from './maker-order-draft.ts';
import { OwnStepRows } from './own-step-rows.tsx';
import { PlanPreview } from './plan-preview.tsx';

export function MakerOrderForm({ edit, planning }: { readonly edit: Editing<JobValue>; readonly planning: Planning }) {
  const { today } = useVehicle();
  const order = edit.value.makerOrder ?? blankOrder(today);
  const remade = plannedJob(edit.value, planning);
  const plan = remade?.job.plan ?? edit.value.plan;
  const set = (fields: Partial<typeof order>) => edit.set({ makerOrder: { ...order, ...fields } });
  const choices = stepsToChoose(order, plan);
  return (
    <>
      <div className="field-grid">
        <TextField
          label={jobText.document}
          value={order.document}
          onChange={(document) => set({ document })}
          problem={edit.problemAt('makerOrder.document')}
          isRequired
        />
        <DayField
          label={jobText.readOn}
          value={order.readOn}
          onChange={(readOn) => set({ readOn: readOn ?? today })}
          problem={edit.problemAt('makerOrder.readOn')}
          today={today}
          isRequired
        />
      </div>
      <fieldset className="field-group">
        <legend>{jobText.sequence}</legend>
        <ol className="maker-sequence">
          {order.sequence.map((stepId, index) => {
            const title = titleOfStep(order, plan, stepId);
            return (
              <li key={stepId}>
                <span>{jobText.placeInOrder(index + 1, title)}</span>
                <Button
                  kind="quiet"
                  label={jobText.moveUp(title)}
                  onPress={() => set({ sequence: moved(order.sequence, index, -1) })}
                >
                  {jobText.up}
                </Button>
                <Button
                  kind="quiet"
                  label={jobText.moveDown(title)}
                  onPress={() => set({ sequence: moved(order.sequence, index, 1) })}
                >
                  {jobText.down}
                </Button>
                <Button
                  kind="quiet"
                  label={jobText.takeOutStep(title)}
                  onPress={() => set({ sequence: order.sequence.filter((_, at) => at !== index) })}
                >
                  {jobText.takeOut}
                </Button>
              </li>
            );
          })}
        </ol>
        <SelectField
          label={jobText.addStep}
          value=""
          onChange={(stepId) => {
            if (stepId !== '') set({ sequence: [...order.sequence, stepId] });
          }}
          options={[
            { value: '', label: jobText.chooseStep },
            ...choices.map(({ id, title }) => ({ value: id, label: title })),
          ]}
        />
      </fieldset>
      <fieldset className="field-group">
        <legend>{jobText.ownSteps}</legend>
        <OwnStepRows edit={edit} order={order} />
        <Button onPress={() => set({ ownSteps: [...order.ownSteps, blankOwnStep(order, plan)] })}>
          {jobText.addOwnStep}
        </Button>
      </fieldset>
      {edit.value.makerOrder !== null && (
        <Button kind="quiet" onPress={() => edit.set({ makerOrder: null })}>
          {jobText.withoutOrder}
        </Button>
      )}
      <PlanPreview remade={remade} isNew={false} />
    </>
  );
}
