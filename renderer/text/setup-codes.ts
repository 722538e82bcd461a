// Words of Setup about codes: their kinds, the forms to file, and what becomes of kept codes after a sale.
import type { FormCharacters, RequestNeed } from '../../app/domain/codes/code-kinds.ts';
import { plural } from '../../app/domain/shared/text.ts';

const needs: Readonly<Record<RequestNeed, string>> = {
  vin: 'VIN',
  'device-serial': 'serial of the unit',
  module: 'module',
  reason: 'what it is needed for',
};

const characters: Readonly<Record<FormCharacters, string>> = {
  digits: 'digits',
  'letters-and-digits': 'letters and digits',
};

export const setupCodesText = {
  kindsHint:
    'What a request of each kind must carry, and how such codes and serials usually look. A value that looks otherwise can be kept with a reason. Beside each stands where it is from; change what is different where you work.',
  addKind: 'Add a kind',
  newKind: 'New kind',
  removeKind: (name: string) => `Remove ${name}`,
  name: 'Name',
  needs: 'A request must carry',
  needNames: needs,
  active: 'Offered for new requests',
  off: 'switched off',
  codeForm: 'The code is usually of',
  characters,
  noForm: 'no usual form',
  lengths: 'How many characters',
  lengthsHint: 'One number, or several with commas.',
  triesAllowed: 'Wrong codes until it locks',
  lockOutMinutes: 'Locked for, minutes',
  unknownHint: 'Empty: not known.',
  advice: 'To know before asking or trying',
  source: 'Source',
  serials: 'The serial of the unit is usually',
  consistsOf: 'Consists of',
  fromYear: 'From model year',
  toYear: 'To model year',
  beginsWith: 'Begins with',
  length: 'Characters in all',
  addSerial: 'Add a usual serial',
  removeSerial: (row: number) => `Remove usual serial ${row}`,
  usualSerial: (row: number) => `Usual serial ${row}`,
  remove: 'Remove',
  sayKind: ({
    needs: needed,
    codeForm,
  }: {
    readonly needs: readonly RequestNeed[];
    readonly codeForm: { readonly characters: FormCharacters; readonly lengths: readonly (number | null)[] } | null;
  }) => {
    const carries = needed.length === 0 ? 'nothing besides the proof' : needed.map((need) => needs[need]).join(', ');
    const form = codeForm === null ? '' : `; ${codeForm.lengths.join(' or ')} ${characters[codeForm.characters]}`;
    return `${carries}${form}`;
  },

  filingHint:
    'Schemes that want a form filed after a code was given. A request that names one reminds of the day; the program files nothing.',
  filingName: 'Scheme and form',
  withinDays: 'Within, days',
  otherwise: 'Otherwise',
  addFiling: 'Add a form',
  newFiling: 'new form',
  removeFiling: (name: string) => `Remove ${name}`,
  ofFiling: (label: string, row: number) => `${label}, form ${row}`,

  daysHint:
    'Counted from the sale, or from the day on which a vehicle was taken out of the fleet. The record keeps that there was a code. The code itself is gone then, for everybody.',
  days: 'Days after the sale until a kept code is destroyed',
  daysUnit: (days: number) => plural(days, 'day', 'days').replace(/^\d+ /, ''),
} as const;
