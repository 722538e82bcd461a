// Work booked on the vehicle.
import { type LabourDraft, labourDraftSchema } from '../../../../app/domain/work/labour.ts';
import { workAreaSchema } from '../../../../app/domain/work/work-area.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { sayDay } from '../../../text/say-day.ts';
import { areaNames, sectionNames } from '../../../text/vehicle-entries.ts';
import { labourText } from '../../../text/vehicle-work.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { likelyFault } from '../fresh-facts.ts';
import { chooseFrom, peopleChoices, personName } from '../ledger/choices.ts';
import { asTyped, type FactKind } from '../ledger/fact-kind.ts';
import { FaultField } from '../ledger/fault-field.tsx';
import { Ledger } from '../ledger/ledger.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { MinutesField } from './minutes-field.tsx';
import { showMinutes } from './minutes-text.ts';

/** A booking that is not made yet has no minutes. */
type LabourValue = Typed<LabourDraft>;

const labourKind: FactKind<LabourDraft, LabourValue> = {
  list: 'labour',
  schema: labourDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'labour', item }),
  // A new booking carries 0 minutes until it is typed; the field then starts empty.
  toValue: (labour) => ({ ...asTyped(labour), minutes: labour.minutes === 0 ? null : labour.minutes }),
};

function LabourForm({ edit }: { readonly edit: Editing<LabourValue> }) {
  const { vehicle, desk, today } = useVehicle();
  /** Work on a fault is in the fault's area unless somebody says otherwise. */
  const onFault = (faultId: string | null) => {
    const fault = vehicle.faults.find((candidate) => candidate.id === faultId);
    edit.set(fault ? { faultId, area: fault.area } : { faultId });
  };
  return (
    <div className="field-grid">
      <TextField label={labourText.what} {...edit.at('what')} isRequired />
      <MinutesField label={labourText.minutes} {...edit.at('minutes')} isRequired />
      <DayField label={labourText.workedOn} {...edit.at('workedOn')} today={today} isRequired />
      <SelectField label={labourText.person} {...edit.at('person')} options={peopleChoices(desk, edit.value.person)} />
      <FaultField label={labourText.fault} {...edit.at('faultId')} onChange={onFault} />
      <SelectField
        label={labourText.area}
        {...edit.at('area')}
        options={chooseFrom(workAreaSchema.options, areaNames)}
      />
    </div>
  );
}

export function LabourSection() {
  const { vehicle, desk, today } = useVehicle();
  const total = vehicle.labour.reduce((minutes, labour) => minutes + labour.minutes, 0);
  const labour = vehicle.labour.toSorted((a, b) => (a.workedOn < b.workedOn ? 1 : a.workedOn > b.workedOn ? -1 : 0));
  const faultName = (id: string | null) => vehicle.faults.find((fault) => fault.id === id)?.what ?? '';
  const fault = likelyFault(vehicle);
  return (
    <Ledger
      section="labour"
      title={sectionNames.labour}
      kind={labourKind}
      facts={labour}
      aside={total > 0 ? labourText.total(showMinutes(total)) : undefined}
      nameOf={(entry) => entry.what}
      addLabel={labourText.add}
      emptySentence={labourText.empty}
      makeNew={(id) => ({
        id,
        workedOn: today,
        person: desk.person.id,
        minutes: 0,
        what: '',
        area: fault?.area ?? 'other',
        faultId: fault?.id ?? null,
      })}
      columns={[
        { title: labourText.what, cell: (entry) => entry.what },
        { title: labourText.workedOn, cell: (entry) => sayDay(entry.workedOn, today), isTight: true },
        { title: labourText.person, cell: (entry) => personName(desk, entry.person) },
        { title: labourText.area, cell: (entry) => areaNames[entry.area] },
        { title: labourText.fault, cell: (entry) => <span className="quiet">{faultName(entry.faultId)}</span> },
        { title: labourText.minutes, align: 'right', cell: (entry) => showMinutes(entry.minutes) },
      ]}
      form={(edit) => <LabourForm edit={edit} />}
    />
  );
}
