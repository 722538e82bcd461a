// The form of one fault: what it is, which codes belong to it, what was decided, whether a buyer must be told.
import { decisionKindSchema } from '../../../../app/domain/diagnosis/fault.ts';
import { workAreaSchema } from '../../../../app/domain/work/work-area.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { areaNames, faultText } from '../../../text/vehicle-entries.ts';
import { CheckField } from '../../../ui/check-field.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { ParagraphField, TextField } from '../../../ui/text-field.tsx';
import { MinutesField } from '../labour/minutes-field.tsx';
import { chooseFrom, usedWords } from '../ledger/choices.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import { mayDecide } from '../may-change.ts';
import { Notebook } from '../notebook/notebook.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { CodeDetail } from '../scans/code-detail.tsx';
import { readCodeText } from '../scans/code-text.ts';
import type { DecisionDraft, FaultValue } from './fault-draft.ts';

function DecisionFields({ edit }: { readonly edit: Editing<FaultValue> }) {
  const { role, today } = useVehicle();
  const { decision } = edit.value;
  const isReadOnly = !mayDecide(role);
  const set = (more: Partial<DecisionDraft>) => edit.set({ decision: { ...decision, ...more } });
  return (
    <>
      <FieldPlace name="decision">
        <SelectField
          label={faultText.decision}
          value={decision.kind}
          onChange={(kind) => set({ kind, decidedOn: kind === '' ? null : (decision.decidedOn ?? today) })}
          problem={edit.problemAt('decision.kind')}
          options={[
            { value: '', label: faultText.undecided },
            ...chooseFrom(decisionKindSchema.options, faultText.decisions),
          ]}
          isReadOnly={isReadOnly}
          hint={isReadOnly ? faultText.onlyManagerDecides : undefined}
        />
      </FieldPlace>
      {decision.kind !== '' && (
        <>
          <DayField
            label={faultText.decidedOn}
            value={decision.decidedOn}
            onChange={(decidedOn) => set({ decidedOn })}
            problem={edit.problemAt('decision.decidedOn')}
            today={today}
            isReadOnly={isReadOnly}
          />
          <FieldPlace name="decision.reason">
            <TextField
              label={faultText.reason}
              value={decision.reason}
              onChange={(reason) => set({ reason })}
              problem={edit.problemAt('decision.reason')}
              isRequired={decision.kind === 'leave'}
              isReadOnly={isReadOnly}
            />
          </FieldPlace>
        </>
      )}
      {(decision.kind === 'repair' || decision.kind === 'replace') && (
        <>
          <FieldPlace name="decision.estimateMinutes">
            <MinutesField
              label={faultText.estimate}
              value={decision.estimateMinutes}
              onChange={(estimateMinutes) => set({ estimateMinutes })}
              problem={edit.problemAt('decision.estimateMinutes')}
              isReadOnly={isReadOnly}
            />
          </FieldPlace>
          <DayField label={faultText.doneOn} {...edit.at('doneOn')} today={today} />
        </>
      )}
    </>
  );
}

export function FaultForm({ edit }: { readonly edit: Editing<FaultValue> }) {
  const { vehicle, today, id } = useVehicle();
  const codes = readCodeText(edit.value.codes).codes.map(({ code }) => code);
  const modules = usedWords(vehicle.scans.flatMap((scan) => scan.modules.map((module) => module.name)));
  return (
    <div className="field-grid">
      <TextField label={faultText.what} {...edit.at('what')} isWide isRequired />
      <SelectField
        label={faultText.area}
        {...edit.at('area')}
        options={chooseFrom(workAreaSchema.options, areaNames)}
      />
      <TextField label={faultText.module} {...edit.at('module')} list={modules} />
      <TextField label={faultText.codes} {...edit.at('codes')} hint={faultText.codesHint} code />
      <DayField label={faultText.foundOn} {...edit.at('foundOn')} today={today} isRequired />
      <DecisionFields edit={edit} />
      <CheckField label={faultText.tellBuyer} {...edit.at('tellBuyer')} />
      <ParagraphField label={faultText.note} {...edit.at('note')} rows={2} isWide />
      <div className="field is-wide">
        {codes.map((code) => (
          <CodeDetail key={code} code={code} statusByte={null} />
        ))}
        <Notebook module={edit.value.module} codes={codes} vehicleId={id} />
      </div>
    </div>
  );
}
