// The form of a programming job: which module, what it is, what it needs, and its steps.
import { moduleOriginSchema } from '../../../../app/domain/programming/programming-job.ts';
import { moduleKinds, standardSteps } from '../../../../app/domain/programming/standard-steps.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { codeText } from '../../../text/vehicle-entries.ts';
import { jobText } from '../../../text/vehicle-work.ts';
import { CheckField } from '../../../ui/check-field.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { ParagraphField, TextField } from '../../../ui/text-field.tsx';
import { chooseFrom, chooseOrNone, orNull, partChoices, usedWords } from '../ledger/choices.ts';
import { FaultField } from '../ledger/fault-field.tsx';
import { FieldPlace } from '../ledger/field-place.tsx';
import { maySeeCodes } from '../may-change.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { type JobValue, kindOf } from './job-draft.ts';
import { StepEditor } from './step-editor.tsx';

function UsualSteps({ edit }: { readonly edit: Editing<JobValue> }) {
  const { vehicle } = useVehicle();
  const { origin } = edit.value;
  const steps = standardSteps({ kind: kindOf(edit.value), origin, drive: vehicle.identity.drive });
  return (
    <fieldset className="field-group">
      <legend>{jobText.steps}</legend>
      <div className="field-grid">
        <CheckField label={jobText.withUsual} {...edit.at('withUsualSteps')} />
        <SelectField
          label={jobText.kind}
          value={kindOf(edit.value)}
          onChange={(usualKind) => edit.set({ usualKind })}
          options={chooseFrom(moduleKinds, jobText.kinds)}
        />
      </div>
      {edit.value.withUsualSteps && (
        <details className="usual-steps">
          <summary>{jobText.usualPreview(steps.length)}</summary>
          <ol>
            {steps.map((step) => (
              <li key={step.title}>{step.title}</li>
            ))}
          </ol>
        </details>
      )}
    </fieldset>
  );
}

export function JobForm({ edit }: { readonly edit: Editing<JobValue> }) {
  const { vehicle, today, role } = useVehicle();
  const modules = usedWords([
    ...vehicle.faults.map((fault) => fault.module),
    ...vehicle.scans.flatMap((scan) => scan.modules.map((module) => module.name)),
  ]);
  const requests = vehicle.codeRequests.map((request) => ({
    value: request.id,
    label: `${codeText.kinds[request.kind]} ${request.module}`.trim(),
  }));
  return (
    <>
      <div className="field-grid">
        <TextField label={jobText.module} {...edit.at('module')} list={modules} isRequired />
        <SelectField
          label={jobText.origin}
          {...edit.at('origin')}
          options={chooseFrom(moduleOriginSchema.options, jobText.origins)}
        />
        <FaultField label={jobText.fault} {...edit.at('faultId')} />
        <SelectField
          label={jobText.part}
          value={edit.value.partId ?? ''}
          onChange={(chosen) => edit.set({ partId: orNull(chosen) })}
          problem={edit.problemAt('partId')}
          options={partChoices(vehicle)}
        />
        {maySeeCodes(role) && (
          <FieldPlace name="codeRequestId">
            <SelectField
              label={jobText.code}
              value={edit.value.codeRequestId ?? ''}
              onChange={(chosen) => edit.set({ codeRequestId: orNull(chosen) })}
              problem={edit.problemAt('codeRequestId')}
              options={chooseOrNone(requests)}
            />
          </FieldPlace>
        )}
        <DayField label={jobText.openedOn} {...edit.at('openedOn')} today={today} isRequired />
        <ParagraphField label={jobText.note} {...edit.at('note')} rows={1} isWide />
      </div>
      {edit.value.steps.length === 0 && <UsualSteps edit={edit} />}
      {(edit.value.steps.length > 0 || !edit.value.withUsualSteps) && <StepEditor edit={edit} />}
    </>
  );
}
