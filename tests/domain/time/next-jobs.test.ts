// What can be done next on all vehicles: in the order that loses least, with what waits and why below it.
import { describe, expect, it } from 'vitest';
import { nextJobs } from '../../../app/domain/time/next-jobs.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { bodyExchange, doneUpTo } from '../../helpers/planned-job.ts';
import {
  makeCodeRequest,
  makeDecision,
  makeFault,
  makePart,
  makeShop,
  makeVehicle,
} from '../../helpers/vehicle-maker.ts';

const day = '2026-02-02';
const shop = makeShop({ rates: { overheadCentsPerDay: 1_000, fundingRatePpm: 100_000 } });
const arrived = { arrival: { arrivedOn: day } };
const repair = (minutes: number) =>
  makeFault(day, { what: 'mirror loose', decision: makeDecision(day, { estimateMinutes: minutes }) });
const next = (...vehicles: Vehicle[]) =>
  nextJobs(
    vehicles.map((vehicle) => ({ vehicle, heldDays: 10 })),
    shop,
    '2026-02-12',
  );

describe('what can be done now', () => {
  it('comes by money lost a day for each minute of work left', () => {
    const long = makeVehicle(day, { ...arrived, faults: [repair(300)] });
    const short = makeVehicle(day, { ...arrived, faults: [repair(30)] });
    const dear = makeVehicle(day, { ...arrived, faults: [repair(30)], purchase: { priceCents: 5_000_000 } });
    const { order } = next(long, short, dear);
    expect(order.map(({ vehicle }) => vehicle.id)).toEqual([dear.id, short.id, long.id]);
    expect(order[0]?.lossCentsPerDay).toBeGreaterThan(order[1]?.lossCentsPerDay ?? 0);
    for (const { whyWithoutMoney } of order) expect(whyWithoutMoney).not.toMatch(/\d\.\d\d/);
  });

  it('is nothing on a vehicle that is sold, or not here yet', () => {
    const away = makeVehicle(day, { arrival: { arrivedOn: null }, faults: [repair(30)] });
    const sold = makeVehicle(day, {
      ...arrived,
      faults: [repair(30)],
      sale: { soldOn: day, priceCents: 1, buyer: '', paidOffOn: null },
    });
    const { order, waiting } = next(away, sold);
    expect(order).toEqual([]);
    expect(waiting.map(({ vehicle, held }) => [vehicle.id, held[0]?.why])).toEqual([
      [away.id, 'the vehicle is not here yet'],
    ]);
  });

  it('lists the steps of a job that are next, not the repair that the job belongs to', () => {
    const { vehicle, job } = bodyExchange(day);
    const fault = repair(60);
    const ours = {
      ...vehicle,
      arrival: { ...vehicle.arrival, arrivedOn: day },
      faults: [fault],
      jobs: [{ ...job, faultId: fault.id }],
    };
    const [only] = next(doneUpTo(ours, job, 'compare-vins', day)).order;
    expect(only?.tasks.map(({ what }) => what)).toEqual([
      'Body: Compare the VIN on the vehicle with the papers and with every module that tells one',
      'Body: Read and save the data of the old Body',
      'Body: Find out whether the used Body can be matched to this vehicle',
    ]);
    expect(only?.minutesLeft).toBeGreaterThan(200);
  });
});

describe('what cannot be done now', () => {
  it('says what it waits for: a part, a code that was refused, a step without its code', () => {
    const fault = repair(60);
    const part = makePart(day, { what: 'mirror', faultId: fault.id, orderedOn: day });
    const waits = makeVehicle(day, { ...arrived, faults: [fault], parts: [part] });
    const other = repair(60);
    const refusal = { faultId: other.id, askedOn: day, answeredOn: '2026-02-04', outcome: 'refused' as const };
    const refused = makeVehicle(day, { ...arrived, faults: [other], codeRequests: [makeCodeRequest(day, refusal)] });
    const { order, waiting } = next(waits, refused);
    expect(order).toEqual([]);
    expect(waiting.flatMap(({ held }) => held.map(({ why }) => why))).toEqual([
      'mirror is not here',
      'immobiliser code was refused; another way is to be found',
    ]);
  });

  it('is a job whose part is on its way, once what is there is secured', () => {
    const { vehicle, job } = bodyExchange(day);
    const parts = vehicle.parts.map((part) => ({ ...part, receivedOn: null }));
    const ours = { ...vehicle, parts, arrival: { ...vehicle.arrival, arrivedOn: day } };
    const { order, waiting } = next(doneUpTo(ours, job, 'lead-off', day, ['check-used--body']));
    expect(order).toEqual([]);
    expect(waiting[0]?.held).toMatchObject([{ what: 'Program Body', why: 'body module is not here' }]);
  });
});
