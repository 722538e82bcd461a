// The proof of ownership of a code request: which document, checked when and by whom. Not a copy of it.
import type { Editing } from '../../../state/use-edit-draft.ts';
import { codeText } from '../../../text/codes.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseOrNone, peopleChoices } from '../ledger/choices.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import type { CodeRequestValue } from './code-draft.ts';

export function ProofFields({ edit }: { readonly edit: Editing<CodeRequestValue> }) {
  const { desk, today } = useVehicle();
  const { proof } = edit.value;
  const set = (more: Partial<CodeRequestValue['proof']>) => edit.set({ proof: { ...proof, ...more } });
  return (
    <fieldset className="field-group">
      <legend>{codeText.proof}</legend>
      <div className="field-grid">
        <FieldPlace name="proof">
          <TextField
            label={codeText.document}
            value={proof.document}
            onChange={(document) =>
              set({
                document,
                checkedOn: proof.checkedOn ?? today,
                checkedBy: proof.checkedBy === '' ? desk.person.id : proof.checkedBy,
              })
            }
            problem={edit.problemAt('proof')}
            hint={proof.document === '' && edit.problemAt('proof') === undefined ? codeText.proofFirst : undefined}
            list={codeText.documents}
          />
        </FieldPlace>
        <DayField
          label={codeText.checkedOn}
          value={proof.checkedOn}
          onChange={(checkedOn) => set({ checkedOn })}
          problem={edit.problemAt('proof.checkedOn')}
          today={today}
        />
        <SelectField
          label={codeText.checkedBy}
          value={proof.checkedBy}
          onChange={(checkedBy) => set({ checkedBy })}
          problem={edit.problemAt('proof.checkedBy')}
          options={chooseOrNone(peopleChoices(desk, proof.checkedBy))}
        />
      </div>
    </fieldset>
  );
}
