// Words of the sections of Setup about inspections and about the supply while programming.
import type { InspectionFuel, InspectionRule } from '../../app/domain/diagnosis/inspection-schemes.ts';
import { plural } from '../../app/domain/shared/text.ts';

export const setupDiagnosisText = {
  inspectionHint:
    'How many incomplete monitors each inspection lets pass, with where that was read and when. The program does not follow the law: compare each rule with the rule itself, write the day, and correct what is out of date.',
  chosen: 'Vehicles are judged by',
  noneChosen: 'no inspection',
  schemeName: 'Name of the inspection',
  checkedOn: 'Compared with the rule itself on',
  neverChecked: 'never compared with the rule itself',
  checked: (day: string) => `compared ${day}`,
  rules: (count: number) => plural(count, 'rule', 'rules'),
  fuel: 'Fuel',
  fuels: { petrol: 'petrol', diesel: 'diesel', hybrid: 'hybrid', electric: 'electric' } satisfies Record<
    InspectionFuel,
    string
  >,
  years: 'Model years',
  from: 'From model year',
  to: 'To model year; empty: no end',
  allowed: 'Incomplete allowed',
  allowances: {
    any: 'any, at most',
    only: 'only these',
    'not-looked-at': 'not looked at',
  } satisfies Record<InspectionRule['allowance']['kind'], string>,
  most: 'At most',
  source: 'Source',
  sourceDated: 'Dated',
  remark: 'Remark',
  numbered: (label: string, rule: number, scheme: string) => `${label}, rule ${rule} of ${scheme}`,
  fuelOf: (fuel: string, rule: number, scheme: string) => `Rule ${rule} of ${scheme} holds for ${fuel}`,
  monitorOf: (monitor: string, rule: number, scheme: string) =>
    `Rule ${rule} of ${scheme} lets ${monitor} be incomplete`,
  addRule: 'Add a rule',
  removeRule: (rule: number, scheme: string) => `Remove rule ${rule} of ${scheme}`,
  addScheme: 'Add an inspection',
  removeScheme: (scheme: string) => `Remove this inspection: ${scheme}`,
  removeThis: 'Remove this inspection',
  newScheme: 'New inspection',
  permanentCodes: 'A stored permanent code fails',
  permanentFrom: 'From model year',
  warmUps: 'Until warm-ups',
  distance: 'and miles since the clear',
  remove: 'Remove',

  supportHint:
    'Between which volts the supply has to stay while a module is programmed. A make without its own row takes the row without a make; the maker’s service information comes before this table.',
  make: 'Make',
  everyMake: 'every other make',
  lowest: 'Lowest',
  highest: 'Highest',
  volts: 'V',
  ofRow: (label: string, row: number) => `${label}, row ${row}`,
  addMake: 'Add a make',
  removeRow: (row: number) => `Remove row ${row}`,
} as const;
