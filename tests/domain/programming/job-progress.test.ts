// How far a programming job has come: steps done, left out, next, blocked; what is missing; when it could start and when it closed.
import { describe, expect, it } from 'vitest';
import { jobProgress } from '../../../app/domain/programming/job-progress.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { makeAttempt, makeCodeRequest, makeJob, makePart, makeStep, makeVehicle } from '../../helpers/vehicle-maker.ts';

const days = { first: '2026-02-02', second: '2026-02-03', third: '2026-02-04' };
const { first, second, third } = days;

function progress(vehicle: Vehicle) {
  const [job] = vehicle.jobs;
  if (!job) throw new Error('The vehicle has no job.');
  return jobProgress(vehicle, job);
}

const states = (vehicle: Vehicle) => progress(vehicle).steps.map((step) => step.state);

describe('the steps of a job', () => {
  const steps = [makeStep(), makeStep({ leftOutReason: 'module kept' }), makeStep(), makeStep()];
  const job = makeJob(first, { steps });
  const [one, , three] = steps;
  const attempt = (on: string, step: (typeof steps)[number] | undefined, outcome: 'worked' | 'failed' | 'stopped') =>
    makeAttempt(on, job, step?.id ?? '', { outcome });

  it('come one after the other; those left out are passed over', () => {
    const vehicle = makeVehicle(first, { jobs: [job] });
    expect(states(vehicle)).toEqual(['next', 'left-out', 'later', 'later']);
    const attempts = [attempt(first, one, 'worked')];
    expect(states({ ...vehicle, attempts })).toEqual(['done', 'left-out', 'next', 'later']);
  });

  it('are done by an attempt that worked, not by one that failed or was stopped', () => {
    const vehicle = makeVehicle(first, { jobs: [job] });
    for (const outcome of ['failed', 'stopped'] as const)
      expect(states({ ...vehicle, attempts: [attempt(first, one, outcome)] })[0]).toBe('next');
    const both = [attempt(first, one, 'failed'), attempt(second, one, 'worked')];
    expect(progress({ ...vehicle, attempts: both }).steps[0]).toMatchObject({ state: 'done', doneOn: second });
  });

  it('may be done out of order; the first that is left is next', () => {
    const vehicle = makeVehicle(first, { jobs: [job], attempts: [attempt(first, three, 'worked')] });
    expect(states(vehicle)).toEqual(['next', 'left-out', 'done', 'later']);
  });

  it('list the attempts at each, and those at other jobs are not counted', () => {
    const other = makeJob(first, { steps });
    const foreign = makeAttempt(first, other, one?.id ?? '');
    const vehicle = makeVehicle(first, { jobs: [job, other], attempts: [foreign, attempt(first, one, 'failed')] });
    expect(progress(vehicle).steps[0]).toMatchObject({ state: 'next', attempts: [{ outcome: 'failed' }] });
  });
});

describe('a job', () => {
  it('is closed on the day of the attempt that finished its last step', () => {
    const steps = [makeStep(), makeStep()];
    const job = makeJob(first, { steps });
    const attempts = [makeAttempt(third, job, steps[0]?.id ?? ''), makeAttempt(second, job, steps[1]?.id ?? '')];
    expect(progress(makeVehicle(first, { jobs: [job], attempts }))).toMatchObject({ isClosed: true, closedOn: third });
    expect(progress(makeVehicle(first, { jobs: [job], attempts: attempts.slice(1) }))).toMatchObject({
      isClosed: false,
      closedOn: null,
    });
  });

  it('without steps is not closed, with all of them left out it is', () => {
    expect(progress(makeVehicle(first, { jobs: [makeJob(first)] })).isClosed).toBe(false);
    const job = makeJob(first, { steps: [makeStep({ leftOutReason: 'not this one' })] });
    expect(progress(makeVehicle(first, { jobs: [job] }))).toMatchObject({ isClosed: true, closedOn: first });
  });

  it('can start once its part is here and its code was given', () => {
    const part = makePart(first, { orderedOn: first });
    const request = makeCodeRequest(first, { askedOn: first });
    const job = makeJob(first, { partId: part.id, codeRequestId: request.id, steps: [makeStep()] });
    const vehicle = makeVehicle(first, { jobs: [job], parts: [part], codeRequests: [request] });
    expect(progress(vehicle)).toMatchObject({
      canStartOn: null,
      missing: ['body module is not here', 'the code has not been given'],
    });
    const here = { ...part, receivedOn: third };
    const refused = { ...request, answeredOn: second, outcome: 'refused' as const };
    expect(progress({ ...vehicle, parts: [here], codeRequests: [refused] })).toMatchObject({
      canStartOn: null,
      missing: ['the code was refused'],
    });
    const given = { ...refused, outcome: 'given' as const };
    expect(progress({ ...vehicle, parts: [here], codeRequests: [given] })).toMatchObject({
      canStartOn: third,
      missing: [],
    });
    expect(progress(makeVehicle(first, { jobs: [makeJob(second)] })).canStartOn).toBe(second);
  });

  it('is blocked at a step that needs what is not there, and only there', () => {
    const part = makePart(first, { orderedOn: first });
    const request = makeCodeRequest(first, { askedOn: first });
    const read = makeStep();
    const write = makeStep({ needsPart: true });
    const unlock = makeStep({ needsCode: true });
    const job = makeJob(first, { partId: part.id, codeRequestId: request.id, steps: [read, write, unlock] });
    const vehicle = makeVehicle(first, { jobs: [job], parts: [part], codeRequests: [request] });
    expect(states(vehicle)).toEqual(['next', 'later', 'later']);
    const done = (...steps: (typeof read)[]) => steps.map((step) => makeAttempt(first, job, step.id));
    expect(progress({ ...vehicle, attempts: done(read) }).steps[1]).toMatchObject({
      state: 'blocked',
      blockedBy: 'body module is not here',
    });
    const blockedCode = (about: Partial<Vehicle>) =>
      progress({ ...vehicle, attempts: done(read, write), ...about }).steps[2]?.blockedBy;
    expect(blockedCode({})).toBe('the code has not been given');
    const answered = { ...request, answeredOn: first };
    expect(blockedCode({ codeRequests: [{ ...answered, outcome: 'refused' }] })).toBe('the code was refused');
    expect(blockedCode({ codeRequests: [{ ...answered, outcome: 'given' }] })).toBe('');
    expect(blockedCode({ jobs: [{ ...job, codeRequestId: null }] })).toBe('no code request is linked to this job');
  });
});
