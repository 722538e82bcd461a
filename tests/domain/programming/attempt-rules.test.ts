// An attempt is entered only where its step could be begun: gates, named overrides, the VIN, the day it is entered for.
import { describe, expect, it } from 'vitest';
import type { AttemptDraft } from '../../../app/domain/programming/attempt.ts';
import { attemptProblems } from '../../../app/domain/programming/attempt-rules.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { bodyExchange, doneUpTo, exampleTail } from '../../helpers/planned-job.ts';
import { makeAttempt } from '../../helpers/vehicle-maker.ts';

const [monday, tuesday, friday] = ['2026-02-02', '2026-02-03', '2026-02-06'];
const { vehicle, job } = bodyExchange(monday);

function draft(stepId: string, about: Partial<AttemptDraft> = {}): AttemptDraft {
  const { entered: _entered, ...attempt } = makeAttempt(tuesday, job, stepId, about);
  const route = job.plan.steps.find(({ id }) => id === stepId)?.routes[0] ?? 'by-hand';
  return { ...attempt, route, ...about };
}
const problems = (of: Vehicle, attempt: AttemptDraft) => attemptProblems(of, attempt, friday);
const because = { by: 'technician-1', reason: 'The old module is dead on every route.' };

describe('an attempt at a step', () => {
  it('is taken where nothing blocks the step', () => {
    expect(problems(vehicle, draft('scan-before'))).toEqual([]);
  });

  it('is refused with what is missing, and taken with a name and a reason', () => {
    const ready = doneUpTo(vehicle, job, 'fit--body', monday, ['save-old--body']);
    const jobs = [{ ...job, leftOut: [{ stepId: 'save-old--body', reason: 'dead', by: 'technician-1', on: monday }] }];
    const unsaved = { ...ready, jobs };
    const [refused, ...others] = problems(unsaved, draft('fit--body'));
    expect(refused).toEqual({
      field: 'override',
      sentence: 'The data of the old Body is not saved. Read it first, by the next route if one fails.',
    });
    expect(others).toEqual([]);
    expect(problems(unsaved, draft('fit--body', { override: because }))).toEqual([]);
    for (const reason of ['', 'ok', '..........'])
      expect(problems(unsaved, draft('fit--body', { override: { ...because, reason } }))).toMatchObject([
        { field: 'override.reason' },
      ]);
  });

  it('is never taken past what could injure somebody or break the law', () => {
    const unproven = { ...vehicle, codeRequests: vehicle.codeRequests.map((request) => ({ ...request, proof: null })) };
    const ready = doneUpTo(unproven, job, 'body-takes-identity--body', monday);
    const attempt = draft('body-takes-identity--body', { override: because, vinRead: exampleTail });
    expect(problems(ready, attempt)).toMatchObject([
      { field: 'stepId', sentence: expect.stringContaining('Nobody can go past this') },
    ]);
  });

  it('that cannot be undone asks for the last eight of the VIN, and never shows them', () => {
    const ready = doneUpTo(vehicle, job, 'write-vin--body', monday);
    expect(problems(ready, draft('write-vin--body', { vinRead: exampleTail }))).toEqual([]);
    for (const vinRead of ['', 'KP042789', '12345678', 'KP04278']) {
      const [refused] = problems(ready, draft('write-vin--body', { vinRead }));
      expect(refused?.field).toBe('vinRead');
      expect(refused?.sentence).not.toContain(exampleTail);
    }
  });

  it('is refused at a step that is done, left out, or not in the plan', () => {
    const scanned = doneUpTo(vehicle, job, 'compare-vins', monday);
    expect(problems(scanned, draft('scan-before'))).toMatchObject([{ field: 'stepId' }]);
    expect(problems(vehicle, draft('scan-twice'))).toMatchObject([{ field: 'stepId' }]);
    const jobs = [{ ...job, leftOut: [{ stepId: 'scan-before', reason: 'done', by: 'technician-1', on: monday }] }];
    expect(problems({ ...vehicle, jobs }, draft('scan-before'))).toMatchObject([{ field: 'stepId' }]);
  });

  it('is refused by a route that the step does not have, and before the job was opened', () => {
    expect(problems(vehicle, draft('scan-before', { route: 'sent-out' }))).toMatchObject([{ field: 'route' }]);
    expect(problems(vehicle, draft('scan-before', { on: '2026-02-01' }))).toMatchObject([{ field: 'on' }]);
  });

  it('is judged by the record as it stood on its day', () => {
    const late = { ...vehicle, parts: vehicle.parts.map((part) => ({ ...part, receivedOn: friday })) };
    const ready = doneUpTo(late, job, 'fit--body', tuesday);
    expect(problems(ready, draft('fit--body', { on: tuesday }))).toMatchObject([{ field: 'override' }]);
    expect(problems(ready, draft('fit--body', { on: friday }))).toEqual([]);
  });

  it('does not carry a reason to go on where nothing blocks', () => {
    expect(problems(vehicle, draft('scan-before', { override: because }))).toMatchObject([{ field: 'override' }]);
  });

  it('may be corrected later, though what it needed has been ended since', () => {
    const ready = doneUpTo(vehicle, job, 'cycle-ignition', monday, ['radio-code--radio']);
    const kept = ready.attempts.find(({ stepId }) => stepId === 'write-config--body');
    if (!kept) throw new Error('not attempted');
    const { entered: _entered, ...correction } = { ...kept, message: 'took 22 minutes' };
    expect(problems(ready, correction)).toEqual([]);
    expect(problems(ready, { ...correction, stepId: 'scan-before' })).toMatchObject([{ field: 'stepId' }]);
  });
});
