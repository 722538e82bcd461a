// The form of one code request. It has no field for a code, on purpose.
import { shippedCodeKinds } from '../../../../app/domain/codes/code-kinds.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { codeText } from '../../../text/vehicle-entries.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseFrom, chooseOrNone, peopleChoices, usedWords } from '../ledger/choices.ts';
import { FaultField } from '../ledger/fault-field.tsx';
import { FieldPlace } from '../ledger/field-place.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import type { CodeRequestValue } from './code-draft.ts';

function ProofFields({ edit }: { readonly edit: Editing<CodeRequestValue> }) {
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

export function CodeForm({ edit }: { readonly edit: Editing<CodeRequestValue> }) {
  const { vehicle, today, currency, view, desk } = useVehicle();
  const kinds = desk.shop?.codeKinds ?? shippedCodeKinds;
  const modules = usedWords([
    ...vehicle.faults.map((fault) => fault.module),
    ...vehicle.jobs.flatMap((job) => job.modules.map(({ name }) => name)),
  ]);
  return (
    <>
      <div className="field-grid">
        <SelectField
          label={codeText.kind}
          {...edit.at('kind')}
          options={kinds.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <TextField label={codeText.module} {...edit.at('module')} list={modules} />
        <TextField label={codeText.deviceSerial} {...edit.at('deviceSerial')} code />
        <TextField label={codeText.reason} {...edit.at('reason')} />
        <FaultField label={codeText.fault} {...edit.at('faultId')} />
        <DayField label={codeText.notedOn} {...edit.at('notedOn')} today={today} isRequired />
      </div>
      <ProofFields edit={edit} />
      <div className="field-grid">
        <FieldPlace name="askedOn">
          <DayField label={codeText.askedOn} {...edit.at('askedOn')} today={today} />
        </FieldPlace>
        <FieldPlace name="askedOf">
          <TextField
            label={codeText.askedOf}
            {...edit.at('askedOf')}
            list={usedWords(vehicle.codeRequests.map((request) => request.askedOf))}
          />
        </FieldPlace>
        <FieldPlace name="expectedOn">
          <DayField label={codeText.expectedOn} {...edit.at('expectedOn')} today={today} />
        </FieldPlace>
        <DayField label={codeText.answeredOn} {...edit.at('answeredOn')} today={today} />
        <SelectField
          label={codeText.outcome}
          value={edit.value.outcome ?? ''}
          onChange={(outcome) =>
            edit.set({
              outcome: outcome === '' ? null : outcome,
              answeredOn: outcome === '' ? null : (edit.value.answeredOn ?? today),
            })
          }
          problem={edit.problemAt('outcome')}
          options={[{ value: '', label: codeText.noAnswer }, ...chooseFrom(['given', 'refused'], codeText.outcomes)]}
        />
        {view.costs !== null && <MoneyField label={codeText.fee} {...edit.centsAt('feeCents')} currency={currency} />}
        <FieldPlace name="keptWhere">
          <TextField label={codeText.keptWhere} {...edit.at('keptWhere')} hint={codeText.neverTheCode} />
        </FieldPlace>
        <TextField label={codeText.note} {...edit.at('note')} isWide />
      </div>
    </>
  );
}
