// What the vehicle costs, at a glance; each figure goes to the table of figures.
import './money.css';
import type { Costs } from '../../../../app/domain/money/costs.ts';
import { type Cents, showCents } from '../../../../app/domain/shared/cents.ts';
import { moneyText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { SectionHead } from '../../../ui/section-head.tsx';
import { goToSection } from '../page/jump.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { Amount } from './margin-facts.tsx';

type Row = { readonly label: string; readonly cents: Cents | null; readonly isSum?: boolean };

export function MoneySummary({ costs }: { readonly costs: Costs }) {
  const { vehicle } = useVehicle();
  const later = costs.committedCents + costs.toComeCents;
  const rows: readonly Row[] = [
    { label: moneyText.purchaseAndFees, cents: costs.acquisitionCents },
    { label: moneyText.reconditioning, cents: costs.reconditioningCents },
    { label: moneyText.holding, cents: costs.holdingCents },
    { label: moneyText.spent, cents: costs.spentCents, isSum: true },
    { label: moneyText.committedAndToCome, cents: later },
    vehicle.sale === null
      ? { label: moneyText.asking, cents: vehicle.targets.askingCents }
      : { label: moneyText.soldFor, cents: vehicle.sale.priceCents },
    { label: moneyText.marginExpected, cents: costs.marginExpectedCents, isSum: true },
  ];
  return (
    <section className="money-summary" aria-label={moneyText.summary}>
      <SectionHead
        title={moneyText.summary}
        level={2}
        action={
          <Button kind="quiet" onPress={() => goToSection('money')}>
            {moneyText.details}
          </Button>
        }
      />
      <dl>
        {rows.map((row) => (
          <div key={row.label} className={row.isSum ? 'is-sum' : undefined}>
            <dt>{row.label}</dt>
            <dd className="amount">
              {row.cents === null ? '–' : row.isSum ? <Amount cents={row.cents} /> : showCents(row.cents)}
            </dd>
          </div>
        ))}
      </dl>
      {costs.missing.length > 0 && (
        <p className="money-missing">
          {moneyText.missing} {costs.missing.slice(0, 3).join('; ')}
          {costs.missing.length > 3 ? ` + ${costs.missing.length - 3}` : ''}.
        </p>
      )}
    </section>
  );
}
