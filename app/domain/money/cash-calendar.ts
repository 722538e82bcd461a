// The payments on principal that fall due over the whole fleet, day by day. Interest and pay-offs at a sale are not here.
import type { Cents } from '../shared/cents.ts';
import type { Day } from '../shared/day.ts';
import type { Identifier } from '../shared/identifier.ts';
import { type CurtailmentPayment, curtailmentPayments, type Draw } from './curtailments.ts';
import type { FundingPlan } from './funding-plan.ts';

export type FundedVehicle = { readonly vehicleId: Identifier; readonly plan: FundingPlan; readonly draw: Draw };

export type CashDay = {
  readonly dueOn: Day;
  readonly cents: Cents;
  readonly payments: readonly (CurtailmentPayment & { readonly vehicleId: Identifier })[];
};

/** What is due from `from` through `through` if nothing is sold before, earliest day first; days without a payment are left out. */
export function cashCalendar(
  vehicles: readonly FundedVehicle[],
  { from, through }: { readonly from: Day; readonly through: Day },
): readonly CashDay[] {
  const byDay = new Map<Day, (CurtailmentPayment & { readonly vehicleId: Identifier })[]>();
  for (const { vehicleId, plan, draw } of vehicles)
    for (const payment of curtailmentPayments(plan, draw, through)) {
      if (payment.dueOn < from) continue;
      const ofDay = byDay.get(payment.dueOn) ?? [];
      ofDay.push({ ...payment, vehicleId });
      byDay.set(payment.dueOn, ofDay);
    }
  return [...byDay]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([dueOn, payments]) => ({
      dueOn,
      cents: payments.reduce((sum, { cents }) => sum + cents, 0),
      payments,
    }));
}
