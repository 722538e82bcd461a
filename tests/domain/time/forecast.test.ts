// When a vehicle will be ready: known spreads give known days, the same seed the same forecast, and more to do is never ready earlier.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, dayNumber, laterDay } from '../../../app/domain/shared/day.ts';
import { forecastReady } from '../../../app/domain/time/forecast.ts';
import type { OpenItem } from '../../../app/domain/time/open-item.ts';
import type { ForecastContext } from '../../../app/domain/time/open-network.ts';
import { planOpenWork } from '../../../app/domain/time/open-plan.ts';
import { openWork } from '../../../app/domain/time/open-work.ts';
import { seededRandom, seedOf } from '../../../app/domain/time/seeded-random.ts';
import { turnaroundHistory } from '../../../app/domain/time/turnaround.ts';
import type { TurnaroundCase } from '../../../app/domain/time/turnaround-cases.ts';
import { firstTurnaroundSettings, type TurnaroundKind } from '../../../app/domain/time/turnaround-settings.ts';
import { arbitraryVehicle } from '../../helpers/arbitrary-vehicle.ts';
import { cleaned, makePart, makeScan, makeVehicle, roadTest } from '../../helpers/vehicle-maker.ts';

const checklist = [roadTest, cleaned];
/** A shop that never closes keeps the sums simple; another test has weekends. */
const everyDay = { workDays: [1, 2, 3, 4, 5, 6, 7], minutesPerDay: 480, holidays: [] };
const mondayToFriday = { ...everyDay, workDays: [1, 2, 3, 4, 5] };
const today = '2026-03-02';

function cases(kind: TurnaroundKind, days: readonly number[], groups: readonly string[] = []): TurnaroundCase[] {
  return days.map((count) => ({ kind, groups, days: count, lateDays: null, endedOn: '2026-01-01' }));
}

function contextOf(history: readonly TurnaroundCase[], calendar = everyDay): ForecastContext {
  return { history: turnaroundHistory(history), settings: firstTurnaroundSettings, calendar, today };
}

function waiting(id: string, kind: TurnaroundKind, about: Partial<OpenItem> = {}): OpenItem {
  return {
    id,
    what: id,
    cause: 'part',
    place: { list: 'parts', id },
    after: [],
    wait: { kind, groups: [], elapsedDays: 0, promisedInDays: null },
    minutes: 0,
    ...about,
  };
}

const seeded = (runs = 400, seed = 7) => ({ runs, random: seededRandom(seed) });
const oneToTen = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

describe('a forecast', () => {
  it('of one part that took 1 to 10 days, each as often, is 5 days in half of the runs and 8 in 80 of 100', () => {
    const forecast = forecastReady([waiting('part', 'part')], contextOf(cases('part', oneToTen)), seeded(20_000));
    expect(forecast?.likelyOn).toBe(addDays(today, 5));
    expect(forecast?.safeOn).toBe(addDays(today, 8));
  });

  it('of two such parts is the later of the two: 8 and 9 days', () => {
    // the later is at most n with chance (n/10)²: 0.49 for 7, 0.64 for 8, 0.81 for 9
    const items = [waiting('first', 'part'), waiting('second', 'part')];
    const forecast = forecastReady(items, contextOf(cases('part', oneToTen)), seeded(20_000));
    expect([forecast?.likelyOn, forecast?.safeOn]).toEqual([addDays(today, 8), addDays(today, 9)]);
  });

  it('is the same for the same seed and may differ for another', () => {
    const context = contextOf(cases('part', oneToTen));
    const items = [waiting('first', 'part'), waiting('second', 'part', { after: ['first'] })];
    const once = forecastReady(items, context, seeded(50));
    expect(forecastReady(items, context, seeded(50))).toEqual(once);
    const decided = new Set(
      [1, 2, 3, 4, 5, 6].map((seed) => forecastReady(items, context, seeded(50, seed))?.items[0]?.decides),
    );
    expect(decided.size).toBeGreaterThan(1);
  });

  it('says what most often decides, in how many runs, and what that rests on', () => {
    const items = [
      waiting('slow', 'code', { cause: 'code' }),
      waiting('quick', 'part'),
      { ...waiting('verify', 'verify'), after: ['slow', 'quick'], wait: null, minutes: 60 },
    ];
    const history = [...cases('code', [5, 6, 7, 8, 9]), ...cases('part', [1, 2, 3, 4, 6])];
    const forecast = forecastReady(items, contextOf(history), seeded(2000));
    const [first] = forecast?.items ?? [];
    expect(first).toMatchObject({ id: 'slow', basis: { basis: 'turnaround', cases: 5 } });
    expect(first?.decides).toBeGreaterThan(1700);
    expect(forecast?.items.reduce((sum, { decides }) => sum + decides, 0)).toBe(2000);
    expect(forecast?.items.find(({ id }) => id === 'verify')).toMatchObject({ onChain: 2000, decides: 0, basis: null });
  });

  it('passes over the weekend with what needs the shop, not with what is on its way', () => {
    const friday = { ...contextOf([], mondayToFriday), today: '2026-03-06' };
    const arriving = waiting('part', 'part', { wait: { kind: 'part', groups: [], elapsedDays: 0, promisedInDays: 1 } });
    expect(forecastReady([arriving], friday, seeded())?.likelyOn).toBe('2026-03-07');
    const fitting = waiting('fit', 'repair', { after: ['part'], wait: null, minutes: 60 });
    expect(forecastReady([arriving, fitting], friday, seeded())?.likelyOn).toBe('2026-03-09');
    // its turn comes after a day of the shop, which is Tuesday
    const queued = { ...fitting, wait: { kind: 'repair' as const, groups: [], elapsedDays: 1, promisedInDays: null } };
    expect(forecastReady([arriving, queued], friday, seeded())?.likelyOn).toBe('2026-03-10');
  });

  it('takes several short works in one day, and a long one over as many as it needs', () => {
    const hours = (id: string, count: number, after: string[]) =>
      waiting(id, 'repair', { wait: null, minutes: count * 60, after });
    const day = (items: OpenItem[]) => forecastReady(items, contextOf([]), seeded())?.likelyOn;
    expect(day([hours('a', 3, []), hours('b', 5, ['a'])])).toBe(today);
    expect(day([hours('a', 3, []), hours('b', 5.1, ['a'])])).toBe(addDays(today, 1));
    expect(day([hours('a', 24, [])])).toBe(addDays(today, 2));
  });

  it('is not made when nothing is open', () => {
    expect(forecastReady([], contextOf([]), seeded())).toBeNull();
    expect(planOpenWork([], contextOf([]))).toBeNull();
  });
});

describe('the expected course', () => {
  it('gives each item its days, its room, and names the chain that decides', () => {
    const part = makePart('2026-02-26', { supplier: 'Yard', orderedOn: '2026-02-27', expectedOn: '2026-03-09' });
    const vehicle = makeVehicle('2026-02-23', {
      scans: [makeScan('2026-02-24')],
      parts: [part],
      purchase: { paperReceivedOn: null, paperExpectedOn: '2026-03-05' },
    });
    const context = contextOf([], mondayToFriday);
    const plan = planOpenWork(openWork(vehicle, checklist, context), context);
    const days = Object.fromEntries(
      (plan?.items ?? []).map(({ item, startsOn, endsOn }) => [item.id, [startsOn, endsOn]]),
    );
    // the part on Monday the 9th; two days for its turn, one for the proof's, two for presenting: Monday the 16th
    expect(days).toEqual({
      [`part:${part.id}`]: ['2026-03-02', '2026-03-09'],
      [`fit:${part.id}`]: ['2026-03-09', '2026-03-11'],
      verify: ['2026-03-11', '2026-03-12'],
      present: ['2026-03-12', '2026-03-16'],
      paper: ['2026-03-02', '2026-03-05'],
    });
    expect(plan?.readyOn).toBe('2026-03-16');
    expect(plan?.chains).toEqual([[`part:${part.id}`, `fit:${part.id}`, 'verify', 'present']]);
    const paper = plan?.items.find(({ item }) => item.id === 'paper');
    expect(paper).toMatchObject({ isCritical: false, waitDays: 3 });
    expect(paper?.floatDays).toBeGreaterThan(10);
  });
});

describe('on any record', () => {
  it('without history, the forecast and the expected course name the same day, not before today', () => {
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle, today: on }) => {
        const context = { ...contextOf([], mondayToFriday), today: on };
        const items = openWork(vehicle, checklist, context);
        const forecast = forecastReady(items, context, seeded(5));
        const plan = planOpenWork(items, context);
        expect(plan?.readyOn).toBe(forecast?.likelyOn);
        expect(forecast?.safeOn).toBe(forecast?.likelyOn);
        if (plan === null) return;
        expect(plan.readyOn >= on).toBe(true);
        const lastEnd = plan.items.reduce((last, { endsOn }) => laterDay(last, endsOn), on);
        expect(plan.readyOn).toBe(lastEnd);
        for (const { floatDays } of plan.items) expect(floatDays).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('taking an item away never makes it ready later', () => {
    fc.assert(
      fc.property(arbitraryVehicle, fc.nat(), ({ vehicle, today: on }, pick) => {
        const context = { ...contextOf([], mondayToFriday), today: on };
        const items = openWork(vehicle, checklist, context);
        const gone = items[pick % Math.max(1, items.length)];
        if (!gone || items.length < 2) return;
        const fewer = items
          .filter((item) => item !== gone)
          .map((item) => ({ ...item, after: item.after.filter((id) => id !== gone.id) }));
        const before = planOpenWork(fewer, context)?.readyOn ?? on;
        const after = planOpenWork(items, context)?.readyOn ?? on;
        expect(dayNumber(before)).toBeLessThanOrEqual(dayNumber(after));
      }),
    );
  });

  it('the safe day is never before the likely day', () => {
    const history = [
      ...cases('part', oneToTen),
      ...cases('fault', [0, 3, 9, 20, 41]),
      ...cases('verify', [0, 0, 1, 1, 4]),
      ...cases('unseen', [2, 9, 14, 30, 60]),
    ];
    fc.assert(
      fc.property(arbitraryVehicle, fc.integer(), ({ vehicle, today: on }, seed) => {
        const context = { ...contextOf(history, mondayToFriday), today: on };
        const forecast = forecastReady(openWork(vehicle, checklist, context), context, seeded(40, seed));
        if (forecast === null) return;
        expect(forecast.safeOn >= forecast.likelyOn && forecast.likelyOn >= on).toBe(true);
        for (const { decides, onChain } of forecast.items) expect(decides).toBeLessThanOrEqual(onChain);
      }),
    );
  });
});

describe('seeded numbers', () => {
  it('are spread evenly, and the same for the same seed', () => {
    const random = seededRandom(seedOf('vehicle-1'));
    const counts = new Array<number>(10).fill(0);
    for (let draw = 0; draw < 20_000; draw += 1) {
      const number = random();
      expect(number >= 0 && number < 1).toBe(true);
      const bin = Math.floor(number * 10);
      counts[bin] = (counts[bin] ?? 0) + 1;
    }
    for (const count of counts) expect(Math.abs(count - 2000)).toBeLessThan(200);
    expect(seededRandom(3)()).toBe(seededRandom(3)());
    expect(seededRandom(3)()).not.toBe(seededRandom(4)());
    expect(seedOf('vehicle-1')).not.toBe(seedOf('vehicle-2'));
  });
});
