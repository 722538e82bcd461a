// The parts of the settings in which two states differ, by the names that Setup gives them.
import type { Shop } from '../domain/fleet/shop.ts';

const partNames: Readonly<Record<keyof Shop, string>> = {
  dealer: 'Dealer',
  rates: 'Rates',
  people: 'People',
  checklist: 'Checklist',
  rulePacks: 'Rules of programming',
  fundingPlans: 'Funding plans',
  saleTax: 'Tax at the sale',
  selling: 'Selling',
  calendar: 'Working days',
  turnaround: 'Usual waits',
  ageingBands: 'Ageing bands',
  valueLoss: 'Loss of value',
  inspection: 'Inspections',
  supportRanges: 'Supply while programming',
  codeKinds: 'Kinds of codes',
  filingRules: 'Forms to file',
  daysUntilCodesAreDestroyed: 'Codes after the sale',
  signIn: 'Signing in',
  sample: 'The sample',
};

export function changedSettings(present: Shop, copy: Shop): readonly string[] {
  return (Object.keys(partNames) as (keyof Shop)[])
    .filter((part) => JSON.stringify(present[part]) !== JSON.stringify(copy[part]))
    .map((part) => partNames[part]);
}
