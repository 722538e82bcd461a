// What is left: margin at the start, as it stands and when finished, the day it lasts until, the budget, and what is not counted yet.
import type { Costs } from '../../../../app/domain/money/costs.ts';
import { type Cents, showCents } from '../../../../app/domain/shared/cents.ts';
import { prospectText } from '../../../text/prospect.ts';
import { moneyText, vehicleText } from '../../../text/vehicle.ts';
import { Facts } from '../../../ui/facts.tsx';
import { useVehicle } from '../page/vehicle-context.ts';

export function Amount({ cents }: { readonly cents: Cents | null }) {
  if (cents === null) return <>–</>;
  return <span className={cents < 0 ? 'is-below-nought' : undefined}>{showCents(cents)}</span>;
}

export function MarginFacts({ costs }: { readonly costs: Costs }) {
  const { vehicle, today } = useVehicle();
  const { marginFloorCents } = vehicle.targets;
  const isBelowFloor =
    marginFloorCents !== null && costs.marginExpectedCents !== null && costs.marginExpectedCents < marginFloorCents;
  const used = costs.marginUsedBasisPoints;
  const budgetLeftCents = costs.budgets.find(({ group }) => group === null)?.leftCents ?? null;
  const isSold = vehicle.sale !== null;
  return (
    <div className="margin-facts">
      <Facts
        rows={[
          { label: moneyText.startingMargin, value: <Amount cents={costs.startingMarginCents} />, isAmount: true },
          {
            label: moneyText.marginUsed,
            value: used === null ? null : `${(used / 100).toFixed(1)} %`,
            isAmount: true,
          },
          { label: moneyText.marginLeft, value: <Amount cents={costs.marginLeftCents} />, isAmount: true },
          {
            label: moneyText.marginExpected,
            value: <Amount cents={costs.marginExpectedCents} />,
            isAmount: true,
            isStrong: true,
          },
          ...(costs.taxCents === null || costs.taxCents === 0
            ? []
            : [{ label: prospectText.tax, value: <Amount cents={-costs.taxCents} />, isAmount: true }]),
          ...(isSold
            ? []
            : [
                { label: prospectText.nextDay, value: <Amount cents={costs.nextDayCents} />, isAmount: true },
                {
                  label: moneyText.breakEven,
                  value:
                    costs.breakEvenOn === null
                      ? moneyText.breakEvenNever
                      : vehicleText.lastsUntil(costs.breakEvenOn, today),
                  isAmount: true,
                },
              ]),
          ...(budgetLeftCents === null
            ? []
            : [{ label: moneyText.budgetLeft, value: <Amount cents={budgetLeftCents} />, isAmount: true }]),
        ]}
      />
      {costs.writeDownCents !== null && costs.writeDownCents > 0 && (
        <p className="money-warning" title={prospectText.writeDownTip}>
          {`${prospectText.writeDown}: ${showCents(costs.writeDownCents)}.`}
        </p>
      )}
      {costs.fundingBalanceCents !== null && (
        <p>
          {`${prospectText.balance}: ${showCents(costs.fundingBalanceCents)}`}
          {costs.nextPayment !== null &&
            `; ${prospectText.nextPayment(costs.nextPayment.cents, costs.nextPayment.dueOn, today)}`}
        </p>
      )}
      {isBelowFloor && <p className="money-warning">{`${moneyText.marginExpected}: ${moneyText.belowFloor}.`}</p>}
      {costs.missing.length > 0 && (
        <p className="money-missing">
          {moneyText.missing} {costs.missing.join('; ')}.
        </p>
      )}
    </div>
  );
}
