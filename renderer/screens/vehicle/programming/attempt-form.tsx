// One attempt at a step: by which route, how it went, the volts, and what was shown.
import {
  type AttemptDraft,
  attemptDraftSchema,
  attemptOutcomeSchema,
  programmingRouteSchema,
} from '../../../../app/domain/programming/programming-job.ts';
import { jobText } from '../../../text/vehicle-work.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseFrom, peopleChoices } from '../ledger/choices.ts';
import { FactForm } from '../ledger/fact-form.tsx';
import { asTyped, type FactKind } from '../ledger/fact-kind.ts';
import type { OpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';

export const attemptKind: FactKind<AttemptDraft> = {
  list: 'attempts',
  schema: attemptDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'attempts', item }),
  toValue: asTyped,
};

export type AttemptFormProps = {
  readonly attempt: AttemptDraft;
  readonly name: string;
  readonly entry: OpenEntry;
  readonly onClosed: () => void;
};

export function AttemptForm({ attempt, name, entry, onClosed }: AttemptFormProps) {
  const { desk, today } = useVehicle();
  const volts = { decimals: 2, maximum: 60, unit: 'V' } as const;
  return (
    <FactForm kind={attemptKind} fact={attempt} name={name} entry={entry} onSaved={onClosed} onClosed={onClosed}>
      {(edit) => (
        <div className="field-grid">
          <SelectField
            label={jobText.outcome}
            {...edit.at('outcome')}
            options={chooseFrom(attemptOutcomeSchema.options, jobText.outcomes)}
          />
          <SelectField
            label={jobText.route}
            {...edit.at('route')}
            options={chooseFrom(programmingRouteSchema.options, jobText.routes)}
          />
          <NumberField label={jobText.voltsBefore} {...edit.at('voltsBefore')} {...volts} />
          <NumberField label={jobText.voltsLowest} {...edit.at('voltsLowest')} {...volts} />
          <NumberField label={jobText.voltsAfter} {...edit.at('voltsAfter')} {...volts} />
          <SelectField label={jobText.person} {...edit.at('person')} options={peopleChoices(desk, edit.value.person)} />
          <DayField label={jobText.on} {...edit.at('on')} today={today} isRequired />
          <TextField label={jobText.message} {...edit.at('message')} isWide />
        </div>
      )}
    </FactForm>
  );
}
