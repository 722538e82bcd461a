// Steps that only the maker's document has, as rows of fields.
import type { MakerOrder, MakerStep } from '../../../../app/domain/programming/maker-order.ts';
import { programmingRouteSchema } from '../../../../app/domain/programming/programming-route.ts';
import { stageSchema } from '../../../../app/domain/programming/rule-pack.ts';
import { cautionKeySchema, cautions } from '../../../../app/domain/work/cautions.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { jobText, routeWords, stageWords } from '../../../text/programming.ts';
import { Button } from '../../../ui/button.tsx';
import { CheckField } from '../../../ui/check-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { MinutesField } from '../labour/minutes-field.tsx';
import { chooseFrom, orNull } from '../ledger/choices.ts';
import type { JobValue } from './job-draft.ts';
import { withoutOwnStep } from './maker-order-draft.ts';

/** With the entry taken in or left out, in the order of all. */
function toggled<Entry>(all: readonly Entry[], chosen: readonly Entry[], entry: Entry, isIn: boolean): Entry[] {
  return all.filter((one) => (one === entry ? isIn : chosen.includes(one)));
}

export type OwnStepRowsProps = { readonly edit: Editing<JobValue>; readonly order: MakerOrder };

export function OwnStepRows({ edit, order }: OwnStepRowsProps) {
  const modules = edit.value.modules.filter(({ name }) => name !== '');
  const scopes = [
    { value: '', label: jobText.wholeJob },
    ...modules.map(({ id, name }) => ({ value: id, label: name })),
  ];
  const set = (index: number, fields: Partial<MakerStep>) => {
    const ownSteps = order.ownSteps.map((step, at) => (at === index ? { ...step, ...fields } : step));
    edit.set({ makerOrder: { ...order, ownSteps } });
  };
  return order.ownSteps.map((step, index) => {
    const at = (field: string) => edit.problemAt(`makerOrder.ownSteps.${index}.${field}`);
    return (
      <fieldset key={step.id} className="own-step">
        <legend className="field-label">{jobText.ownStep(index + 1)}</legend>
        <div className="field-grid">
          <TextField
            label={jobText.stepTitle}
            value={step.title}
            onChange={(title) => set(index, { title })}
            problem={at('title')}
            isRequired
            isWide
          />
          <TextField
            label={jobText.stepDetail}
            value={step.detail}
            onChange={(detail) => set(index, { detail })}
            problem={at('detail')}
            isWide
          />
          <SelectField
            label={jobText.stage}
            value={step.stage}
            onChange={(stage) => set(index, { stage })}
            options={chooseFrom(stageSchema.options, stageWords)}
          />
          <SelectField
            label={jobText.ofModule}
            value={step.moduleId ?? ''}
            onChange={(chosen) => set(index, { moduleId: orNull(chosen) })}
            options={scopes}
          />
          <MinutesField
            label={jobText.minutes}
            value={step.typicalMinutes}
            onChange={(typicalMinutes) => set(index, { typicalMinutes })}
            hint={undefined}
          />
          <CheckField
            label={jobText.cannotBeUndone}
            value={step.cannotBeUndone}
            onChange={(cannotBeUndone) => set(index, { cannotBeUndone })}
          />
        </div>
        <div className="check-row">
          {programmingRouteSchema.options.map((route) => (
            <CheckField
              key={route}
              label={routeWords[route]}
              value={step.routes.includes(route)}
              onChange={(isIn) =>
                set(index, { routes: toggled(programmingRouteSchema.options, step.routes, route, isIn) })
              }
            />
          ))}
        </div>
        {at('routes') !== undefined && (
          <p className="field-problem" role="alert">
            {at('routes')}
          </p>
        )}
        <div className="check-row">
          {cautionKeySchema.options.map((key) => (
            <CheckField
              key={key}
              label={cautions[key].title}
              value={step.cautions.includes(key)}
              onChange={(isIn) => set(index, { cautions: toggled(cautionKeySchema.options, step.cautions, key, isIn) })}
            />
          ))}
        </div>
        <Button
          kind="quiet"
          label={jobText.takeOutStep(step.title || jobText.ownStep(index + 1))}
          onPress={() => edit.set({ makerOrder: withoutOwnStep(order, step.id) })}
        >
          {jobText.takeOut}
        </Button>
      </fieldset>
    );
  });
}
