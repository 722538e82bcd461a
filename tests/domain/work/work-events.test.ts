// What was done to a vehicle as dated events: which facts count as work, what each touches, and what came after a signature.
import { describe, expect, it } from 'vitest';
import { firstKnown } from '../../../app/domain/work/first-known.ts';
import { touchesOf, workAreaSchema } from '../../../app/domain/work/work-area.ts';
import { laterTouch, workEvents } from '../../../app/domain/work/work-events.ts';
import {
  makeAttempt,
  makeDecision,
  makeFault,
  makeJob,
  makeLabour,
  makePart,
  makeScan,
  makeSignOff,
  makeStep,
  makeSublet,
  makeVehicle,
  stampAt,
} from '../../helpers/vehicle-maker.ts';

const first = '2026-02-02';
const second = '2026-02-03';
const third = '2026-02-04';

describe('the work on a vehicle', () => {
  const fault = makeFault(first, { area: 'brakes', decision: makeDecision(first), doneOn: third, what: 'worn pads' });
  const step = makeStep();
  const job = makeJob(first, { steps: [step] });
  const vehicle = makeVehicle(first, {
    faults: [fault, makeFault(first)],
    jobs: [job],
    attempts: [makeAttempt(second, job, step.id, { outcome: 'failed' })],
    labour: [makeLabour(third, { area: 'interior', what: 'carpet' })],
    parts: [
      makePart(first, { faultId: fault.id, what: 'pads', orderedOn: first, receivedOn: first, fittedOn: second }),
      makePart(first, { what: 'trim', orderedOn: first, receivedOn: first, fittedOn: first }),
      makePart(first, { orderedOn: first, receivedOn: first }),
    ],
    sublets: [makeSublet(first, { sentOn: first, backOn: second }), makeSublet(first, { sentOn: first })],
    scans: [makeScan(first)],
    signOffs: [makeSignOff(first, 'road-test')],
  });

  it('is labour, attempts whatever came of them, parts fitted, sublet work back and faults finished, earliest first', () => {
    expect(workEvents(vehicle).map(({ on, what }) => `${on} ${what}`)).toEqual([
      `${first} trim fitted`,
      `${second} programming attempt on Body`,
      `${second} pads fitted`,
      `${second} windscreen back`,
      `${third} carpet`,
      `${third} worn pads finished`,
    ]);
  });

  it('touches what its area says; a part takes the area of its fault, and everything when it has none', () => {
    const touches = (what: string) => workEvents(vehicle).find((event) => event.what === what)?.touches;
    expect(touches('pads fitted')).toEqual(['mechanical', 'safety']);
    expect(touches('trim fitted')).toEqual(['mechanical', 'electrical', 'safety', 'body', 'interior']);
    expect(touches('carpet')).toEqual(['interior']);
    expect(touches('programming attempt on Body')).toEqual(['electrical']);
  });

  it('in every area touches something', () => {
    for (const area of workAreaSchema.options) expect(touchesOf(area).length).toBeGreaterThan(0);
  });
});

describe('the first later touch', () => {
  const events = workEvents(
    makeVehicle(first, {
      labour: [
        makeLabour(second, { area: 'brakes', what: 'pads', entered: stampAt(second, 10) }),
        makeLabour(third, { area: 'brakes', what: 'discs', entered: stampAt(third, 10) }),
      ],
    }),
  );
  const vouched = (on: string, hour: number) => ({ on, enteredAt: stampAt(on, hour).at });

  it('is the earliest that came after and minds the same', () => {
    expect(laterTouch(events, vouched(first, 12), ['safety'])?.what).toBe('pads');
    expect(laterTouch(events, vouched(second, 9), ['safety'])?.what).toBe('pads');
    expect(laterTouch(events, vouched(second, 11), ['safety'])?.what).toBe('discs');
    expect(laterTouch(events, vouched(second, 10), ['safety'])?.what).toBe('discs');
  });

  it('within a day is booked work only if its time fits between the signature and the booking', () => {
    const booked = (minutes: number) =>
      workEvents(
        makeVehicle(first, {
          labour: [makeLabour(second, { area: 'brakes', what: 'pads', minutes, entered: stampAt(second, 12) })],
        }),
      );
    // Signed at 11 and booked at 12: an hour may have been worked since, an hour and a minute not.
    expect(laterTouch(booked(60), vouched(second, 11), ['safety'])?.what).toBe('pads');
    expect(laterTouch(booked(61), vouched(second, 11), ['safety'])).toBeNull();
    expect(laterTouch(booked(1), vouched(second, 13), ['safety'])).toBeNull();
    // Booked the next morning for the day of the signature: nobody can tell, so it counts as later.
    const nextMorning = workEvents(
      makeVehicle(first, {
        labour: [makeLabour(second, { area: 'brakes', what: 'pads', minutes: 90, entered: stampAt(third, 8) })],
      }),
    );
    expect(laterTouch(nextMorning, vouched(second, 17), ['safety'])?.what).toBe('pads');
  });

  it('is none when nothing came after, or nothing that matters', () => {
    expect(laterTouch(events, vouched(third, 10), ['safety'])).toBeNull();
    expect(laterTouch(events, vouched(first, 12), ['interior', 'body'])).toBeNull();
    expect(laterTouch(events, vouched(first, 12), [])).toBeNull();
  });
});

describe('the day a need was known', () => {
  it('is when it was noted, or acted on before', () => {
    expect(firstKnown(second, null)).toBe(second);
    expect(firstKnown(second, third)).toBe(second);
    expect(firstKnown(second, first)).toBe(first);
  });
});
