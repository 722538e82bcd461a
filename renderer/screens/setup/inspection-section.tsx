// The inspections the shop knows, with source and date beside each rule, and the one its vehicles are judged by.
import { useId } from 'react';
import type { InspectionSettings } from '../../../app/domain/diagnosis/inspection-schemes.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { newIdentifier } from '../../state/new-identifier.ts';
import type { Blankable } from '../../state/shop-parts.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { sayDay } from '../../text/say-day.ts';
import { setupDiagnosisText as text } from '../../text/setup-diagnosis.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { InspectionRules, newRule, type SchemeFieldsProps, type TypedScheme } from './inspection-rules.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

const newPermanentCodes = {
  fromModelYear: null,
  warmUps: null,
  distanceMiles: null,
  source: '',
  sourceDated: '',
} as const;

function PermanentCodes({ scheme, isReadOnly, problemAt: at, onChange }: SchemeFieldsProps) {
  const { permanentCodes } = scheme;
  const set = (more: Partial<NonNullable<typeof permanentCodes>>, field: string) =>
    onChange(
      { ...scheme, permanentCodes: { ...newPermanentCodes, ...permanentCodes, ...more } },
      `permanentCodes.${field}`,
    );
  const wiring = (field: string) => ({ problem: at(`permanentCodes.${field}`), isReadOnly });
  return (
    <div className="field-grid">
      <CheckField
        label={text.permanentCodes}
        value={permanentCodes !== null}
        onChange={(isOn) => onChange({ ...scheme, permanentCodes: isOn ? newPermanentCodes : null }, 'permanentCodes')}
        isReadOnly={isReadOnly}
      />
      {permanentCodes !== null && (
        <>
          <NumberField
            label={text.permanentFrom}
            value={permanentCodes.fromModelYear}
            onChange={(fromModelYear) => set({ fromModelYear }, 'fromModelYear')}
            minimum={1980}
            maximum={2100}
            {...wiring('fromModelYear')}
          />
          <NumberField
            label={text.warmUps}
            value={permanentCodes.warmUps}
            onChange={(warmUps) => set({ warmUps }, 'warmUps')}
            {...wiring('warmUps')}
          />
          <NumberField
            label={text.distance}
            value={permanentCodes.distanceMiles}
            onChange={(distanceMiles) => set({ distanceMiles }, 'distanceMiles')}
            {...wiring('distanceMiles')}
          />
          <TextField
            label={text.source}
            value={permanentCodes.source}
            onChange={(source) => set({ source }, 'source')}
            {...wiring('source')}
          />
          <TextField
            label={text.sourceDated}
            value={permanentCodes.sourceDated}
            onChange={(sourceDated) => set({ sourceDated }, 'sourceDated')}
            {...wiring('sourceDated')}
          />
        </>
      )}
    </div>
  );
}

type SchemeProps = SchemeFieldsProps & {
  readonly today: Day;
  readonly onRemove: () => void;
  readonly hasProblem: boolean;
};

function Scheme({ today, onRemove, hasProblem, ...fields }: SchemeProps) {
  const { scheme, isReadOnly, problemAt: at, onChange } = fields;
  const titleId = useId();
  return (
    <details className="setup-scheme" open={hasProblem || undefined} aria-labelledby={titleId}>
      <summary id={titleId}>
        <b>{scheme.name || text.newScheme}</b>{' '}
        <span className="quiet">
          {text.rules(scheme.rules.length)},{' '}
          {scheme.checkedOn === null ? text.neverChecked : text.checked(sayDay(scheme.checkedOn, today))}
        </span>
      </summary>
      <div className="field-grid">
        <TextField
          label={text.schemeName}
          value={scheme.name}
          onChange={(name) => onChange({ ...scheme, name }, 'name')}
          problem={at('name')}
          isReadOnly={isReadOnly}
          isRequired
        />
        <DayField
          label={text.checkedOn}
          value={scheme.checkedOn}
          onChange={(checkedOn) => onChange({ ...scheme, checkedOn }, 'checkedOn')}
          problem={at('checkedOn')}
          isReadOnly={isReadOnly}
          today={today}
        />
      </div>
      <InspectionRules {...fields} />
      {!isReadOnly && (
        <div className="setup-rows-foot">
          <Button kind="quiet" onPress={() => onChange({ ...scheme, rules: [...scheme.rules, newRule] }, 'rules')}>
            {text.addRule}
          </Button>
        </div>
      )}
      <PermanentCodes {...fields} />
      {!isReadOnly && (
        <div className="setup-rows-foot">
          <Button kind="quiet" label={text.removeScheme(scheme.name)} onPress={onRemove}>
            {text.removeThis}
          </Button>
        </div>
      )}
    </details>
  );
}

export function InspectionSection({
  kept,
  today,
  ...section
}: SectionProps & { readonly kept: InspectionSettings; readonly today: Day }) {
  const { state } = section;
  const settings: Blankable<InspectionSettings> = state.drafts.inspection ?? kept;
  const { schemes, chosenId } = settings;
  const isReadOnly = section.readOnlyReason !== null;
  const set = (next: readonly TypedScheme[], field: string) =>
    typeIntoShop('inspection', { ...settings, schemes: next }, field);
  const problems = state.problems.inspection ?? [];
  return (
    <SectionForm
      {...section}
      part="inspection"
      count={schemes.length}
      hint={text.inspectionHint}
      extraAction={
        !isReadOnly && (
          <Button
            kind="quiet"
            onPress={() =>
              set(
                [
                  ...schemes,
                  {
                    id: newIdentifier(),
                    name: text.newScheme,
                    rules: [newRule],
                    permanentCodes: null,
                    checkedOn: null,
                  },
                ],
                '',
              )
            }
          >
            {text.addScheme}
          </Button>
        )
      }
    >
      <div className="field-grid">
        <SelectField
          label={text.chosen}
          value={chosenId ?? ''}
          options={[
            { value: '', label: text.noneChosen },
            ...schemes.map(({ id, name }) => ({ value: id, label: name || text.newScheme })),
          ]}
          onChange={(id) => typeIntoShop('inspection', { ...settings, chosenId: id === '' ? null : id }, 'chosenId')}
          problem={problemAt(state, 'inspection', 'chosenId')}
          isReadOnly={isReadOnly}
        />
      </div>
      {schemes.map((scheme, index) => (
        <Scheme
          key={scheme.id}
          scheme={scheme}
          isReadOnly={isReadOnly}
          today={today}
          hasProblem={problems.some((problem) => problem.field.startsWith(`schemes.${index}.`))}
          problemAt={(field) => problemAt(state, 'inspection', `schemes.${index}.${field}`)}
          onChange={(changed, field) =>
            set(
              schemes.map((other) => (other.id === changed.id ? changed : other)),
              `schemes.${index}.${field}`,
            )
          }
          onRemove={() =>
            typeIntoShop(
              'inspection',
              {
                chosenId: chosenId === scheme.id ? null : chosenId,
                schemes: schemes.filter((other) => other.id !== scheme.id),
              },
              '',
            )
          }
        />
      ))}
    </SectionForm>
  );
}
