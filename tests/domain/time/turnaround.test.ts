// What the shop's history says about how long things take: which cases there are, and what is answered from them, step by step.
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../app/domain/shared/day.ts';
import {
  askTurnaround,
  everyCase,
  type TurnaroundQuestion,
  turnaroundHistory,
  turnaroundSummary,
} from '../../../app/domain/time/turnaround.ts';
import {
  codeGroups,
  providerGroups,
  type TurnaroundCase,
  turnaroundCases,
} from '../../../app/domain/time/turnaround-cases.ts';
import {
  firstTurnaroundSettings,
  turnaroundKinds,
  turnaroundSettingsSchema,
} from '../../../app/domain/time/turnaround-settings.ts';
import {
  cleaned,
  makeAttempt,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeJob,
  makeLabour,
  makePart,
  makeScan,
  makeStep,
  makeSublet,
  makeVehicle,
  roadTest,
} from '../../helpers/vehicle-maker.ts';

const calendar = { workDays: [1, 2, 3, 4, 5], minutesPerDay: 480, holidays: [] };
const settings = { ...firstTurnaroundSettings, fewestCases: 3 };
const asOf = '2026-06-01';

/** Monday 5 January 2026 and days after it. */
const day = (offset: number) => addDays('2026-01-05', offset);

describe('the cases of a vehicle', () => {
  const fault = makeFault(day(1), { area: 'brakes', decision: makeDecision(day(2)), doneOn: day(15) });
  const left = makeFault(day(1), { area: 'body', decision: makeDecision(day(3), { kind: 'leave', reason: 'old' }) });
  const part = makePart(day(2), {
    supplier: ' North  Yard ',
    faultId: fault.id,
    orderedOn: day(4),
    expectedOn: day(9),
    receivedOn: day(11),
  });
  const step = makeStep({ typicalMinutes: 30 });
  const job = makeJob(day(3), { module: 'Body control', steps: [step] });
  const vehicle = makeVehicle(day(0), {
    purchase: { source: 'Auction', paperReceivedOn: day(20), paperExpectedOn: day(14) },
    arrival: { arrivedOn: day(1), expectedOn: day(1) },
    scans: [makeScan(day(1))],
    faults: [fault, left],
    parts: [part],
    codeRequests: [
      makeCodeRequest(day(2), {
        kind: 'radio',
        askedOf: 'Desk',
        askedOn: day(2),
        answeredOn: day(5),
        outcome: 'given',
      }),
      makeCodeRequest(day(2), { askedOn: day(3) }),
    ],
    sublets: [makeSublet(day(4), { sentOn: day(7), backOn: day(10), expectedOn: day(10) })],
    jobs: [job],
    attempts: [makeAttempt(day(7), job, step.id)],
    labour: [makeLabour(day(15), { minutes: 600, faultId: fault.id })],
  });
  const cases = turnaroundCases(vehicle, [roadTest, cleaned], calendar);
  const of = (kind: string) => cases.filter((one) => one.kind === kind).map(({ days }) => days);

  it('are counted in calendar days for what others do, and in days of the shop for its own turns', () => {
    expect(of('arrival')).toEqual([1]);
    expect(of('part')).toEqual([7]);
    expect(of('paper')).toEqual([20]);
    expect(of('sublet')).toEqual([3]);
    // Tuesday to Wednesday, Tuesday to Thursday; needed on Wednesday, ordered on Friday; noted on Friday, sent on Monday
    expect(of('decide')).toEqual([1, 2]);
    expect(of('order')).toEqual([2]);
    expect(of('send')).toEqual([1]);
    // everything in hand on Thursday to Monday is two days of the shop
    expect(of('programming')).toEqual([2]);
  });

  it('leave out the whole days that the booked work itself took: ten hours are one day of eight', () => {
    // the part came on Friday 16 January, done on Tuesday 20 January: two days of the shop, one of them worked
    expect(of('repair')).toEqual([1]);
    expect(of('fault')).toEqual([13, 0]);
  });

  it('know how late a promise was kept', () => {
    const late = (kind: string) => cases.find((one) => one.kind === kind)?.lateDays;
    expect([late('arrival'), late('part'), late('paper'), late('sublet'), late('code')]).toEqual([0, 2, 6, 0, null]);
  });

  it('hold only what has ended', () => {
    expect(of('code')).toEqual([3]);
    expect(of('verify')).toEqual([]);
  });

  it('bring together the same provider however it is typed', () => {
    expect(cases.find(({ kind }) => kind === 'part')?.groups).toEqual(['provider: north yard']);
    expect(providerGroups('NORTH YARD')).toEqual(['provider: north yard']);
    expect(providerGroups('  ')).toEqual([]);
    expect(codeGroups('Desk', 'radio')).toEqual(['provider: desk, kind: radio', 'provider: desk', 'kind: radio']);
    expect(codeGroups('', 'radio')).toEqual(['kind: radio']);
  });
});

function partCase(days: number, about: Partial<TurnaroundCase> = {}): TurnaroundCase {
  return { kind: 'part', groups: ['provider: yard'], days, lateDays: null, endedOn: '2026-03-01', ...about };
}

function ask(cases: readonly TurnaroundCase[], about: Partial<TurnaroundQuestion> = {}) {
  const question = {
    kind: 'part',
    groups: ['provider: yard'],
    elapsedDays: 0,
    promisedInDays: null,
    ...about,
  } as const;
  return askTurnaround(turnaroundHistory(cases), question, asOf, settings);
}

describe('the answer', () => {
  const other = (days: number) => partCase(days, { groups: ['provider: other'] });

  it('comes from the provider where it has enough cases, and says how many', () => {
    expect(ask([partCase(9), partCase(2), partCase(4), other(30)])).toEqual({
      daysToGo: [2, 4, 9],
      basis: 'turnaround',
      group: 'provider: yard',
      cases: 3,
    });
  });

  it('comes from all cases of the kind where the provider has too few, and from the setting where there are too few at all', () => {
    expect(ask([partCase(9), partCase(2), other(30)])).toMatchObject({ daysToGo: [2, 9, 30], group: everyCase });
    expect(ask([partCase(9), partCase(2)])).toEqual({ daysToGo: [5], basis: 'setting', group: everyCase, cases: 0 });
  });

  it('tells by kind of code before all codes when the provider is new', () => {
    const codeCase = (days: number, kind: string): TurnaroundCase => ({
      ...partCase(days),
      kind: 'code',
      groups: codeGroups('Old desk', kind),
    });
    const cases = [codeCase(1, 'radio'), codeCase(1, 'radio'), codeCase(2, 'radio'), codeCase(20, 'gateway')];
    const answer = ask(cases, { kind: 'code', groups: codeGroups('New desk', 'radio') });
    expect(answer).toMatchObject({ daysToGo: [1, 1, 2], group: 'kind: radio' });
  });

  it('counts only cases that lasted as long as this one already has', () => {
    const cases = [2, 4, 9, 11, 30].map((days) => partCase(days));
    expect(ask(cases, { elapsedDays: 9 }).daysToGo).toEqual([0, 2, 21]);
  });

  it('begins anew when it has gone on longer than any, at least a day more', () => {
    const cases = [0, 4, 9].map((days) => partCase(days));
    expect(ask(cases, { elapsedDays: 40 })).toMatchObject({ daysToGo: [1, 4, 9], basis: 'turnaround' });
    expect(ask([], { elapsedDays: 40 })).toMatchObject({ daysToGo: [5], basis: 'setting' });
    expect(ask([], { elapsedDays: 2 })).toMatchObject({ daysToGo: [3], basis: 'setting' });
  });

  it('takes a promise with what earlier promises were worth, and at its word without any', () => {
    const cases = [-1, 0, 6].map((lateDays) => partCase(5, { lateDays }));
    expect(ask(cases, { promisedInDays: 3 })).toMatchObject({ daysToGo: [2, 3, 9], basis: 'promises', cases: 3 });
    expect(ask([partCase(5)], { promisedInDays: 3 })).toMatchObject({ daysToGo: [3], basis: 'promise', cases: 0 });
  });

  it('takes a promise that has passed for one of those that were kept later still', () => {
    const cases = [0, 1, 4, 6, 9].map((lateDays) => partCase(20, { lateDays }));
    expect(ask(cases, { promisedInDays: -4 }).daysToGo).toEqual([0, 2, 5]);
    // too few were ever so late: asked by how long it has gone on instead
    expect(ask(cases, { promisedInDays: -8, elapsedDays: 15 })).toMatchObject({
      daysToGo: [5, 5, 5, 5, 5],
      basis: 'turnaround',
    });
  });

  it('knows on a day only what had ended before it', () => {
    const cases = [
      partCase(1, { endedOn: '2026-05-30' }),
      partCase(2, { endedOn: '2026-05-31' }),
      partCase(3, { endedOn: '2026-05-31' }),
      partCase(50, { endedOn: asOf }),
      partCase(60, { endedOn: '2026-07-01' }),
    ];
    expect(ask(cases).daysToGo).toEqual([1, 2, 3]);
  });
});

describe('the summary', () => {
  it('names who keeps the shop waiting longest first, and how often promises were broken', () => {
    const cases = [
      partCase(2, { lateDays: 0 }),
      partCase(8, { lateDays: 3 }),
      partCase(4),
      partCase(20, { groups: ['provider: other'] }),
    ];
    expect(turnaroundSummary(turnaroundHistory(cases), ['part'], asOf)).toEqual([
      { kind: 'part', group: 'provider: other', cases: 1, medianDays: 20, longestDays: 20, promised: 0, late: 0 },
      { kind: 'part', group: everyCase, cases: 4, medianDays: 4, longestDays: 20, promised: 2, late: 1 },
      { kind: 'part', group: 'provider: yard', cases: 3, medianDays: 4, longestDays: 8, promised: 2, late: 1 },
    ]);
  });
});

describe('the first settings', () => {
  it('are whole and have a figure for every kind', () => {
    expect(turnaroundSettingsSchema.parse(firstTurnaroundSettings)).toEqual(firstTurnaroundSettings);
    expect(Object.keys(firstTurnaroundSettings.days).sort()).toEqual([...turnaroundKinds].sort());
  });
});
