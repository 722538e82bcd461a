// Rules inside one section of the record that a schema cannot say: the VIN, and days that must be in order.

import { groupBudgetsCents } from '../money/budget.ts';
import { assertNever } from '../shared/assert-never.ts';
import { showCents } from '../shared/cents.ts';
import type { Day } from '../shared/day.ts';
import type { SetChange } from './change.ts';
import type { ChangeProblem } from './change-problem.ts';
import type { Identity } from './identity.ts';
import type { Market } from './market.ts';
import type { Sale, Targets } from './purchase.ts';
import type { Vehicle } from './vehicle.ts';
import { readVin } from './vin.ts';

/** What stands against keeping this identity. A VIN whose check digit fails where it must hold needs a reason, not a correction. */
export function identityProblems(identity: Identity, market: Market): readonly ChangeProblem[] {
  if (identity.vin === '') {
    if (identity.vinReason.trim() !== '') return [];
    return [{ field: 'vin', sentence: 'Enter the VIN, or say beside it why it is not known yet.' }];
  }
  const reading = readVin(identity.vin, { market });
  const blocking = reading.problems.filter(
    (problem) => problem.severity === 'block' || (problem.severity === 'override' && identity.vinReason.trim() === ''),
  );
  return blocking.map((problem) => ({
    field: 'vin',
    sentence:
      problem.severity === 'override' ? `${problem.sentence} Correct it, or say why it is kept.` : problem.sentence,
  }));
}

function happened(today: Day, boughtOn: Day, field: string, name: string, day: Day | null): ChangeProblem[] {
  if (day === null) return [];
  if (day > today)
    return [{ field, sentence: `${name} lies in the future (${day}). Write the day on which it happened.` }];
  if (day < boughtOn)
    return [{ field, sentence: `${name} (${day}) is before the purchase (${boughtOn}). Correct one of the two days.` }];
  return [];
}

/** The price may be older than the purchase: some are priced before they are bought. */
function targetProblems(targets: Targets, today: Day): ChangeProblem[] {
  const problems = happened(today, '1900-01-01', 'pricedOn', 'The day of the asking price', targets.pricedOn);
  const groups = groupBudgetsCents(targets);
  if (targets.budgetCents !== null && groups !== null && groups > targets.budgetCents)
    problems.push({
      field: 'budgetCents',
      sentence: `The budgets of the groups come to ${showCents(groups)}, more than this. Raise it, lower one of them, or leave it empty.`,
    });
  return problems;
}

function saleProblems(sale: Sale, boughtOn: Day, today: Day): ChangeProblem[] {
  const problems = happened(today, boughtOn, 'soldOn', 'The day of the sale', sale.soldOn);
  problems.push(...happened(today, boughtOn, 'paidOffOn', 'The day the lender was paid', sale.paidOffOn));
  if (problems.length === 0 && sale.paidOffOn !== null && sale.paidOffOn < sale.soldOn)
    problems.push({
      field: 'paidOffOn',
      sentence: `The lender would have been paid (${sale.paidOffOn}) before the sale (${sale.soldOn}). Correct one of the two days.`,
    });
  return problems;
}

/** What is wrong with a section as a whole, as seen today and beside the rest of the record; empty when nothing is. */
export function sectionProblems(
  change: SetChange,
  vehicle: Pick<Vehicle, 'purchase' | 'arrival' | 'sale'>,
  context: { readonly today: Day; readonly market: Market },
): readonly ChangeProblem[] {
  const { today, market } = context;
  switch (change.section) {
    case 'identity':
      return identityProblems(change.value, market);
    case 'purchase': {
      const { boughtOn, paperReceivedOn } = change.value;
      const problems = happened(today, '1900-01-01', 'boughtOn', 'The day of purchase', boughtOn);
      problems.push(...happened(today, '1900-01-01', 'paperReceivedOn', 'The day the paper came', paperReceivedOn));
      for (const [name, day] of [
        ['arrival', vehicle.arrival.arrivedOn],
        ['sale', vehicle.sale?.soldOn ?? null],
      ] as const) {
        if (day !== null && day < boughtOn)
          problems.push({
            field: 'boughtOn',
            sentence: `The purchase would be after the ${name} (${day}). Correct one of the two days.`,
          });
      }
      return problems;
    }
    case 'arrival':
      return happened(today, vehicle.purchase.boughtOn, 'arrivedOn', 'The day of arrival', change.value.arrivedOn);
    case 'targets':
      return targetProblems(change.value, today);
    case 'sale':
      return change.value === null ? [] : saleProblems(change.value, vehicle.purchase.boughtOn, today);
    default:
      return assertNever(change, 'section');
  }
}
