// Targets, and the money of the vehicle by group. Drawn only for whoever sees money.
import './money.css';
import type { Costs } from '../../../../app/domain/money/costs.ts';
import { moneyText } from '../../../text/vehicle.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';
import { BudgetTable } from './budget-table.tsx';
import { CostFigures } from './cost-figures.tsx';
import { FinishOrLetGoFacts } from './finish-or-let-go.tsx';
import { MarginFacts } from './margin-facts.tsx';
import { TargetsForm } from './targets-form.tsx';
import { WhatIf } from './what-if.tsx';

export function MoneySection({ costs }: { readonly costs: Costs }) {
  const { view } = useVehicle();
  return (
    <VehicleSection section="money" title={moneyText.title}>
      <div className="section-columns">
        <div>
          <CostFigures costs={costs} />
          <BudgetTable budgets={costs.budgets} />
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
