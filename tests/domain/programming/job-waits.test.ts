// On which days a job waited for programming: from when it can go on as a whole, in stretches where a code is waited for in between.
import { describe, expect, it } from 'vitest';
import { jobProgress } from '../../../app/domain/programming/job-progress.ts';
import { jobWaits } from '../../../app/domain/programming/job-waits.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { bodyExchange, doneUpTo } from '../../helpers/planned-job.ts';
import { makeAttempt, makeCodeRequest, makeJob, makePart, makeStep, makeVehicle } from '../../helpers/vehicle-maker.ts';

const day = (of: number) => `2026-02-${String(of).padStart(2, '0')}`;
function waits(vehicle: Vehicle) {
  const [job] = vehicle.jobs;
  if (!job) throw new Error('The vehicle has no job.');
  return jobWaits(vehicle, jobProgress(vehicle, job)).map(({ from, until }) => [from, until]);
}

describe('a job waits for programming', () => {
  const part = makePart(day(2), { orderedOn: day(2), receivedOn: day(9) });
  const [read, write, last] = [makeStep(), makeStep({ needsPart: true }), makeStep()];
  const job = makeJob(day(2), { partId: part.id, steps: [read, write, last] });
  const vehicle = makeVehicle(day(2), { jobs: [job], parts: [part] });
  const done = (step: { id: string }, of: number) => makeAttempt(day(of), job, step.id);

  it('from the day its part is here, not from its opening', () => {
    expect(waits(vehicle)).toEqual([[day(9), null]]);
    expect(waits({ ...vehicle, parts: [{ ...part, receivedOn: null }] })).toEqual([]);
  });

  it('in one stretch until its last step is done', () => {
    const attempts = [done(read, 10), done(write, 12), done(last, 13)];
    expect(waits({ ...vehicle, attempts })).toEqual([[day(9), day(13)]]);
  });

  it('not while nothing but a tick of a person is missing', () => {
    const planned = bodyExchange(day(2));
    const jobs = [{ ...planned.job, ticks: [] }];
    const before = doneUpTo({ ...planned.vehicle, jobs }, planned.job, 'body-takes-identity--body', day(5));
    expect(waits(before)).toEqual([[day(2), day(5)]]);
  });

  it('again from the day on which a late code comes for one module alone', () => {
    const planned = bodyExchange(day(2));
    const without = ['radio-code--radio', 'try-functions--radio'];
    const steps = planned.job.plan.steps.filter(({ id }) => !without.includes(id));
    const attempts = steps.map(({ id }) => makeAttempt(day(4), planned.job, id));
    const code = makeCodeRequest(day(4), { kind: 'radio', askedOn: day(4), answeredOn: day(8), outcome: 'given' });
    const modules = planned.job.modules.map((module) =>
      module.kind === 'radio' ? { ...module, codeRequestId: code.id } : module,
    );
    const asked = {
      ...planned.vehicle,
      attempts,
      jobs: [{ ...planned.job, modules }],
      codeRequests: [...planned.vehicle.codeRequests, code],
    };
    expect(waits(asked)).toEqual([
      [day(2), day(4)],
      [day(8), null],
    ]);
    const all = [...attempts, ...without.map((id) => makeAttempt(day(10), planned.job, id))];
    expect(waits({ ...asked, attempts: all })).toEqual([
      [day(2), day(4)],
      [day(8), day(10)],
    ]);
  });
});
