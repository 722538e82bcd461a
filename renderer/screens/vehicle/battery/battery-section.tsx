// The 12 V battery as it was measured: volts, and what they say about its charge where it had rested.
import { batteryChemistrySchema } from '../../../../app/domain/diagnosis/battery-charge.ts';
import {
  type BatteryReadingDraft,
  batteryReadingDraftSchema,
  chargeOf,
} from '../../../../app/domain/diagnosis/battery-reading.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { sayDay } from '../../../text/say-day.ts';
import { batteryText } from '../../../text/scans.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { CheckField } from '../../../ui/check-field.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseFrom } from '../ledger/choices.ts';
import { asTyped, type FactKind } from '../ledger/fact-kind.ts';
import { Ledger } from '../ledger/ledger.tsx';
import { useVehicle } from '../page/vehicle-context.ts';

/** A reading that is not taken yet has no volts. */
type BatteryValue = Typed<BatteryReadingDraft> & { readonly id: string };

const batteryKind: FactKind<BatteryReadingDraft, BatteryValue> = {
  list: 'batteryReadings',
  schema: batteryReadingDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'batteryReadings', item }),
  toValue: (reading) => ({ ...asTyped(reading), volts: reading.volts === 0 ? null : reading.volts }),
};

function chargeWords(reading: Parameters<typeof chargeOf>[0]): string {
  const charge = chargeOf(reading);
  if (charge === null) return reading.isRested ? '' : batteryText.notRested;
  return charge.percent === null ? batteryText.notTold : batteryText.percent(Math.round(charge.percent));
}

/** What the volts say while they are typed. */
function Charge({ value }: { readonly value: BatteryValue }) {
  const { volts } = value;
  if (volts === null) return null;
  const reading = { ...value, volts };
  const charge = chargeOf(reading);
  return (
    <div className="battery-charge" role="status">
      <b>{chargeWords(reading)}</b>
      {charge !== null && value.temperatureCelsius !== null && (
        <span className="quiet"> {batteryText.corrected(charge.tableVolts)}</span>
      )}
      {charge !== null && charge.freezesAtCelsius !== null && (
        <span className="quiet"> {batteryText.freezes(Math.round(charge.freezesAtCelsius))}</span>
      )}
      {charge?.cautions.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
    </div>
  );
}

function BatteryForm({ edit }: { readonly edit: Editing<BatteryValue> }) {
  const { today } = useVehicle();
  return (
    <>
      <div className="field-grid">
        <NumberField label={batteryText.volts} {...edit.at('volts')} unit="V" decimals={2} maximum={60} isRequired />
        <SelectField
          label={batteryText.chemistry}
          {...edit.at('chemistry')}
          options={chooseFrom(batteryChemistrySchema.options, batteryText.chemistries)}
        />
        <NumberField
          label={batteryText.temperature}
          {...edit.at('temperatureCelsius')}
          unit="°C"
          minimum={-50}
          maximum={80}
          decimals={1}
        />
        <DayField label={batteryText.measuredOn} {...edit.at('measuredOn')} today={today} isRequired />
        <TextField label={batteryText.note} {...edit.at('note')} />
        <CheckField label={batteryText.isRested} {...edit.at('isRested')} hint={batteryText.restHint} isWide />
      </div>
      <Charge value={edit.value} />
    </>
  );
}

export function BatterySection() {
  const { vehicle, today } = useVehicle();
  const readings = vehicle.batteryReadings.toSorted((a, b) =>
    a.measuredOn < b.measuredOn ? 1 : a.measuredOn > b.measuredOn ? -1 : a.entered.at < b.entered.at ? 1 : -1,
  );
  return (
    <Ledger
      section="battery"
      title={sectionNames.battery}
      kind={batteryKind}
      facts={readings}
      nameOf={(reading) => batteryText.name(reading.volts, sayDay(reading.measuredOn, today))}
      addLabel={batteryText.add}
      emptySentence={batteryText.empty}
      makeNew={(id) => ({
        id,
        measuredOn: today,
        volts: 0,
        chemistry: readings[0]?.chemistry ?? 'flooded',
        temperatureCelsius: null,
        isRested: false,
        note: '',
      })}
      columns={[
        { title: batteryText.volts, align: 'right', cell: (reading) => `${reading.volts.toFixed(2)} V`, isTight: true },
        { title: batteryText.measuredOn, cell: (reading) => sayDay(reading.measuredOn, today), isTight: true },
        { title: batteryText.charge, cell: chargeWords },
        { title: batteryText.chemistry, cell: (reading) => batteryText.chemistries[reading.chemistry] },
        {
          title: batteryText.temperature,
          align: 'right',
          cell: (reading) => (reading.temperatureCelsius === null ? '' : `${reading.temperatureCelsius} °C`),
        },
        { title: batteryText.note, cell: (reading) => reading.note },
      ]}
      form={(edit) => <BatteryForm edit={edit} />}
    />
  );
}
