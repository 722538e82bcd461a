// How often each route has worked for a kind of module: only that kind, only attempts that say something about the route.
import { describe, expect, it } from 'vitest';
import { routeHistory } from '../../../app/domain/programming/route-history.ts';
import { makeAttempt, makeJob, makeStep, makeVehicle } from '../../helpers/vehicle-maker.ts';

const day = '2026-02-02';
const write = makeStep({ id: 'write-software--mod1', moduleId: 'mod1' });
const scan = makeStep({ id: 'scan-before' });
const job = makeJob(day, { module: 'Body', steps: [scan, write] });
const tried = (
  route: 'bench' | 'on-vehicle' | 'by-hand',
  outcome: 'worked' | 'failed' | 'stopped',
  stepId = write.id,
) => makeAttempt(day, job, stepId, { route, outcome });

describe('the history of routes', () => {
  it('counts over all vehicles what worked and what was tried, in a fixed order of routes', () => {
    const one = makeVehicle(day, { jobs: [job], attempts: [tried('bench', 'worked'), tried('on-vehicle', 'failed')] });
    const two = makeVehicle(day, { jobs: [job], attempts: [tried('on-vehicle', 'worked')] });
    expect(routeHistory([one, two], 'body')).toEqual([
      { route: 'on-vehicle', worked: 1, tried: 2 },
      { route: 'bench', worked: 1, tried: 1 },
    ]);
  });

  it('learns nothing from another kind of module', () => {
    const vehicle = makeVehicle(day, { jobs: [job], attempts: [tried('bench', 'worked')] });
    expect(routeHistory([vehicle], 'radio')).toEqual([]);
  });

  it('leaves out what a person stopped, what is done by hand, and steps of the whole job', () => {
    const attempts = [tried('bench', 'stopped'), tried('by-hand', 'worked'), tried('on-vehicle', 'worked', scan.id)];
    expect(routeHistory([makeVehicle(day, { jobs: [job], attempts })], 'body')).toEqual([]);
  });

  it('still counts an attempt whose step the plan no longer has', () => {
    const gone = tried('bench', 'worked', 'write-config--mod1');
    const vehicle = makeVehicle(day, { jobs: [job], attempts: [gone] });
    expect(routeHistory([vehicle], 'body')).toEqual([{ route: 'bench', worked: 1, tried: 1 }]);
  });
});
