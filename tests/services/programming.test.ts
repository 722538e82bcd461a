// Programming across vehicles and in the settings: rules counted up, history as counts, plans judged by the rules in force, what can be done next.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { generalPack } from '../../app/domain/programming/general-pack.ts';
import { makeKeptPlan } from '../../app/domain/programming/keep-plan.ts';
import type { JobModule, ProgrammingJobDraft } from '../../app/domain/programming/programming-job.ts';
import type { RulePack } from '../../app/domain/programming/rule-pack.ts';
import { vinTail } from '../../app/domain/vehicle/vin.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople, testToday } from '../helpers/open-test-desk.ts';

/** Worked example of a public encyclopedia article on the VIN; its check digit holds. */
const vin = '1M8GDM9AXKP042788';
let desk: TestDesk;
let id: string;
let revision: number;

const radio: JobModule = {
  id: 'mod1',
  kind: 'radio',
  name: 'Radio',
  origin: 'kept',
  partId: null,
  codeRequestId: null,
};

function jobOf(modules: JobModule[], pack: RulePack = generalPack): ProgrammingJobDraft {
  return {
    id: 'job-0001',
    openedOn: testToday,
    title: 'Radio',
    faultId: null,
    modules,
    plan: makeKeptPlan({ modules, pack, makerOrder: null }, testToday),
    makerOrder: null,
    ticks: [],
    leftOut: [],
    formerSteps: [],
    note: '',
  };
}
async function put(list: 'jobs' | 'attempts', item: object) {
  const change = { kind: 'put', list, item } as never;
  const answer = await desk.ask('vehicle:change', { id, baseRevision: revision, change });
  revision = answer.view.revision;
}
async function refusedPut(list: 'jobs' | 'attempts', item: object) {
  const change = { kind: 'put', list, item } as never;
  return (await desk.refused('vehicle:change', { id, baseRevision: revision, change })).problems;
}
function attemptAt(stepId: string, about: object = {}) {
  return {
    id: `attempt-${stepId}`,
    jobId: 'job-0001',
    stepId,
    on: testToday,
    person: 'tech-one',
    route: 'on-vehicle',
    outcome: 'worked',
    vinRead: '',
    override: null,
    voltsBefore: null,
    voltsLowest: null,
    voltsAfter: null,
    message: '',
    evidence: '',
    ...about,
  };
}
async function saveRules(value: RulePack[]) {
  const { revision: baseRevision } = await desk.ask('shop:read', {});
  return desk.ask('shop:change', { baseRevision, change: { part: 'rulePacks', value } });
}

beforeEach(async () => {
  desk = await openTestDesk();
  const { revision: baseRevision } = await desk.ask('shop:read', {});
  await desk.ask('shop:change', { baseRevision, change: { part: 'people', value: [...testPeople] } });
  const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1', vin));
  ({ id } = taken.view.vehicle);
  ({ revision } = taken.view);
});
afterEach(() => desk.discard());

describe('the rules of programming', () => {
  const note = (words: string): RulePack => ({ ...generalPack, note: words });

  it('are those that the program comes with until the shop has its own', async () => {
    expect(await desk.ask('programming:pack', {})).toEqual(generalPack);
  });

  it('count up with each save that changes them, and not without', async () => {
    await saveRules([note('ours')]);
    const first = await desk.ask('programming:pack', {});
    expect(first).toMatchObject({ note: 'ours', version: 2, changedOn: testToday });
    await saveRules([first]);
    expect((await desk.ask('programming:pack', {})).version).toBe(2);
    await saveRules([{ ...first, note: 'ours again' }]);
    expect((await desk.ask('programming:pack', {})).version).toBe(3);
  });

  it('never use a version again that a plan was made from, also after going back to the shipped ones', async () => {
    await saveRules([note('ours')]);
    const own = await desk.ask('programming:pack', {});
    await put('jobs', jobOf([radio], own));
    await saveRules([]);
    expect(await desk.ask('programming:pack', {})).toEqual(generalPack);
    await saveRules([note('another')]);
    expect((await desk.ask('programming:pack', {})).version).toBe(3);
  });

  it('are one pack under its own name', async () => {
    const { revision: baseRevision } = await desk.ask('shop:read', {});
    const value = [{ ...generalPack, id: 'another' }];
    const answer = await desk.refused('shop:change', { baseRevision, change: { part: 'rulePacks', value } });
    expect(answer.problems).toMatchObject([{ field: 'rulePacks' }]);
  });

  it('decide in the main process which plan may be kept', async () => {
    await saveRules([
      {
        ...generalPack,
        steps: generalPack.steps.filter(({ id: step }) => step !== 'teach-battery'),
        rules: generalPack.rules
          .map((rule) => ({
            ...rule,
            before: { ...rule.before, steps: rule.before.steps.filter((step) => step !== 'teach-battery') },
            after: { ...rule.after, steps: rule.after.steps.filter((step) => step !== 'teach-battery') },
          }))
          .filter(({ after }) => after.steps.length > 0),
      },
    ]);
    const sensor: JobModule = { ...radio, kind: 'battery-sensor', origin: 'new', name: 'Battery sensor' };
    expect(await refusedPut('jobs', jobOf([sensor]))).toMatchObject([{ field: 'plan' }]);
    await put('jobs', jobOf([sensor], await desk.ask('programming:pack', {})));
  });
});

describe('an attempt', () => {
  it('is refused in the main process while its step is blocked, also to a technician', async () => {
    await put('jobs', jobOf([radio]));
    await desk.ask('desk:set-person', { personId: 'tech-one' });
    expect(await refusedPut('attempts', attemptAt('clear-codes'))).toMatchObject([{ field: 'override' }]);
    await put('attempts', attemptAt('scan-before'));
  });

  it('at a step that cannot be undone needs the VIN of this vehicle', async () => {
    await put('jobs', jobOf([radio]));
    await put('attempts', attemptAt('scan-before'));
    await put('attempts', attemptAt('connect-supply', { route: 'by-hand' }));
    const update = (vinRead: string) => attemptAt('update-software--mod1', { vinRead });
    for (const wrong of ['', '12345678']) {
      const [problem] = await refusedPut('attempts', update(wrong));
      expect(problem?.field).toBe('vinRead');
      expect(problem?.sentence).not.toContain(vinTail(vin));
    }
    await put('attempts', update(vinTail(vin)));
  });

  it('adds to what the shop knows of a route, as counts and nothing else', async () => {
    await put('jobs', jobOf([radio]));
    await put('attempts', attemptAt('scan-before'));
    await put('attempts', attemptAt('connect-supply', { route: 'by-hand' }));
    const vinRead = vinTail(vin);
    await put('attempts', attemptAt('update-software--mod1', { id: 'attempt-fail', vinRead, outcome: 'failed' }));
    await put('attempts', attemptAt('update-software--mod1', { vinRead, route: 'pass-through' }));
    await desk.ask('desk:set-person', { personId: 'tech-one' });
    expect(await desk.ask('programming:routes', { moduleKind: 'radio' })).toEqual([
      { route: 'on-vehicle', worked: 0, tried: 1 },
      { route: 'pass-through', worked: 1, tried: 1 },
    ]);
    expect(await desk.ask('programming:routes', { moduleKind: 'body' })).toEqual([]);
  });
});

describe('next jobs', () => {
  it('show a technician what can be done and why in this order, without an amount', async () => {
    await put('jobs', jobOf([radio]));
    const ofManager = await desk.ask('next-jobs:read', {});
    expect(ofManager.order).toMatchObject([{ stockNumber: 'LW-1', tasks: [{ kind: 'step', factId: 'job-0001' }] }]);
    expect(ofManager.order[0]?.lossCentsPerDay).not.toBeNull();
    await desk.ask('desk:set-person', { personId: 'tech-one' });
    const ofTechnician = await desk.ask('next-jobs:read', {});
    expect(ofTechnician.order).toMatchObject([{ stockNumber: 'LW-1', lossCentsPerDay: null }]);
    expect(JSON.stringify(ofTechnician)).not.toMatch(/\d+\.\d\d/);
  });
});
