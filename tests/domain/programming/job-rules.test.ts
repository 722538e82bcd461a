// A job keeps only a plan that the shop's rules give, ticks that say something, and every step that was tried.
import { describe, expect, it } from 'vitest';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import { jobProblems } from '../../../app/domain/programming/job-rules.ts';
import type { ProgrammingJob, ProgrammingJobDraft, Tick } from '../../../app/domain/programming/programming-job.ts';
import { remakePlan } from '../../../app/domain/programming/remake-plan.ts';
import type { RulePack } from '../../../app/domain/programming/rule-pack.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { bodyExchange, doneUpTo, jobModule } from '../../helpers/planned-job.ts';

const day = '2026-02-02';
const { vehicle, job } = bodyExchange(day);
const draftOf = ({ entered: _entered, ...draft }: ProgrammingJob): ProgrammingJobDraft => draft;
const draft = draftOf(job);
const problems = (given: ProgrammingJobDraft, of: Vehicle = vehicle, pack: RulePack = generalPack) =>
  jobProblems(of, given, pack).map(({ field }) => field);
/** The shop has taken the step out that compares VINs, with what names it. */
const shorter: RulePack = {
  ...generalPack,
  version: 2,
  steps: generalPack.steps.filter(({ id }) => id !== 'compare-vins'),
  rules: generalPack.rules.map((rule) => ({
    ...rule,
    after: { ...rule.after, steps: rule.after.steps.filter((id) => id !== 'compare-vins') },
  })),
};

describe('the plan of a job', () => {
  it('is taken when it is what the rules in force give', () => {
    expect(problems(draft, { ...vehicle, jobs: [] })).toEqual([]);
    expect(problems(draft, { ...vehicle, jobs: [] }, shorter)).toEqual(['plan']);
  });

  it('is refused when a gate was taken out of it, or steps were put in another order', () => {
    const steps = draft.plan.steps.map((step) => (step.id === 'fit--body' ? { ...step, gates: [] } : step));
    expect(problems({ ...draft, plan: { ...draft.plan, steps } })).toEqual(['plan']);
  });

  it('of a running job stays as it was made when the rules change', () => {
    expect(problems({ ...draft, note: 'keys in the office' }, vehicle, shorter)).toEqual([]);
  });

  it('has to be made again when modules come or change', () => {
    const modules = [...draft.modules, jobModule('powertrain', 'kept')];
    expect(problems({ ...draft, modules })).toEqual(['plan']);
    const { job: remade } = remakePlan({ ...draft, modules }, [], generalPack, day);
    expect(problems(remade)).toEqual([]);
    const linked = draft.modules.map((module) => ({ ...module, partId: null }));
    expect(problems({ ...draft, modules: linked })).toEqual([]);
  });
});

describe('a tick', () => {
  const ticked = (tick: Pick<Tick, 'gate' | 'moduleId'>) => {
    const ticks = [...draft.ticks, { ...tick, on: day, by: 'technician-1' }];
    return jobProblems(vehicle, { ...draft, ticks }, generalPack).map(({ sentence }) => sentence);
  };

  it('vouches for what no step and no entry of the record tells', () => {
    expect(ticked({ gate: 'code-in-hand', moduleId: 'radio' })).toEqual([]);
    expect(ticked({ gate: 'keys-present', moduleId: null })).toEqual([]);
  });

  it('does not stand in for a step of the plan, a part, or a code request', () => {
    expect(ticked({ gate: 'old-module-saved', moduleId: 'body' })[0]).toContain('brings this about');
    expect(ticked({ gate: 'supply-connected', moduleId: null })[0]).toContain('brings this about');
    expect(ticked({ gate: 'part-in-hand', moduleId: 'body' })[0]).toContain('Note the part as received');
    expect(ticked({ gate: 'code-in-hand', moduleId: 'keys' })[0]).toContain('Note its answer');
  });

  it('is refused where nothing asks for it', () => {
    expect(ticked({ gate: 'airbag-wait-over', moduleId: null })).toHaveLength(1);
    expect(ticked({ gate: 'keys-present', moduleId: 'keys' })).toHaveLength(1);
    expect(ticked({ gate: 'code-in-hand', moduleId: null })).toHaveLength(1);
  });
});

describe('a step left out', () => {
  const out = (...ids: string[]) => ids.map((stepId) => ({ stepId, reason: 'not here', by: 'technician-1', on: day }));

  it('is one of the plan, once, and not done', () => {
    expect(problems({ ...draft, leftOut: out('save-old--body') })).toEqual([]);
    expect(problems({ ...draft, leftOut: out('save-old--radio') })).toEqual(['leftOut.0']);
    expect(problems({ ...draft, leftOut: out('clear-codes', 'clear-codes') })).toEqual(['leftOut.1']);
    const scanned = doneUpTo(vehicle, job, 'compare-vins', day);
    expect(problems({ ...draft, leftOut: out('scan-before') }, scanned)).toEqual(['leftOut.0']);
  });
});

describe('making the plan again', () => {
  const worked = doneUpTo(vehicle, job, 'lead-off', day);

  it('keeps attempts whose steps stay, and names those that lose theirs', () => {
    const { job: remade, losing, gone, added } = remakePlan(draft, worked.attempts, shorter, '2026-02-05');
    expect(losing).toEqual(['Compare the VIN on the vehicle with the papers and with every module that tells one']);
    expect(gone).toEqual(losing);
    expect(added).toEqual([]);
    expect(remade.formerSteps.map(({ id }) => id)).toEqual(['compare-vins']);
    expect(remade.plan).toMatchObject({ packVersion: 2, madeOn: '2026-02-05' });
    expect(problems(remade, worked, shorter)).toEqual([]);
    expect(problems({ ...remade, formerSteps: [] }, worked, shorter)).toEqual(['plan']);
  });

  it('takes a step back that an earlier plan had lost', () => {
    const without = remakePlan(draft, worked.attempts, shorter, day).job;
    const { job: back } = remakePlan(without, worked.attempts, generalPack, day);
    expect(back.formerSteps).toEqual([]);
    expect(back.plan.steps.map(({ id }) => id)).toEqual(draft.plan.steps.map(({ id }) => id));
  });

  it('lets go of what was left out or vouched for where its step or module went', () => {
    const full = {
      ...draft,
      leftOut: [{ stepId: 'compare-vins', reason: 'seen', by: 'technician-1', on: day }],
      ticks: [...draft.ticks, { gate: 'code-in-hand' as const, moduleId: 'radio', on: day, by: 'technician-1' }],
      modules: draft.modules.filter(({ kind }) => kind !== 'radio'),
    };
    const { job: remade } = remakePlan(full, [], shorter, day);
    expect(remade.leftOut).toEqual([]);
    expect(remade.ticks).toEqual(draft.ticks);
  });
});
