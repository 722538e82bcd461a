// The fields of one funding plan; its rows of curtailments and of changes of the rate are in plan-rows.tsx.
import { dayCountSchema } from '../../../app/domain/money/day-count.ts';
import type { FundingPlan } from '../../../app/domain/money/funding-plan.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import type { Blankable } from '../../state/shop-parts.ts';
import { setupText } from '../../text/setup.ts';
import { setupMoneyText as text } from '../../text/setup-money.ts';
import { Button } from '../../ui/button.tsx';
import { MoneyField } from '../../ui/money-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { PercentField } from './number-in-setup.tsx';
import { CurtailmentRows, RateRows } from './plan-rows.tsx';

export type TypedPlan = Blankable<FundingPlan>;

export type PlanFieldsProps = {
  readonly plan: TypedPlan;
  readonly currency: string;
  readonly today: Day;
  readonly isReadOnly: boolean;
  readonly problemAt: (field: string) => string | undefined;
  readonly onChange: (plan: TypedPlan, field: string) => void;
  readonly onRemove: () => void;
};

export function PlanFields(props: PlanFieldsProps) {
  const { plan, currency, isReadOnly, problemAt, onChange, onRemove } = props;
  const name = plan.name.trim() || setupText.unnamed(1);
  const at = <Field extends keyof TypedPlan>(field: Field) => ({
    onChange: (value: TypedPlan[Field]) => onChange({ ...plan, [field]: value }, field),
    problem: problemAt(field),
    isReadOnly,
  });
  const { floor } = plan;
  const setFloor = (part: 'ofOriginalPpm' | 'ofWholesalePpm', ppm: number | null) => {
    const next = { ofOriginalPpm: null, ofWholesalePpm: null, ...floor, [part]: ppm };
    onChange({ ...plan, floor: next.ofOriginalPpm === null && next.ofWholesalePpm === null ? null : next }, 'floor');
  };
  return (
    <fieldset className="setup-plan">
      <legend>{text.planOf(name)}</legend>
      <div className="field-grid">
        <TextField label={text.planName} value={plan.name} {...at('name')} isRequired />
        <PercentField label={text.advance} ppm={plan.advancePpm} maximum={150} {...at('advancePpm')} isRequired />
        <PercentField label={text.rate} ppm={plan.ratePpm} {...at('ratePpm')} isRequired />
        <SelectField
          label={text.dayCount}
          value={plan.dayCount}
          options={dayCountSchema.options.map((value) => ({ value, label: text.dayCounts[value] }))}
          {...at('dayCount')}
        />
        <NumberField label={text.freeDays} value={plan.freeDays} maximum={365} {...at('freeDays')} isRequired />
        <MoneyField
          label={text.drawFee}
          valueCents={plan.drawFeeCents}
          currency={currency}
          {...at('drawFeeCents')}
          isRequired
        />
        <NumberField
          label={text.payoff}
          value={plan.payoffWorkingDays}
          maximum={60}
          hint={text.payoffHint}
          {...at('payoffWorkingDays')}
        />
        <PercentField
          label={text.floorOriginal}
          ppm={floor?.ofOriginalPpm ?? null}
          onChange={(ppm) => setFloor('ofOriginalPpm', ppm)}
          hint={text.floorHint}
          isReadOnly={isReadOnly}
        />
        <PercentField
          label={text.floorWholesale}
          ppm={floor?.ofWholesalePpm ?? null}
          onChange={(ppm) => setFloor('ofWholesalePpm', ppm)}
          isReadOnly={isReadOnly}
        />
      </div>
      <CurtailmentRows {...props} />
      <RateRows {...props} />
      {!isReadOnly && (
        <Button kind="quiet" label={text.removePlan(name)} onPress={onRemove}>
          {text.removePlan(name)}
        </Button>
      )}
    </fieldset>
  );
}
