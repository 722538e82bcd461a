// The chases of a code request as rows of fields, oldest first. A technician may write here too.
import { askWaySchema, type Chase } from '../../../../app/domain/codes/request-facts.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { codeText } from '../../../text/codes.ts';
import { Button } from '../../../ui/button.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseFrom, personName } from '../ledger/choices.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import type { CodeRequestValue } from './code-draft.ts';
import { freshChase } from './fresh-life.ts';

export function ChaseRows({ edit }: { readonly edit: Editing<CodeRequestValue> }) {
  const { desk, today } = useVehicle();
  const { chases, askedHow, askedOn } = edit.value;
  const set = (index: number, more: Partial<Chase>) =>
    edit.set({ chases: chases.map((chase, at) => (at === index ? { ...chase, ...more } : chase)) });
  const add = () =>
    edit.set({ chases: [...chases, freshChase(newIdentifier(), { today, by: desk.person.id, how: askedHow })] });
  if (askedOn === null && chases.length === 0) return null;
  return (
    <fieldset className="field-group">
      <legend>{codeText.chases}</legend>
      {chases.map((chase, index) => {
        const path = `chases.${index}`;
        return (
          <fieldset key={chase.id} className="code-life-row">
            <legend className="unseen">{codeText.chase(index + 1)}</legend>
            <FieldPlace name={`${path}.chasedOn`}>
              <DayField
                label={codeText.chasedOn}
                value={chase.chasedOn}
                onChange={(chasedOn) => chasedOn !== null && set(index, { chasedOn })}
                problem={edit.problemAt(`${path}.chasedOn`)}
                today={today}
                isRequired
              />
            </FieldPlace>
            <SelectField
              label={codeText.askedHow}
              value={chase.how}
              onChange={(how) => set(index, { how })}
              options={chooseFrom(askWaySchema.options, codeText.ways)}
            />
            <FieldPlace name={`${path}.promisedOn`}>
              <DayField
                label={codeText.promisedOn}
                value={chase.promisedOn}
                onChange={(promisedOn) => set(index, { promisedOn })}
                problem={edit.problemAt(`${path}.promisedOn`)}
                today={today}
              />
            </FieldPlace>
            <TextField
              label={codeText.note}
              value={chase.note}
              onChange={(note) => set(index, { note })}
              problem={edit.problemAt(`${path}.note`)}
              hint={personName(desk, chase.by)}
            />
            <Button
              kind="quiet"
              label={codeText.removeChase(index + 1)}
              onPress={() => edit.set({ chases: chases.filter((_, at) => at !== index) })}
            >
              {codeText.remove}
            </Button>
          </fieldset>
        );
      })}
      <Button onPress={add}>{codeText.addChase}</Button>
    </fieldset>
  );
}
