// Small valid funding plans for tests: 8 % on the whole price, nothing else, with only what the test is about spelled out.
import type { Draw } from '../../../app/domain/money/curtailments.ts';
import type { Curtailment, FundingPlan } from '../../../app/domain/money/funding-plan.ts';

export function makePlan(about: Partial<FundingPlan> = {}): FundingPlan {
  return {
    id: 'plan-1',
    name: 'Invented lender',
    advancePpm: 1_000_000,
    ratePpm: 80_000,
    rateChanges: [],
    dayCount: 'actual-360',
    freeDays: 0,
    drawFeeCents: 0,
    curtailments: [],
    floor: null,
    payoffWorkingDays: null,
    ...about,
  };
}

export function tenPercentOfOriginal(dayMark: number, every: Curtailment['every'] = null): Curtailment {
  return { kind: 'percent-of-original', dayMark, valuePpm: 100_000, every };
}

export function makeDraw(about: Partial<Draw> = {}): Draw {
  return { principalCents: 20_000_00, drawnOn: '2026-01-05', wholesaleCents: null, ...about };
}
