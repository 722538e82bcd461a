// The form of one code request through its whole life. It has no field for a code, on purpose. Who may only note chases and tries gets
// the rows for these, with what is known of the request above them.
import { type CodeKindFacts, shippedCodeKinds } from '../../../../app/domain/codes/code-kinds.ts';
import { codeKindName, codeKindOf } from '../../../../app/domain/codes/code-name.ts';
import { askWaySchema } from '../../../../app/domain/codes/request-facts.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { codeText } from '../../../text/codes.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseFrom, chooseOrNone, usedWords } from '../ledger/choices.ts';
import { FaultField } from '../ledger/fault-field.tsx';
import { FieldPlace } from '../ledger/field-place.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { ChaseRows } from './chase-rows.tsx';
import type { CodeRequestValue } from './code-draft.ts';
import { ClosingFields, FilingFields } from './filing-fields.tsx';
import { ProofFields } from './proof-fields.tsx';
import { SerialWarnings } from './serial-warnings.tsx';
import { TryRows } from './try-rows.tsx';

type Part = { readonly edit: Editing<CodeRequestValue> };

/** The kinds that may be chosen: those in use, and the one that is chosen already. */
function kindChoices(kinds: readonly CodeKindFacts[], chosen: string) {
  const offered = kinds.filter(({ id, isActive }) => isActive || id === chosen);
  const choices = offered.map(({ id, name }) => ({ value: id, label: name }));
  return offered.some(({ id }) => id === chosen)
    ? choices
    : [...choices, { value: chosen, label: codeText.goneKind(codeKindName(chosen, kinds)) }];
}

function WhatIsAsked({ edit, kind }: Part & { readonly kind: CodeKindFacts | null }) {
  const { vehicle, today, desk } = useVehicle();
  const modules = usedWords([
    ...vehicle.faults.map((fault) => fault.module),
    ...vehicle.jobs.flatMap((job) => job.modules.map(({ name }) => name)),
  ]);
  return (
    <>
      <div className="field-grid">
        <FieldPlace name="kind">
          <SelectField
            label={codeText.kind}
            {...edit.at('kind')}
            options={kindChoices(desk.shop?.codeKinds ?? shippedCodeKinds, edit.value.kind)}
          />
        </FieldPlace>
        <FieldPlace name="module">
          <TextField label={codeText.module} {...edit.at('module')} list={modules} />
        </FieldPlace>
        <FieldPlace name="deviceSerial">
          <TextField label={codeText.deviceSerial} {...edit.at('deviceSerial')} code />
        </FieldPlace>
        <FieldPlace name="reason">
          <TextField label={codeText.reason} {...edit.at('reason')} />
        </FieldPlace>
        <FaultField label={codeText.fault} {...edit.at('faultId')} />
        <DayField label={codeText.notedOn} {...edit.at('notedOn')} today={today} isRequired />
      </div>
      <SerialWarnings edit={edit} kind={kind} />
      {kind !== null && kind.advice !== '' && <p className="code-advice">{kind.advice}</p>}
    </>
  );
}

function AskedFields({ edit }: Part) {
  const { vehicle, today } = useVehicle();
  return (
    <fieldset className="field-group">
      <legend>{codeText.asking}</legend>
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
        <SelectField
          label={codeText.askedHow}
          value={edit.value.askedHow ?? ''}
          onChange={(how) => edit.set({ askedHow: askWaySchema.options.find((way) => way === how) ?? null })}
          options={chooseOrNone(chooseFrom(askWaySchema.options, codeText.ways), codeText.noWay)}
        />
        <TextField label={codeText.credential} {...edit.at('credentialReference')} hint={codeText.credentialHint} />
        <FieldPlace name="expectedOn">
          <DayField label={codeText.expectedOn} {...edit.at('expectedOn')} today={today} />
        </FieldPlace>
      </div>
    </fieldset>
  );
}

function AnswerFields({ edit }: Part) {
  const { today, currency, view } = useVehicle();
  return (
    <fieldset className="field-group">
      <legend>{codeText.answer}</legend>
      <div className="field-grid">
        <FieldPlace name="answeredOn">
          <DayField label={codeText.answeredOn} {...edit.at('answeredOn')} today={today} />
        </FieldPlace>
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
    </fieldset>
  );
}

export function CodeForm({ edit }: Part) {
  const { desk, canPut } = useVehicle();
  const kind = codeKindOf(desk.shop?.codeKinds ?? shippedCodeKinds, edit.value.kind);
  if (!canPut('codeRequests'))
    return (
      <>
        <ChaseRows edit={edit} />
        <TryRows edit={edit} kind={kind} />
      </>
    );
  return (
    <>
      <WhatIsAsked edit={edit} kind={kind} />
      <ProofFields edit={edit} />
      <AskedFields edit={edit} />
      <ChaseRows edit={edit} />
      <AnswerFields edit={edit} />
      <TryRows edit={edit} kind={kind} />
      <FilingFields edit={edit} />
      <ClosingFields edit={edit} />
    </>
  );
}
