// Which vehicle it is, and where it and its key are.
import { useMemo } from 'react';
import { driveKindSchema, type Identity, identitySchema } from '../../../../app/domain/vehicle/identity.ts';
import { undo } from '../../../state/desk-store.ts';
import { lotStore } from '../../../state/lot-store.ts';
import { notify } from '../../../state/notice-store.ts';
import { goTo } from '../../../state/route-store.ts';
import { useStore } from '../../../state/store.ts';
import { withdrawVehicle } from '../../../state/vehicle-store.ts';
import { errorSentence } from '../../../text/errors.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { detailsText, driveNames, sectionNames } from '../../../text/vehicle-entries.ts';
import { Button } from '../../../ui/button.tsx';
import { Facts } from '../../../ui/facts.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { showNumber } from '../../../ui/read-number.ts';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { groupVin, VinField } from '../../../ui/vin-field.tsx';
import { chooseFrom } from '../ledger/choices.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import { SectionForm } from '../ledger/section-form.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';

/** The odometer is typed as a number and a unit; without a number there is no reading. */
type IdentityDraft = Omit<Identity, 'odometer'> & {
  readonly odometer: { readonly reading: number | null; readonly unit: 'km' | 'mi' };
};

function toDraft(identity: Identity, unit: 'km' | 'mi'): IdentityDraft {
  return { ...identity, odometer: identity.odometer ?? { reading: null, unit } };
}

function finish(draft: IdentityDraft) {
  const { reading, unit } = draft.odometer;
  return { ok: true, value: { ...draft, odometer: reading === null ? null : { reading, unit } } } as const;
}

function IdentityFacts() {
  const { vehicle } = useVehicle();
  const { identity } = vehicle;
  const { odometer } = identity;
  const vinRows = identity.vinReason === '' ? [] : [{ label: detailsText.keptBecause, value: identity.vinReason }];
  return (
    <div className="facts-columns">
      <Facts
        rows={[
          { label: detailsText.vin, value: <span className="code">{groupVin(identity.vin)}</span> },
          ...vinRows,
          { label: detailsText.modelYear, value: identity.modelYear },
          { label: detailsText.make, value: identity.make },
          { label: detailsText.model, value: identity.model },
        ]}
      />
      <Facts
        rows={[
          { label: detailsText.body, value: identity.body },
          { label: detailsText.colour, value: identity.colour },
          { label: detailsText.drive, value: driveNames[identity.drive] },
          {
            label: detailsText.odometer,
            value: odometer === null ? null : `${showNumber(odometer.reading)} ${odometer.unit}`,
          },
        ]}
      />
      <Facts
        rows={[
          { label: detailsText.stockNumber, value: identity.stockNumber },
          { label: detailsText.location, value: identity.location },
          { label: detailsText.keyTag, value: identity.keyTag },
        ]}
      />
    </div>
  );
}

function Withdraw() {
  const { id, vehicle } = useVehicle();
  const withdraw = async () => {
    const answer = await withdrawVehicle(id);
    if (!answer.ok) {
      notify('problem', errorSentence(answer.error));
      return;
    }
    goTo({ screen: 'lot' });
    notify('done', detailsText.withdrawn(vehicle.identity.stockNumber), {
      label: ledgerText.undo,
      onPress: () => void undo(),
    });
  };
  return (
    <Button kind="quiet" tip={detailsText.withdrawTip} onPress={() => void withdraw()}>
      {detailsText.withdraw}
    </Button>
  );
}

export function DetailsSection() {
  const { vehicle, desk, role } = useVehicle();
  const { rows } = useStore(lotStore);
  const { makes, models, colours, places } = useMemo(() => {
    const of = (pick: (identity: (typeof rows)[number]['identity']) => string) =>
      [...new Set(rows.map((row) => pick(row.identity)).filter((word) => word !== ''))].sort();
    return {
      makes: of((identity) => identity.make),
      models: of((identity) => identity.model),
      colours: of((identity) => identity.colour),
      places: of((identity) => identity.location),
    };
  }, [rows]);
  const market = desk.shop?.dealer.market ?? 'other';
  const unit = desk.shop?.dealer.distanceUnit ?? 'mi';
  return (
    <VehicleSection section="details" title={sectionNames.details}>
      <SectionForm<Identity, IdentityDraft>
        part="identity"
        label={detailsText.identity}
        schema={identitySchema}
        base={toDraft(vehicle.identity, unit)}
        finish={finish}
        toChange={(value) => ({ kind: 'set', section: 'identity', value })}
        shown={<IdentityFacts />}
        actions={role === 'manager' ? <Withdraw /> : undefined}
        form={(edit) => (
          <div className="field-grid">
            <VinField
              {...edit.at('vin')}
              reason={edit.value.vinReason}
              onReasonChange={(vinReason) => edit.set({ vinReason })}
              reasonProblem={edit.problemAt('vinReason')}
              market={market}
              modelYear={edit.value.modelYear}
              onModelYear={(modelYear) => edit.set({ modelYear })}
            />
            <TextField label={detailsText.stockNumber} {...edit.at('stockNumber')} isRequired code />
            <NumberField label={detailsText.modelYear} {...edit.at('modelYear')} minimum={1900} maximum={2100} />
            <TextField label={detailsText.make} {...edit.at('make')} list={makes} />
            <TextField label={detailsText.model} {...edit.at('model')} list={models} />
            <TextField label={detailsText.body} {...edit.at('body')} />
            <TextField label={detailsText.colour} {...edit.at('colour')} list={colours} />
            <SelectField
              label={detailsText.drive}
              {...edit.at('drive')}
              options={chooseFrom(driveKindSchema.options, driveNames)}
            />
            <NumberField
              label={detailsText.odometer}
              value={edit.value.odometer.reading}
              onChange={(reading) => edit.set({ odometer: { ...edit.value.odometer, reading } })}
              problem={edit.problemAt('odometer')}
              maximum={3_000_000}
            />
            <SelectField
              label={detailsText.odometerUnit}
              value={edit.value.odometer.unit}
              onChange={(chosen) => edit.set({ odometer: { ...edit.value.odometer, unit: chosen } })}
              options={[
                { value: 'km', label: 'km' },
                { value: 'mi', label: 'mi' },
              ]}
            />
            <FieldPlace name="location">
              <TextField label={detailsText.location} {...edit.at('location')} list={places} />
            </FieldPlace>
            <TextField label={detailsText.keyTag} {...edit.at('keyTag')} />
          </div>
        )}
      />
    </VehicleSection>
  );
}
