// The plans under which lenders pay for vehicles.
import type { FundingPlan } from '../../../app/domain/money/funding-plan.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { newIdentifier } from '../../state/new-identifier.ts';
import type { Blankable } from '../../state/shop-parts.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupMoneyText as text } from '../../text/setup-money.ts';
import { Button } from '../../ui/button.tsx';
import { PlanFields, type TypedPlan } from './plan-fields.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

function freshPlan(): TypedPlan {
  return {
    id: newIdentifier(),
    name: '',
    advancePpm: 1_000_000,
    ratePpm: null,
    rateChanges: [],
    dayCount: 'actual-360',
    freeDays: 0,
    drawFeeCents: 0,
    curtailments: [],
    floor: null,
    payoffWorkingDays: null,
  };
}

export function FundingSection({
  kept,
  currency,
  today,
  ...section
}: SectionProps & { readonly kept: readonly FundingPlan[]; readonly currency: string; readonly today: Day }) {
  const { state } = section;
  const plans: readonly Blankable<FundingPlan>[] = state.drafts.fundingPlans ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  return (
    <SectionForm
      {...section}
      part="fundingPlans"
      count={plans.length}
      hint={text.plansHint}
      extraAction={
        !isReadOnly && (
          <Button kind="quiet" onPress={() => typeIntoShop('fundingPlans', [...plans, freshPlan()], '')}>
            {text.addPlan}
          </Button>
        )
      }
    >
      {plans.length === 0 && <p className="quiet">{text.noPlans}</p>}
      {plans.map((plan, index) => (
        <PlanFields
          key={plan.id}
          plan={plan}
          currency={currency}
          today={today}
          isReadOnly={isReadOnly}
          problemAt={(field) => problemAt(state, 'fundingPlans', `${index}.${field}`)}
          onChange={(changed, field) =>
            typeIntoShop(
              'fundingPlans',
              plans.map((other, at) => (at === index ? changed : other)),
              `${index}.${field}`,
            )
          }
          onRemove={() =>
            typeIntoShop(
              'fundingPlans',
              plans.filter((_, at) => at !== index),
              '',
            )
          }
        />
      ))}
    </SectionForm>
  );
}
