// A row of the lot for tests, with only what the test is about said.
import type { LotRow } from '../../../../app/contract/views.ts';
import { addDays, type Day } from '../../../../app/domain/shared/day.ts';
import type { Standing } from '../../../../app/domain/time/cause.ts';

export const today: Day = '2026-03-04';

type RowFacts = Partial<LotRow['identity']> & {
  readonly standing?: Standing;
  readonly standingDays?: number;
  readonly heldDays?: number;
  readonly idleDays?: number;
  readonly spentCents?: number;
  readonly marginLeftCents?: number | null;
  readonly hidesMoney?: boolean;
  readonly nextMove?: LotRow['nextMove'];
};

let made = 0;

export function makeRow(facts: RowFacts = {}): LotRow {
  const {
    standing = 'part',
    standingDays = 0,
    heldDays = 10,
    idleDays = 0,
    spentCents = 500_000,
    marginLeftCents = 100_000,
    hidesMoney = false,
    nextMove = null,
    ...identity
  } = facts;
  made += 1;
  return {
    id: `row-${made}`,
    identity: {
      stockNumber: `S${made}`,
      vin: '',
      modelYear: 2019,
      make: 'Merrowick',
      model: 'Hearth',
      colour: '',
      location: '',
      keyTag: '',
      ...identity,
    },
    boughtOn: addDays(today, -heldDays),
    held: {
      heldDays,
      stretches: [],
      byCause: idleDays > 0 ? { idle: idleDays } : {},
      now: { standing, since: addDays(today, -standingDays), what: '', expectedOn: null },
    },
    nextMove,
    holdingGates: 1,
    isReady: false,
    askingCents: null,
    forecast: null,
    money: hidesMoney
      ? null
      : { paymentsOn: [], spentCents, marginLeftCents, marginExpectedCents: marginLeftCents, breakEvenOn: null },
  };
}
