// The day by which the balance of a sold vehicle must be paid back to its lender. Interest until then is in funding-cost.ts.
import type { Day } from '../shared/day.ts';
import { addWorkingDays, type WorkingCalendar } from '../time/working-calendar.ts';
import type { FundingPlan } from './funding-plan.ts';

/**
 * So many working days after the sale; null when the plan names none. The shop's own calendar stands for the lender's. A public retailer's
 * debt note (SEC, third quarter of 2017) has 5 business days.
 */
export function payoffDueOn(
  plan: Pick<FundingPlan, 'payoffWorkingDays'>,
  soldOn: Day,
  calendar: WorkingCalendar,
): Day | null {
  return plan.payoffWorkingDays === null ? null : addWorkingDays(calendar, soldOn, plan.payoffWorkingDays);
}
