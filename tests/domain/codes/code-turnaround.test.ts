// How long providers take, and when to chase.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { codeTurnaround, nextChaseOn, turnaroundOf } from '../../../app/domain/codes/code-turnaround.ts';
import { addDays } from '../../../app/domain/shared/day.ts';
import { makeChase, makeRequest } from './request-maker.ts';

const taking = (days: number, askedOf = 'Hillside', kind = 'radio', askedOn = '2026-01-05') => ({
  kind,
  askedOf,
  askedOn,
  answeredOn: addDays(askedOn, days),
});

describe('turnaround', () => {
  it('is median and 80th percentile (nearest rank) by provider and kind', () => {
    const history = [1, 2, 3, 4, 10].map((days) => taking(days));
    expect(codeTurnaround(history)).toEqual([
      { provider: 'Hillside', kind: 'radio', count: 5, medianDays: 3, eightiethDays: 4 },
    ]);
    expect(codeTurnaround([...history, taking(4)])[0]).toMatchObject({ count: 6, medianDays: 3.5, eightiethDays: 4 });
    expect(codeTurnaround([taking(7)])[0]).toMatchObject({ count: 1, medianDays: 7, eightiethDays: 7 });
  });

  it('keeps kinds and providers apart, but not ways of writing the same name', () => {
    const lines = codeTurnaround([
      taking(1, ' hillside '),
      taking(3, 'HillSide', 'radio', '2026-02-01'),
      taking(5, 'Hillside', 'immobiliser'),
      taking(9, 'Lowfield'),
    ]);
    expect(lines.map(({ provider, kind, count }) => [provider, kind, count])).toEqual([
      ['Hillside', 'immobiliser', 1],
      ['HillSide', 'radio', 2],
      ['Lowfield', 'radio', 1],
    ]);
    expect(turnaroundOf(lines, 'HILLSIDE', 'radio')?.medianDays).toBe(2);
    expect(turnaroundOf(lines, 'Hillside', 'gateway')).toBeNull();
  });

  it('leaves out what is open, of nobody, or answered before it was asked', () => {
    expect(
      codeTurnaround([
        { ...taking(3), answeredOn: null },
        { ...taking(3), askedOn: null },
        taking(3, '  '),
        taking(-1),
      ]),
    ).toEqual([]);
  });

  it('has at least four fifths of all answers within its 80th percentile, and no smaller value does', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 1, maxLength: 40 }), (days) => {
        const [line] = codeTurnaround(days.map((each) => taking(each)));
        const within = (limit: number) => days.filter((each) => each <= limit).length / days.length;
        expect(within(line?.eightiethDays ?? -1)).toBeGreaterThanOrEqual(0.8);
        expect(within((line?.eightiethDays ?? 0) - 1)).toBeLessThan(0.8);
      }),
    );
  });
});

describe('the next day to chase', () => {
  const usual = codeTurnaround([2, 2, 3, 5, 9].map((days) => taking(days)));
  const asked = { askedOf: 'Hillside', askedOn: '2026-03-02' };
  const next = (facts: Parameters<typeof makeRequest>[0], today = '2026-03-02') =>
    nextChaseOn(makeRequest({ ...asked, ...facts }), usual, today);

  it('is the day after four of five answers had come', () => {
    expect(next({})).toBe('2026-03-08');
  });

  it('is three days after asking a provider of whom nothing is known', () => {
    expect(next({ askedOf: 'Somebody new' })).toBe('2026-03-05');
  });

  it('is the day after the answer was expected or promised for', () => {
    expect(next({ expectedOn: '2026-03-20' })).toBe('2026-03-21');
    expect(next({ expectedOn: '2026-03-04', chases: [makeChase('2026-03-05', '2026-03-11')] })).toBe('2026-03-12');
  });

  it('is two days after a chase without a promise, or after one that ran out before', () => {
    expect(next({ chases: [makeChase('2026-03-09')] })).toBe('2026-03-11');
    expect(next({ expectedOn: '2026-03-04', chases: [makeChase('2026-03-09')] })).toBe('2026-03-11');
  });

  it('is never before today', () => {
    expect(next({}, '2026-04-01')).toBe('2026-04-01');
  });

  it('is none before asking, after the answer and when closed', () => {
    expect(next({ askedOn: null })).toBeNull();
    expect(next({ answeredOn: '2026-03-03', outcome: 'refused' })).toBeNull();
    expect(next({ closedOn: '2026-03-03' })).toBeNull();
  });
});
