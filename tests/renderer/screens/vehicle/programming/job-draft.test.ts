// A programming job while it is written: modules from what the record tells, a plan that follows from them, nothing lost when it is opened again.
import { describe, expect, it } from 'vitest';
import { generalPack } from '../../../../../app/domain/programming/general-pack.ts';
import { programmingJobDraftSchema } from '../../../../../app/domain/programming/programming-job.ts';
import {
  blankModule,
  finishJob,
  freshJob,
  type JobValue,
  jobValue,
  keptModule,
  offeredModules,
  type Planning,
  plannedJob,
  renamed,
  titleFor,
} from '../../../../../renderer/screens/vehicle/programming/job-draft.ts';
import { bodyExchange } from '../../../../helpers/planned-job.ts';
import { exampleVehicle } from '../../../../helpers/sheet-example.ts';

const today = '2026-03-18';
const planning: Planning = { pack: generalPack, today, attempts: [], before: null };

function finished(value: JobValue, how: Planning = planning) {
  const result = finishJob(value, how);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return programmingJobDraftSchema.parse(result.value);
}
function refused(value: JobValue, how: Planning = planning) {
  const result = finishJob(value, how);
  return result.ok ? [] : result.error.map(({ field }) => field);
}
const fault = exampleVehicle.faults.find((candidate) => candidate.id === 'fault-body') ?? null;
const fresh = freshJob('job-00001', today, { ...exampleVehicle, jobs: [] }, fault);

describe('a new job', () => {
  it('takes the fault, the module, the part and the code request that belong together', () => {
    expect(fresh).toMatchObject({
      faultId: 'fault-body',
      modules: [{ kind: 'body', partId: 'part-body', codeRequestId: 'code-body' }],
    });
  });

  it('is kept with the plan of the rules in force, and named after what is exchanged', () => {
    const job = finished(jobValue(fresh));
    expect(job.title).toBe(fresh.modules[0]?.name);
    expect(job.plan).toMatchObject({ packId: 'general', madeOn: today });
    expect(job.plan.steps.length).toBeGreaterThan(15);
  });

  it('asks for a name, and says so where the rules have nothing to do', () => {
    const blank = { ...fresh, modules: [blankModule([])] };
    expect(refused(jobValue(blank))).toEqual(['modules.0.name']);
    const two = { ...fresh, modules: [...fresh.modules, blankModule(fresh.modules)] };
    expect(refused(jobValue(two))).toEqual(['modules.1.name']);
    expect(refused(jobValue(fresh), { ...planning, pack: null })).toEqual(['']);
    expect(refused(jobValue(fresh), { ...planning, pack: { ...generalPack, steps: [] } })).toEqual(['modules']);
  });
});

describe('a job opened again', () => {
  const { job } = bodyExchange('2026-03-02');
  const { entered: _entered, ...before } = job;
  const opened: Planning = { ...planning, before };

  it('is as it was when nothing is changed, whatever has become of the rules', () => {
    expect(finished(jobValue(before), { ...opened, pack: { ...generalPack, version: 7 } })).toEqual(before);
    expect(finished(jobValue(before), { ...opened, pack: null })).toEqual(before);
  });

  it('keeps its plan when parts and codes are linked otherwise, and has it made again for another module', () => {
    const unlinked = before.modules.map((module) => ({ ...module, partId: null }));
    expect(finished({ ...jobValue(before), modules: unlinked }, opened).plan).toEqual(before.plan);
    const kept = before.modules.map((module) => ({ ...module, origin: 'kept' as const }));
    expect(finished({ ...jobValue(before), modules: kept }, opened).plan.madeOn).toBe(today);
  });

  it('is planned again when that is asked for', () => {
    expect(plannedJob(jobValue(before, true), opened)?.job.plan.madeOn).toBe(today);
  });
});

describe('modules', () => {
  it('are of the kind that their name suggests until a person chooses another', () => {
    const named = renamed(blankModule([]), 'Instrument cluster');
    expect(named.kind).toBe('instrument-cluster');
    expect(renamed({ ...named, kind: 'radio' }, 'Airbag').kind).toBe('radio');
  });

  it('have ids that the job has not used', () => {
    expect(blankModule([{ id: 'mod1' }, { id: 'mod4' }, { id: 'body' }]).id).toBe('mod5');
  });

  it('that often belong to it are offered as kept, the high-voltage system only where there is one', () => {
    const kinds = (drive: 'combustion' | 'hybrid') => offeredModules(fresh.modules, drive).map(({ kind }) => kind);
    expect(kinds('combustion')).toEqual(['keys', 'powertrain', 'radio']);
    expect(kinds('hybrid')[0]).toBe('high-voltage');
  });

  it('that are keys share the code of the body module', () => {
    expect(keptModule('keys', 'Keys', fresh.modules)).toMatchObject({ origin: 'kept', codeRequestId: 'code-body' });
    expect(keptModule('radio', 'Radio', fresh.modules).codeRequestId).toBeNull();
  });

  it('that are exchanged give the job its name; the kept ones only where none is', () => {
    const [body] = fresh.modules;
    if (!body) throw new Error('no module');
    const keys = keptModule('keys', 'Keys', fresh.modules);
    expect(titleFor([{ ...body, name: 'Body' }, keys])).toBe('Body');
    expect(titleFor([keys])).toBe('Keys');
  });
});
