// Whether the back-test asks fairly: of a shop made up by known chances the safe days come out about right, and nothing later leaks in.
import { describe, expect, it } from 'vitest';
import { addDays, type Day } from '../../../app/domain/shared/day.ts';
import { type BackTestOptions, backTest } from '../../../app/domain/time/back-test.ts';
import { seededRandom } from '../../../app/domain/time/seeded-random.ts';
import { firstTurnaroundSettings } from '../../../app/domain/time/turnaround-settings.ts';
import { addWorkingDays } from '../../../app/domain/time/working-calendar.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import {
  cleaned,
  makeDecision,
  makeFault,
  makePart,
  makeScan,
  makeSignOff,
  makeVehicle,
  roadTest,
  stampAt,
} from '../../helpers/vehicle-maker.ts';

const calendar = { workDays: [1, 2, 3, 4, 5], minutesPerDay: 480, holidays: [] };
const options: BackTestOptions = {
  checklist: [roadTest, cleaned],
  settings: firstTurnaroundSettings,
  calendar,
  runs: 200,
};

/** One vehicle every other day; parts take 2 to 13 days, every other wait 0 to 3 days of the shop, all by chance. */
function shopOf(count: number, seed: number): Vehicle[] {
  const random = seededRandom(seed);
  const whole = (least: number, most: number) => least + Math.floor(random() * (most - least + 1));
  const turn = (from: Day) => addWorkingDays(calendar, from, whole(0, 3));
  return Array.from({ length: count }, (_, index) => {
    const boughtOn = addWorkingDays(calendar, addDays('2024-01-01', index * 2), 1);
    const decidedOn = turn(boughtOn);
    const orderedOn = turn(decidedOn);
    const receivedOn = addDays(orderedOn, whole(2, 13));
    const doneOn = turn(addWorkingDays(calendar, receivedOn, 1));
    const provenOn = turn(doneOn);
    const shownOn = turn(provenOn);
    const fault = makeFault(boughtOn, { area: 'engine', decision: makeDecision(decidedOn), doneOn });
    const part = makePart(decidedOn, { faultId: fault.id, orderedOn, receivedOn, fittedOn: doneOn });
    const late = { entered: stampAt(provenOn, 20) };
    return makeVehicle(boughtOn, {
      scans: [makeScan(boughtOn), makeScan(provenOn, { kind: 'post-repair', ...late })],
      faults: [fault],
      parts: [part],
      signOffs: [
        makeSignOff(provenOn, roadTest.id, late),
        makeSignOff(shownOn, cleaned.id, { entered: stampAt(shownOn, 21) }),
      ],
      sale: { soldOn: addDays(shownOn, 5), priceCents: 1_000_000, buyer: 'somebody', paidOffOn: null },
    });
  });
}

describe('the back-test', () => {
  it('of a shop whose waits come by chance alone finds about 80 of 100 safe days met, and half of the likely days', () => {
    const found = backTest(shopOf(160, 11), options);
    expect(found.cases.length).toBeGreaterThan(250);
    const share = (met: number) => met / found.cases.length;
    expect(share(found.safeMet)).toBeGreaterThan(0.72);
    expect(share(found.safeMet)).toBeLessThan(0.92);
    expect(share(found.likelyMet)).toBeGreaterThan(0.4);
    expect(share(found.likelyMet)).toBeLessThan(0.68);
    expect(found.medianMissDays).toBeLessThan(6);
  });

  it('forecasts an earlier vehicle the same whatever came after it became ready', () => {
    const fleet = shopOf(60, 5);
    const first = backTest(fleet.slice(0, 40), options);
    const all = backTest(fleet, options);
    // Asked about before the forty-first was bought: nothing of it, or of any after it, can have been known.
    const before = fleet[40]?.purchase.boughtOn ?? '';
    const early = first.cases.filter(({ askedOn }) => askedOn <= before);
    expect(early.length).toBeGreaterThan(30);
    for (const one of early) expect(all.cases).toContainEqual(one);
  });

  it('leaves out vehicles asked about before there was a history, and says how many', () => {
    const found = backTest(shopOf(12, 3), { ...options, fewestEarlier: 6 });
    expect(found.withoutHistory).toBeGreaterThan(0);
    expect(found.cases.length + found.withoutHistory).toBe(24);
    expect(backTest([], options)).toEqual({
      cases: [],
      withoutHistory: 0,
      likelyMet: 0,
      safeMet: 0,
      medianMissDays: null,
    });
  });

  it('leaves out a vehicle that was sold before it was ready', () => {
    const [vehicle] = shopOf(1, 3);
    if (!vehicle) throw new Error('no vehicle');
    const sale = { soldOn: addDays(vehicle.purchase.boughtOn, 1), priceCents: 1, buyer: '', paidOffOn: null };
    expect(backTest([{ ...vehicle, sale }], options)).toMatchObject({ cases: [], withoutHistory: 0 });
  });
});
