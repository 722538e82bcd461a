// Targets, and the money of the vehicle by group. Drawn only for whoever sees money.
import './money.css';
import type { Costs } from '../../../../app/domain/money/costs.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import { type Targets, targetsSchema } from '../../../../app/domain/vehicle/purchase.ts';
import { moneyText } from '../../../text/vehicle.ts';
import { Facts } from '../../../ui/facts.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { FieldPlace } from '../ledger/field-place.tsx';
import { SectionForm } from '../ledger/section-form.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';
import { CostFigures } from './cost-figures.tsx';
import { FinishOrLetGoFacts } from './finish-or-let-go.tsx';
import { MarginFacts } from './margin-facts.tsx';
import { WhatIf } from './what-if.tsx';

function TargetsForm() {
  const { vehicle, currency } = useVehicle();
  const { targets } = vehicle;
  const amount = (cents: number | null) => (cents === null ? null : showCents(cents));
  return (
    <SectionForm<Targets>
      part="targets"
      label={moneyText.targets}
      schema={targetsSchema}
      base={targets}
      toChange={(value) => ({ kind: 'set', section: 'targets', value })}
      shown={
        <Facts
          rows={[
            { label: moneyText.asking, value: amount(targets.askingCents), isAmount: true },
            { label: moneyText.budget, value: amount(targets.budgetCents), isAmount: true },
            { label: moneyText.tradeValue, value: amount(targets.tradeValueCents), isAmount: true },
            { label: moneyText.marginFloor, value: amount(targets.marginFloorCents), isAmount: true },
          ]}
        />
      }
      form={(edit) => (
        <div className="field-grid">
          <FieldPlace name="askingCents">
            <MoneyField label={moneyText.asking} {...edit.centsAt('askingCents')} currency={currency} />
          </FieldPlace>
          <MoneyField label={moneyText.budget} {...edit.centsAt('budgetCents')} currency={currency} />
          <MoneyField label={moneyText.tradeValue} {...edit.centsAt('tradeValueCents')} currency={currency} />
          <MoneyField label={moneyText.marginFloor} {...edit.centsAt('marginFloorCents')} currency={currency} />
        </div>
      )}
    />
  );
}

export function MoneySection({ costs }: { readonly costs: Costs }) {
  const { view } = useVehicle();
  return (
    <VehicleSection section="money" title={moneyText.title}>
      <div className="section-columns">
        <div>
          <CostFigures costs={costs} />
          {view.prospect !== null && (
            <>
              <FinishOrLetGoFacts prospect={view.prospect} />
              <WhatIf />
            </>
          )}
        </div>
        <div>
          <TargetsForm />
          <MarginFacts costs={costs} />
        </div>
      </div>
    </VehicleSection>
  );
}
