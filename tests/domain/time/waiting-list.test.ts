// Everything asked for and not here: which wait decides the vehicle's day, what it costs, how the cost is shared, when to chase.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chase } from '../../../app/domain/codes/request-facts.ts';
import { addDays, type Day } from '../../../app/domain/shared/day.ts';
import { isOutside, openWaits } from '../../../app/domain/time/deciding-wait.ts';
import { turnaroundHistory } from '../../../app/domain/time/turnaround.ts';
import { codeGroups, providerGroups, type TurnaroundCase } from '../../../app/domain/time/turnaround-cases.ts';
import { waitingList } from '../../../app/domain/time/waiting-list.ts';
import { reckonVehicle } from '../../../app/domain/vehicle/reckon.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { arbitraryVehicle } from '../../helpers/arbitrary-vehicle.ts';
import {
  makeCodeRequest,
  makeFault,
  makeLabour,
  makePart,
  makeScan,
  makeShop,
  makeSublet,
  makeVehicle,
} from '../../helpers/vehicle-maker.ts';

// A Thursday; the test shop works from Monday to Friday.
const today = '2026-02-12';
const bought = '2026-01-15';
const shop = makeShop({ rates: { overheadCentsPerDay: 1_001, fundingRatePpm: 0 } });
const noHistory = turnaroundHistory([]);

const chase = (chasedOn: Day, promisedOn: Day | null = null): Chase => ({
  id: `chase-${chasedOn}`,
  chasedOn,
  by: 'manager-1',
  how: 'phone',
  promisedOn,
  note: '',
});

type Facts = Parameters<typeof makeVehicle>[1];
const here = (facts: Facts = {}) =>
  makeVehicle(bought, {
    arrival: { arrivedOn: bought },
    purchase: { paperReceivedOn: bought },
    scans: [makeScan(bought)],
    ...facts,
  });
const part = (facts: Partial<Vehicle['parts'][number]> = {}) =>
  makePart('2026-02-01', { orderedOn: '2026-02-02', supplier: 'Fenwick', ...facts });
const list = (vehicles: readonly Vehicle[], history = noHistory) =>
  waitingList(
    vehicles.map((vehicle) => ({ vehicle, reckoning: reckonVehicle(vehicle, shop, today) })),
    { shop, history, today },
  );

/** So many cases of these days, ended before today. */
function cases(kind: TurnaroundCase['kind'], groups: readonly string[], days: readonly number[]): TurnaroundCase[] {
  return days.map((each) => ({ kind, groups, days: each, lateDays: null, endedOn: '2026-01-02' }));
}

describe('what is listed', () => {
  it('is every part, code and sublet work asked for and not here, and nothing else', () => {
    const vehicle = here({
      parts: [
        part({ what: 'on its way' }),
        part({ what: 'needed only', orderedOn: null }),
        part({ what: 'here', receivedOn: '2026-02-05' }),
        part({ what: 'sent back', returnedOn: '2026-02-05' }),
      ],
      codeRequests: [
        makeCodeRequest('2026-02-01', { askedOn: '2026-02-03', askedOf: 'Code desk' }),
        makeCodeRequest('2026-02-01', { askedOn: null }),
      ],
      sublets: [
        makeSublet('2026-02-01', { sentOn: '2026-02-04', supplier: 'Glassworks' }),
        makeSublet('2026-02-01', { sentOn: '2026-02-04', backOn: '2026-02-06' }),
      ],
    });
    const { lines, vehicles } = list([vehicle, here()]);
    expect(vehicles).toBe(1);
    expect(
      lines.map(({ kind, provider, askedOn, waitedDays }) => [kind, provider, askedOn, waitedDays]).sort(),
    ).toEqual([
      ['code', 'Code desk', '2026-02-03', 9],
      ['part', 'Fenwick', '2026-02-02', 10],
      ['sublet', 'Glassworks', '2026-02-04', 8],
    ]);
  });

  it('leaves out what a sold vehicle still waits for', () => {
    const sale = { soldOn: today, priceCents: 1, buyer: '', paidOffOn: null };
    expect(list([here({ parts: [part()], sale })]).lines).toEqual([]);
  });

  it('tells how long a promise is overdue, by the one made last', () => {
    const [overdue, renewed] = [
      part({ expectedOn: '2026-02-06' }),
      part({ expectedOn: '2026-02-06', chases: [chase('2026-02-09', '2026-02-20')] }),
    ].map((one) => list([here({ parts: [one] })]).lines[0]);
    expect([overdue?.promisedOn, overdue?.overdueDays]).toEqual(['2026-02-06', 6]);
    expect([renewed?.promisedOn, renewed?.overdueDays]).toEqual(['2026-02-20', 0]);
  });
});

describe('a code of a kind that the shop has named', () => {
  it('is called so where it decides the day and where it is waited for besides', () => {
    const codeKinds = shop.codeKinds.map((kind) => (kind.id === 'radio' ? { ...kind, name: 'Wireless number' } : kind));
    const vehicle = here({
      parts: [part({ what: 'Body module', expectedOn: '2026-02-13' })],
      codeRequests: [makeCodeRequest('2026-02-01', { askedOn: '2026-02-03', kind: 'radio', expectedOn: '2026-02-20' })],
    });
    const reckoning = reckonVehicle(vehicle, shop, today);
    const { lines } = waitingList([{ vehicle, reckoning }], {
      shop: { ...shop, codeKinds },
      history: noHistory,
      today,
    });
    const ofPart = lines.find(({ kind }) => kind === 'part');
    expect(ofPart?.decidedBy.what.toLowerCase()).toContain('wireless number');
    expect(ofPart?.besides.map(({ what }) => what.toLowerCase())).toContainEqual(
      expect.stringContaining('wireless number'),
    );
  });
});

describe('what another day costs', () => {
  it('is borne whole by the only wait', () => {
    const { lines, dayCents, sharedCents } = list([here({ parts: [part()] })]);
    expect(lines[0]).toMatchObject({ decides: 'alone', dayCents: 1_001, shareCents: 1_001 });
    expect([dayCents, sharedCents]).toEqual([1_001, 1_001]);
  });

  it('is borne by the wait that is promised for last, and by none that ends before', () => {
    const soon = part({ what: 'soon', expectedOn: '2026-02-13' });
    const late = part({ what: 'late', expectedOn: '2026-02-20' });
    const { lines } = list([here({ parts: [soon, late] })]);
    expect(lines.map(({ what, decides, shareCents }) => [what, decides, shareCents])).toEqual([
      ['late', 'alone', 1_001],
      ['soon', 'not', 0],
    ]);
    expect(lines[1]?.decidedBy.what).toContain('late');
  });

  it('is shared equally, to the cent, by those without a promise that stands', () => {
    const vehicle = here({
      parts: [part({ what: 'one' }), part({ what: 'two', expectedOn: '2026-02-03' })],
      codeRequests: [makeCodeRequest('2026-02-01', { askedOn: '2026-02-03' })],
    });
    const { lines, dayCents, sharedCents } = list([vehicle]);
    expect(lines.map(({ shareCents }) => shareCents)).toEqual([334, 334, 333]);
    expect(lines.every(({ decides }) => decides === 'together')).toBe(true);
    expect([dayCents, sharedCents]).toEqual([1_001, 1_001]);
  });

  it('is nothing while something else decides: transit, or a fault to decide that a promise ends before', () => {
    const away = makeVehicle(bought, { arrival: { arrivedOn: null }, parts: [part()] });
    const undecided = here({
      parts: [part({ expectedOn: '2026-02-20' })],
      faults: [makeFault('2026-02-01', { what: 'horn silent', decision: null })],
    });
    const { lines, dayCents, sharedCents } = list([away, undecided]);
    expect(lines.map(({ decidedBy, shareCents }) => [decidedBy.cause, shareCents]).sort()).toEqual([
      ['decide', 0],
      ['transit', 0],
    ]);
    expect([dayCents, sharedCents]).toEqual([2_002, 0]);
  });

  it('stays with the wait while other work goes on', () => {
    const vehicle = here({ parts: [part()], labour: [makeLabour(today)] });
    expect(list([vehicle]).lines[0]).toMatchObject({ isInWork: true, decides: 'alone', shareCents: 1_001 });
  });

  it('names what the vehicle waits for besides', () => {
    const vehicle = here({
      parts: [part({ what: 'mirror' })],
      faults: [makeFault('2026-02-01', { what: 'horn silent', decision: null })],
    });
    expect(list([vehicle]).lines[0]?.besides).toContainEqual({ cause: 'decide', what: 'horn silent' });
  });

  it('adds up over any fleet to the day of each vehicle that something here decides, and no vehicle counts twice', () => {
    fc.assert(
      fc.property(fc.array(arbitraryVehicle, { maxLength: 5 }), (fleet) => {
        const vehicles = fleet.map(({ vehicle }, at) => ({ ...vehicle, id: `vehicle-${at}` }));
        const day =
          fleet
            .map((one) => one.today)
            .sort()
            .at(-1) ?? today;
        const reckoned = vehicles.map((vehicle) => ({ vehicle, reckoning: reckonVehicle(vehicle, shop, day) }));
        const found = waitingList(reckoned, { shop, history: noHistory, today: day });
        let whole = 0;
        let decided = 0;
        for (const { vehicle, reckoning } of reckoned) {
          const lines = found.lines.filter((line) => line.vehicle === vehicle);
          const owed = openWaits(vehicle).filter(isOutside);
          expect(lines).toHaveLength(owed.length);
          const shares = lines.reduce((sum, line) => sum + line.shareCents, 0);
          const isDecided = lines.some(({ decides }) => decides !== 'not');
          expect(shares).toBe(isDecided ? reckoning.costs.nextDayCents : 0);
          // The same cause as the days held give for today, where no work was booked.
          const { standing } = reckoning.held.now;
          if (lines[0] && standing !== 'work') expect(lines[0].decidedBy.cause).toBe(standing);
          if (lines.length > 0) whole += reckoning.costs.nextDayCents;
          if (isDecided) decided += reckoning.costs.nextDayCents;
        }
        expect([found.dayCents, found.sharedCents]).toEqual([whole, decided]);
      }),
      { numRuns: 150 },
    );
  });
});

describe('the order', () => {
  it('is by the cost of another day, then by how long it is overdue, then by how long it was waited for', () => {
    const dear = here({ parts: [part({ what: 'dear' })], purchase: { priceCents: 3_000_000 } });
    const cheap = here({ parts: [part({ what: 'cheap' })] });
    const overdue = here({ parts: [part({ what: 'overdue', expectedOn: '2026-02-06' })] });
    const longer = here({ parts: [part({ what: 'longer', orderedOn: '2026-01-20' })] });
    const withInterest = makeShop({ rates: { overheadCentsPerDay: 1_001, fundingRatePpm: 100_000 } });
    const inShop = (of: typeof shop, vehicles: readonly Vehicle[]) =>
      waitingList(
        vehicles.map((vehicle) => ({ vehicle, reckoning: reckonVehicle(vehicle, of, today) })),
        { shop: of, history: noHistory, today },
      ).lines.map(({ what }) => what);
    expect(inShop(withInterest, [cheap, dear])).toEqual(['dear', 'cheap']);
    expect(inShop(shop, [cheap, longer, overdue])).toEqual(['overdue', 'longer', 'cheap']);
  });
});

describe('by the shop’s own history', () => {
  const usual = cases('part', providerGroups('Fenwick'), [4, 6, 8, 10, 20]);

  it('says when it is expected in half and in four of five cases, and on how many cases of whom', () => {
    const { lines } = list([here({ parts: [part({ orderedOn: '2026-02-10' })] })], turnaroundHistory(usual));
    // Two days gone by of 4, 6, 8, 10, 20: 2, 4, 6, 8, 18 to go.
    expect(lines[0]?.expected).toEqual({
      likelyOn: addDays(today, 6),
      safeOn: addDays(today, 8),
      basis: 'turnaround',
      group: 'provider: fenwick',
      cases: 5,
    });
    expect(lines[0]?.usual).toMatchObject({ cases: 5, medianDays: 8, eightiethDays: 10 });
  });

  it('asks the narrowest group of a code that has enough cases', () => {
    const history = turnaroundHistory([
      ...cases('code', codeGroups('Code desk', 'radio'), [1, 2]),
      ...cases('code', codeGroups('Code desk', 'immobiliser'), [5, 5, 5]),
    ]);
    const request = makeCodeRequest('2026-02-01', { askedOn: '2026-02-11', askedOf: 'Code desk', kind: 'radio' });
    expect(list([here({ codeRequests: [request] })], history).lines[0]?.usual).toMatchObject({
      group: 'provider: code desk',
      cases: 5,
    });
  });
});

describe('the next day to chase', () => {
  const usual = turnaroundHistory(cases('part', providerGroups('Fenwick'), [4, 6, 8, 10, 20]));
  const chaseOf = (facts: Partial<Vehicle['parts'][number]>, history = noHistory) =>
    list([here({ parts: [part(facts)] })], history).lines[0]?.chase;

  it('is the day after the promise, on a day on which the shop works', () => {
    expect(chaseOf({ expectedOn: '2026-02-16' })?.on).toBe('2026-02-17');
    // Promised for a Friday: the day after is a Saturday.
    expect(chaseOf({ expectedOn: '2026-02-13' })?.on).toBe('2026-02-16');
  });

  it('is today once a promise has passed, and says which', () => {
    expect(chaseOf({ expectedOn: '2026-02-06' })).toEqual({ on: today, why: 'promised for 2026-02-06 and not here' });
  });

  it('is two days after a chase that brought no day', () => {
    expect(chaseOf({ expectedOn: '2026-02-06', chases: [chase('2026-02-11')] })?.on).toBe('2026-02-13');
  });

  it('follows the promise that a chase brought', () => {
    expect(chaseOf({ expectedOn: '2026-02-06', chases: [chase('2026-02-11', '2026-02-18')] })?.on).toBe('2026-02-19');
  });

  it('comes, without a promise, once four of five such answers had come', () => {
    expect(chaseOf({ orderedOn: '2026-02-10' }, usual)).toEqual({
      on: '2026-02-23',
      why: 'four of five came within 10 days (5 cases)',
    });
  });

  it('comes three days after asking where nothing is known', () => {
    expect(chaseOf({ orderedOn: '2026-02-10' })?.on).toBe('2026-02-13');
  });
});
