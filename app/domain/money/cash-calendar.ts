// What falls due to lenders over the whole fleet, day by day: payments on principal and pay-offs of sold vehicles. Interest is not here.
import type { Cents } from '../shared/cents.ts';
import type { Day } from '../shared/day.ts';
import type { Identifier } from '../shared/identifier.ts';
import { type CurtailmentPayment, curtailmentPayments, type Draw } from './curtailments.ts';
import type { FundingPlan } from './funding-plan.ts';
import type { Payoff } from './payoff.ts';

export type FundedVehicle = { readonly vehicleId: Identifier; readonly plan: FundingPlan; readonly draw: Draw };
export type OwedAfterSale = Payoff & { readonly vehicleId: Identifier; readonly soldOn: Day };

export type CashPayment = CurtailmentPayment & {
  readonly vehicleId: Identifier;
  readonly kind: 'on-principal' | 'payoff';
};

export type CashDay = {
  readonly dueOn: Day;
  readonly cents: Cents;
  readonly payments: readonly CashPayment[];
};

/**
 * What is due from `from` through `through`, earliest day first; days without a payment are left out. Payments on principal are those of
 * unsold vehicles, if nothing is sold before; those of earlier days count as paid. A pay-off that nobody has recorded as paid stays due
 * on its day, also when that day has gone by.
 */
export function cashCalendar(
  vehicles: readonly FundedVehicle[],
  sold: readonly OwedAfterSale[],
  { from, through }: { readonly from: Day; readonly through: Day },
): readonly CashDay[] {
  const byDay = new Map<Day, CashPayment[]>();
  const add = (payment: CashPayment) => {
    const ofDay = byDay.get(payment.dueOn) ?? [];
    ofDay.push(payment);
    byDay.set(payment.dueOn, ofDay);
  };
  for (const { vehicleId, cents, dueOn, soldOn } of sold)
    if (dueOn <= through)
      add({ vehicleId, kind: 'payoff', dueOn, cents, balanceAfterCents: 0, what: `Pay-off, sold on ${soldOn}` });
  for (const { vehicleId, plan, draw } of vehicles)
    for (const payment of curtailmentPayments(plan, draw, through))
      if (payment.dueOn >= from) add({ ...payment, vehicleId, kind: 'on-principal' });
  return [...byDay]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([dueOn, payments]) => ({
      dueOn,
      cents: payments.reduce((sum, { cents }) => sum + cents, 0),
      payments,
    }));
}
