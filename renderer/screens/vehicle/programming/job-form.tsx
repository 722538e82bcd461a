// The form of a programming job: its modules, what it is for, and under them the plan that follows.
import type { Editing } from '../../../state/use-edit-draft.ts';
import { jobText } from '../../../text/programming.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { ParagraphField, TextField } from '../../../ui/text-field.tsx';
import { FaultField } from '../ledger/fault-field.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { type JobValue, type Planning, plannedJob, titleFor } from './job-draft.ts';
import { ModuleRows } from './module-rows.tsx';
import { PlanPreview } from './plan-preview.tsx';

export function JobForm({ edit, planning }: { readonly edit: Editing<JobValue>; readonly planning: Planning }) {
  const { today } = useVehicle();
  const { value } = edit;
  return (
    <>
      <ModuleRows edit={edit} />
      <div className="field-grid">
        <TextField
          label={jobText.title}
          {...edit.at('title')}
          hint={jobText.titleHint}
          placeholder={titleFor(value.modules)}
        />
        <FaultField label={jobText.fault} {...edit.at('faultId')} />
        <DayField label={jobText.openedOn} {...edit.at('openedOn')} today={today} isRequired />
        <ParagraphField label={jobText.note} {...edit.at('note')} rows={1} isWide />
      </div>
      {value.isRemade && <p className="plan-reminder">{jobText.madeAgainBy}</p>}
      {planning.pack === null && <p className="quiet">{jobText.readingRules}</p>}
      <PlanPreview remade={plannedJob(value, planning)} isNew={planning.before === null} />
    </>
  );
}
