// What a person can press at a step: one press where nothing can go wrong for good, another route after a failure, ticks where they say something.
import { describe, expect, it } from 'vitest';
import { type JobProgress, jobProgress } from '../../../../../app/domain/programming/job-progress.ts';
import type { ProgrammingJob } from '../../../../../app/domain/programming/programming-job.ts';
import type { Vehicle } from '../../../../../app/domain/vehicle/vehicle.ts';
import {
  asksVolts,
  freshAttempt,
  isSimple,
  likelyRoute,
  mayGoOnRegardless,
  vouchables,
  waitsForTitles,
} from '../../../../../renderer/screens/vehicle/programming/step-actions.ts';
import { bodyExchange, doneUpTo } from '../../../../helpers/planned-job.ts';
import { makeAttempt } from '../../../../helpers/vehicle-maker.ts';

const day = '2026-03-02';
const { vehicle, job } = bodyExchange(day);

function progressOf(of: Vehicle, with_: ProgrammingJob = job): JobProgress {
  return jobProgress({ ...of, jobs: [with_] }, with_);
}
function step(id: string, of: Vehicle = vehicle, with_: ProgrammingJob = job) {
  const found = progressOf(of, with_).steps.find((one) => one.step.id === id);
  if (!found) throw new Error(`no step ${id}`);
  return found;
}

describe('one press is enough', () => {
  it('for what is done by hand or only read, not where it writes or cannot be undone', () => {
    expect(isSimple(step('compare-vins').step)).toBe(true);
    expect(isSimple(step('scan-after').step)).toBe(true);
    expect(isSimple(step('write-config--body').step)).toBe(false);
    expect(isSimple(step('write-vin--body').step)).toBe(false);
  });

  it('and volts are asked for where the supply matters', () => {
    expect(asksVolts(step('connect-supply').step)).toBe(true);
    expect(asksVolts(step('write-software--body').step)).toBe(true);
    expect(asksVolts(step('lead-off').step)).toBe(false);
  });
});

describe('a route', () => {
  const failedOn = (...routes: ('on-vehicle' | 'pass-through')[]) => ({
    ...vehicle,
    attempts: routes.map((route) => makeAttempt(day, job, 'save-old--body', { route, outcome: 'failed' })),
  });

  it('that failed is not begun with again; where history ranks the others, that order counts', () => {
    expect(likelyRoute(step('save-old--body'), [])).toBe('on-vehicle');
    expect(likelyRoute(step('save-old--body', failedOn('on-vehicle')), [])).toBe('pass-through');
    expect(likelyRoute(step('save-old--body', failedOn('on-vehicle')), ['on-vehicle', 'bench'])).toBe('bench');
  });
});

describe('a blocked step', () => {
  it('can be gone on with by a name and a reason, unless it could injure somebody or break the law', () => {
    expect(mayGoOnRegardless(step('fit--body'))).toBe(true);
    const unproven = { ...vehicle, codeRequests: vehicle.codeRequests.map((one) => ({ ...one, proof: null })) };
    expect(mayGoOnRegardless(step('body-takes-identity--body', unproven))).toBe(false);
    expect(mayGoOnRegardless(step('scan-before'))).toBe(false);
  });

  it('begins its attempt with the person and no reason yet; a free one without either', () => {
    const about = { jobId: job.id, today: day, person: 'tomas', route: 'by-hand' as const };
    expect(freshAttempt('attempt-1', step('fit--body'), about).override).toEqual({ by: 'tomas', reason: '' });
    expect(freshAttempt('attempt-1', step('scan-before'), about).override).toBeNull();
  });

  it('offers to vouch for what neither the record nor a step tells', () => {
    const at = (of: Vehicle, with_: ProgrammingJob, id: string) =>
      vouchables(with_, step(id, of, with_)).map(({ gate, moduleId }) => [gate, moduleId]);
    expect(at(vehicle, { ...job, ticks: [] }, 'body-takes-identity--body')).toEqual([['keys-present', null]]);
    expect(at(vehicle, job, 'radio-code--radio')).toEqual([['code-in-hand', 'radio']]);
    const away = { ...vehicle, parts: vehicle.parts.map((part) => ({ ...part, receivedOn: null })) };
    expect(at(away, job, 'fit--body')).toEqual([]);
  });

  it('names the steps it waits for, also those that bring about what it asks for', () => {
    const { steps } = progressOf(doneUpTo(vehicle, job, 'lead-on', day));
    const write = steps.find((one) => one.step.id === 'write-software--body');
    if (!write) throw new Error('no step');
    expect(waitsForTitles(job, write, steps)).toEqual(['Connect the supply and write down the volts']);
  });

  it('of those that lie one behind the other it names the last only', () => {
    const { steps } = progressOf(vehicle);
    const fit = steps.find((one) => one.step.id === 'fit--body');
    if (!fit) throw new Error('no step');
    // It also asks for the lead off and for what is saved before the lead comes off.
    expect(fit.reasons.length).toBeGreaterThan(1);
    expect(waitsForTitles(job, fit, steps)).toEqual([
      'Find out whether the used Body can be matched to this vehicle',
      'Take the old Body out, label it and keep it',
    ]);
  });
});
