// How far a plan has come: what can start, what blocks the rest and why, and a whole body-module replacement from first scan to last.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import type { PlanModule } from '../../../app/domain/programming/job-condition.ts';
import { keepPlan } from '../../../app/domain/programming/keep-plan.ts';
import { makePlan, type Plan } from '../../../app/domain/programming/plan.ts';
import { type PlanFacts, type StepReadiness, stepReadiness } from '../../../app/domain/programming/plan-gates.ts';

const modules: readonly PlanModule[] = [
  { id: 'body', kind: 'body', origin: 'new', name: 'Body module' },
  { id: 'engine', kind: 'powertrain', origin: 'kept', name: 'Engine module' },
  { id: 'keys', kind: 'keys', origin: 'kept', name: 'Keys' },
  { id: 'radio', kind: 'radio', origin: 'kept', name: 'Radio' },
];
const plan = makePlan({ modules, pack: generalPack, makerOrder: null });

const inHand: PlanFacts['gatesMet'] = [
  { gate: 'part-in-hand', moduleId: 'body' },
  { gate: 'code-in-hand', moduleId: 'body' },
  { gate: 'code-in-hand', moduleId: 'keys' },
  { gate: 'ownership-proven', moduleId: null },
  { gate: 'keys-present', moduleId: null },
];
function facts(
  more: Partial<{
    done: string[];
    leftOut: string[];
    failed: [string, PlanFacts['failedRoutes'] extends ReadonlyMap<string, infer R> ? R : never][];
    gatesMet: PlanFacts['gatesMet'];
  }> = {},
): PlanFacts {
  return {
    done: new Set(more.done ?? []),
    leftOut: new Set(more.leftOut ?? []),
    failedRoutes: new Map(more.failed ?? []),
    gatesMet: more.gatesMet ?? inHand,
  };
}
function upTo(stepId: string, of: Plan = plan): string[] {
  const place = of.order.indexOf(stepId);
  if (place < 0) throw new Error(`No step ${stepId}`);
  return of.order.slice(0, place);
}
const kept = (of: Plan) => ({ plan: keepPlan(of, generalPack, '2026-03-02'), modules: of.modules });
function look(stepId: string, given: PlanFacts, of: Plan = plan): StepReadiness {
  const found = stepReadiness(kept(of), given).find((one) => one.stepId === stepId);
  if (!found) throw new Error(`No step ${stepId}`);
  return found;
}
function sentences(stepId: string, given: PlanFacts): string {
  return look(stepId, given)
    .reasons.map(({ sentence }) => sentence)
    .join(' ');
}

describe('a step of a plan', () => {
  it('can start when nothing must come before it', () => {
    const readiness = stepReadiness(kept(plan), facts());
    expect(readiness.filter(({ state }) => state === 'can-start').map(({ stepId }) => stepId)).toEqual(['scan-before']);
  });

  it('is blocked by the steps that come first, by name', () => {
    expect(sentences('write-config--body', facts({ done: upTo('write-vin--body') }))).toBe(
      'First: Write the VIN into Body module.',
    );
  });

  it('is blocked by a code that is not in hand, and is free once it is', () => {
    const done = upTo('body-takes-identity--body');
    const without = inHand.filter((one) => one.moduleId !== 'body' || one.gate !== 'code-in-hand');
    expect(sentences('body-takes-identity--body', facts({ done, gatesMet: without }))).toMatch(
      /^The code for Body module is not in hand/,
    );
    expect(look('body-takes-identity--body', facts({ done })).state).toBe('can-start');
  });

  it('does not take another module’s code for its own', () => {
    const done = upTo('radio-code--radio');
    expect(look('radio-code--radio', facts({ done })).reasons.map(({ what }) => what)).toEqual(['code-in-hand']);
  });

  it('is blocked from fitting while the old module is not saved, although the reading was left out with a reason', () => {
    const done = upTo('fit--body').filter((id) => id !== 'save-old--body');
    expect(sentences('fit--body', facts({ done, leftOut: ['save-old--body'] }))).toMatch(
      /data of the old Body module is not saved/,
    );
    const saved = [...inHand, { gate: 'old-module-saved' as const, moduleId: 'body' }];
    expect(look('fit--body', facts({ done, leftOut: ['save-old--body'], gatesMet: saved })).state).toBe('can-start');
  });

  it('may take the old module out only when it is read, or when every route in the vehicle has failed', () => {
    const done = upTo('take-out--body').filter((id) => id !== 'save-old--body' && id !== 'lead-off');
    const failed = (...routes: ('on-vehicle' | 'pass-through' | 'bench')[]) =>
      facts({ done: [...done, 'lead-off'], failed: [['save-old--body', routes]] });
    expect(look('take-out--body', failed()).state).toBe('blocked');
    expect(look('take-out--body', failed('on-vehicle')).state).toBe('blocked');
    expect(look('take-out--body', failed('bench')).state).toBe('blocked');
    const free = look('take-out--body', failed('on-vehicle', 'pass-through'));
    expect(free.state).toBe('can-start');
    expect(free.notes.join(' ')).toContain('on the bench');
    expect(look('lead-off', facts({ done, failed: [['save-old--body', ['on-vehicle', 'pass-through']]] })).state).toBe(
      'can-start',
    );
    expect(look('fit--body', failed('on-vehicle', 'pass-through')).reasons.map(({ what }) => what)).toContain(
      'old-module-saved',
    );
  });

  it('asks again for the supply once it was taken off', () => {
    const all = upTo('supply-off');
    const done = all.filter((id) => id !== 'reteach-keys--keys');
    expect(look('reteach-keys--keys', facts({ done })).state).toBe('can-start');
    const late = look('reteach-keys--keys', facts({ done: [...done, 'supply-off'] }));
    expect(late.reasons.map(({ what }) => what)).toEqual(['supply-connected']);
  });

  it('of an airbag module cannot start before the wait is over, and nobody may go past that', () => {
    const airbag = makePlan({
      modules: [{ id: 'srs', kind: 'airbag', origin: 'new', name: 'Airbag module' }],
      pack: generalPack,
      makerOrder: null,
    });
    const done = upTo('take-out--srs', airbag).filter((id) => id !== 'wait-airbag');
    const blocked = look('take-out--srs', facts({ done }), airbag);
    expect(blocked.reasons).toMatchObject([{ what: 'airbag-wait-over', mayBeOverridden: false }]);
  });

  it('waits for the high-voltage release where such a system is named, and only there', () => {
    const beside = makePlan({
      modules: [...modules, { id: 'hv', kind: 'high-voltage', origin: 'kept', name: 'Traction battery' }],
      pack: generalPack,
      makerOrder: null,
    });
    const done = upTo('lead-off', beside).filter((id) => id !== 'hv-release--hv');
    expect(look('lead-off', facts({ done }), beside).reasons).toMatchObject([
      { what: 'high-voltage-safe', mayBeOverridden: false },
    ]);
    expect(look('lead-off', facts({ done: upTo('lead-off') })).state).toBe('can-start');
  });

  it('in a contradiction that nobody has accepted is blocked with its sentence; the others go on', () => {
    const makerOrder = {
      document: 'Sheet 9',
      readOn: '2026-01-20',
      ownSteps: [],
      sequence: [],
      pairs: [{ before: 'reteach-keys--keys', after: 'body-takes-identity--body' }],
      accepted: [],
    };
    const torn = makePlan({ modules, pack: generalPack, makerOrder });
    const blocked = look('reteach-keys--keys', facts({ done: upTo('reteach-keys--keys', torn) }), torn);
    expect(blocked.reasons).toMatchObject([{ kind: 'contradiction', mayBeOverridden: true }]);
    expect(look('scan-before', facts(), torn).state).toBe('can-start');
  });
});

describe('a body module exchanged from first scan to last', () => {
  it('goes on while the radio waits for its code, and each step in the plan’s order is free when its turn comes', () => {
    const done: string[] = [];
    for (const id of plan.order.filter((one) => !['radio-code--radio', 'try-functions--radio'].includes(one))) {
      expect(look(id, facts({ done })).state, id).toBe('can-start');
      done.push(id);
    }
    const open = stepReadiness(kept(plan), facts({ done })).filter(({ state }) => state !== 'done');
    expect(open.map(({ stepId, state }) => [stepId, state])).toEqual([
      ['radio-code--radio', 'blocked'],
      ['try-functions--radio', 'blocked'],
    ]);
    const codeHere = [...inHand, { gate: 'code-in-hand' as const, moduleId: 'radio' }];
    expect(look('radio-code--radio', facts({ done, gatesMet: codeHere })).state).toBe('can-start');
  });

  it('never offers a step whose forerunners are open, whatever has been done', () => {
    fc.assert(
      fc.property(fc.subarray([...plan.order]), (done) => {
        const given = facts({ done });
        for (const { stepId, state, reasons } of stepReadiness(kept(plan), given)) {
          expect(reasons.length > 0).toBe(state === 'blocked');
          if (state !== 'can-start') continue;
          for (const { before, after, ruleId } of plan.constraints)
            if (after === stepId && !ruleId.startsWith('gate-')) expect(done).toContain(before);
        }
      }),
      { numRuns: 200 },
    );
  });
});
