// What is still owed to the lender of a vehicle that has been sold, and by when. Interest until it is paid is in vehicle-holding.ts.
import type { Cents } from '../shared/cents.ts';
import type { Day } from '../shared/day.ts';
import type { WorkingCalendar } from '../time/working-calendar.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { curtailmentPayments } from './curtailments.ts';
import type { FundingPlan } from './funding-plan.ts';
import { payoffDueOn } from './payoff-day.ts';
import { fundingOf } from './vehicle-holding.ts';

export type Payoff = {
  /** Principal owed at the end of the day of the sale. */
  readonly cents: Cents;
  /** The day of the sale itself when the plan gives no time. */
  readonly dueOn: Day;
};

/**
 * The pay-off of a vehicle that was sold and whose lender has not been paid as far as the record says; null for any other. Payments on
 * the principal that fell due through the day of the sale count as paid. A plan that names no time after the sale: due with the sale
 * ("common practice, no source").
 */
export function openPayoff(
  vehicle: Pick<Vehicle, 'purchase' | 'targets' | 'sale'>,
  { fundingPlans, calendar }: { readonly fundingPlans: readonly FundingPlan[]; readonly calendar: WorkingCalendar },
): Payoff | null {
  const { sale } = vehicle;
  const funding = fundingOf(vehicle, fundingPlans);
  if (sale === null || sale.paidOffOn !== null || funding === null) return null;
  const { plan, draw } = funding;
  const payments = curtailmentPayments(plan, draw, sale.soldOn);
  const cents = payments[payments.length - 1]?.balanceAfterCents ?? draw.principalCents;
  return cents === 0 ? null : { cents, dueOn: payoffDueOn(plan, sale.soldOn, calendar) ?? sale.soldOn };
}
