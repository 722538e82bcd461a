// How far a programming job has come: steps done, left out, next, blocked; what it waits for; when it could start and when it closed.
import { describe, expect, it } from 'vitest';
import { jobProgress } from '../../../app/domain/programming/job-progress.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { bodyExchange, doneUpTo, jobModule, plannedJob } from '../../helpers/planned-job.ts';
import { makeAttempt, makeCodeRequest, makeJob, makePart, makeStep, makeVehicle } from '../../helpers/vehicle-maker.ts';

const days = { first: '2026-02-02', second: '2026-02-03', third: '2026-02-04' };
const { first, second, third } = days;

function progress(vehicle: Vehicle) {
  const [job] = vehicle.jobs;
  if (!job) throw new Error('The vehicle has no job.');
  return jobProgress(vehicle, job);
}

const states = (vehicle: Vehicle) => progress(vehicle).steps.map((step) => step.state);
const nextIds = (vehicle: Vehicle) => progress(vehicle).next.map(({ step }) => step.id);

describe('the steps of a job', () => {
  const steps = [makeStep(), makeStep({ leftOutReason: 'module kept' }), makeStep(), makeStep()];
  const job = makeJob(first, { steps });
  const [one, , three] = steps;
  const attempt = (on: string, step: (typeof steps)[number] | undefined, outcome: 'worked' | 'failed' | 'stopped') =>
    makeAttempt(on, job, step?.id ?? '', { outcome });

  it('come one after the other where the plan says so; those left out are passed over', () => {
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

  it('stay held up by an open step that came before one that was done out of order', () => {
    const vehicle = makeVehicle(first, { jobs: [job], attempts: [attempt(first, three, 'worked')] });
    expect(states(vehicle)).toEqual(['next', 'left-out', 'done', 'later']);
    expect(progress(vehicle).steps[3]?.reasons).toMatchObject([{ kind: 'step', what: one?.id }]);
  });

  it('list the attempts at each, and those at other jobs are not counted', () => {
    const other = makeJob(first, { steps });
    const foreign = makeAttempt(first, other, one?.id ?? '');
    const vehicle = makeVehicle(first, { jobs: [job, other], attempts: [foreign, attempt(first, one, 'failed')] });
    expect(progress(vehicle).steps[0]).toMatchObject({ state: 'next', attempts: [{ outcome: 'failed' }] });
  });

  it('may be next several at once where the plan orders them only in part', () => {
    const vehicle = makeVehicle(first, {
      jobs: [plannedJob(first, [jobModule('body', 'new'), jobModule('radio', 'kept')])],
    });
    expect(nextIds(vehicle)).toEqual(['scan-before']);
    const [planned] = vehicle.jobs;
    if (!planned) throw new Error('no job');
    const scanned = { ...vehicle, attempts: [makeAttempt(first, planned, 'scan-before')] };
    expect(nextIds(scanned)).toEqual(['compare-vins', 'save-old--body']);
  });
});

describe('a job', () => {
  it('is closed on the day on which its last step was done or left out', () => {
    const steps = [makeStep(), makeStep()];
    const job = makeJob(first, { steps });
    const attempts = [makeAttempt(third, job, steps[0]?.id ?? ''), makeAttempt(second, job, steps[1]?.id ?? '')];
    expect(progress(makeVehicle(first, { jobs: [job], attempts }))).toMatchObject({ isClosed: true, closedOn: third });
    expect(progress(makeVehicle(first, { jobs: [job], attempts: attempts.slice(1) }))).toMatchObject({
      isClosed: false,
      closedOn: null,
    });
    const out = {
      ...job,
      leftOut: [{ stepId: steps[0]?.id ?? '', reason: 'not this one', by: 'technician-1', on: third }],
    };
    expect(progress(makeVehicle(first, { jobs: [out], attempts: attempts.slice(1) }))).toMatchObject({
      closedOn: third,
    });
  });

  it('can start once the part and the code are in hand that it waits for as a whole', () => {
    const part = makePart(first, { orderedOn: first });
    const request = makeCodeRequest(first, { askedOn: first });
    const steps = [makeStep({ needsPart: true }), makeStep({ needsCode: true }), makeStep()];
    const job = makeJob(first, { partId: part.id, codeRequestId: request.id, steps });
    const vehicle = makeVehicle(first, { jobs: [job], parts: [part], codeRequests: [request] });
    expect(progress(vehicle)).toMatchObject({
      canStartOn: null,
      missing: [
        { what: 'body module is not here', who: 'outside' },
        { what: 'the immobiliser code has not been given', who: 'outside' },
      ],
    });
    const here = { ...part, receivedOn: third };
    const refused = { ...request, answeredOn: second, outcome: 'refused' as const };
    expect(progress({ ...vehicle, parts: [here], codeRequests: [refused] })).toMatchObject({
      canStartOn: null,
      missing: [{ what: 'the immobiliser code was refused', who: 'manager' }],
    });
    const given = { ...refused, outcome: 'given' as const };
    expect(progress({ ...vehicle, parts: [here], codeRequests: [given] })).toMatchObject({
      canStartOn: third,
      missing: [],
    });
    const back = { ...here, returnedOn: third };
    expect(progress({ ...vehicle, parts: [back], codeRequests: [given] })).toMatchObject({
      canStartOn: null,
      missing: [{ what: 'body module is not here', who: 'manager' }],
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
    expect(blockedCode({})).toBe('the immobiliser code has not been given');
    const answered = { ...request, answeredOn: first };
    expect(blockedCode({ codeRequests: [{ ...answered, outcome: 'refused' }] })).toBe(
      'the immobiliser code was refused',
    );
    expect(blockedCode({ codeRequests: [{ ...answered, outcome: 'given' }] })).toBe('');
    const unlinked = { ...job, modules: job.modules.map((module) => ({ ...module, codeRequestId: null })) };
    expect(blockedCode({ jobs: [unlinked] })).toBe('no code is asked for Body');
  });
});

describe('a job with a plan of the general pack', () => {
  const { vehicle, job } = bodyExchange(first);

  it('is not held up as a whole by what only the radio waits for', () => {
    expect(progress(vehicle)).toMatchObject({ canStartOn: first, missing: [] });
    const all = doneUpTo(vehicle, job, 'supply-off', first, ['radio-code--radio']);
    expect(nextIds(all)).toEqual(['supply-off']);
    expect(progress(all).steps.find(({ step }) => step.id === 'radio-code--radio')).toMatchObject({
      state: 'blocked',
      blockedBy: 'no code is asked for Radio',
    });
  });

  it('while its part is on its way lets only what secures the vehicle be next', () => {
    const waiting = { ...vehicle, parts: vehicle.parts.map((part) => ({ ...part, receivedOn: null })) };
    const secured = doneUpTo(waiting, job, 'lead-off', first, ['save-old--body', 'check-used--body']);
    expect(nextIds(secured)).toEqual(['save-old--body']);
    const saved = doneUpTo(waiting, job, 'lead-off', first, ['check-used--body']);
    expect(progress(saved)).toMatchObject({ next: [], waitsFor: { what: 'body module is not here', who: 'outside' } });
  });

  it('takes a scan on arrival for the codes on record, and a checked proof for the proof of ownership', () => {
    const stated = (about: Partial<Vehicle>) => {
      const done = doneUpTo({ ...vehicle, ...about }, job, 'body-takes-identity--body', first);
      return progress(done).steps.find(({ step }) => step.id === 'body-takes-identity--body');
    };
    expect(stated({})?.state).toBe('next');
    const unproven = vehicle.codeRequests.map((request) => ({ ...request, proof: null }));
    expect(stated({ codeRequests: unproven })?.reasons).toMatchObject([
      { what: 'ownership-proven', mayBeOverridden: false },
    ]);
    const noTick = { ...job, ticks: [] };
    expect(stated({ jobs: [noTick] })).toMatchObject({ state: 'blocked', blockedBy: 'not every key is here' });
  });
});
