// What the record keeps of a plan says everything that the plan says about the order, and nothing twice.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import type { PlanModule } from '../../../app/domain/programming/job-condition.ts';
import { keepPlan } from '../../../app/domain/programming/keep-plan.ts';
import { keptPlanSchema } from '../../../app/domain/programming/kept-plan.ts';
import { moduleKindSchema } from '../../../app/domain/programming/module-kind.ts';
import { moduleOriginSchema } from '../../../app/domain/programming/module-origin.ts';
import { makePlan, type Plan } from '../../../app/domain/programming/plan.ts';
import { isAskedAsGate } from '../../../app/domain/programming/plan-constraints.ts';
import type { RulePack } from '../../../app/domain/programming/rule-pack.ts';

const someModules = fc
  .array(
    fc.record({
      kind: fc.constantFrom(...moduleKindSchema.options),
      origin: fc.constantFrom(...moduleOriginSchema.options),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((list) => list.map((one, at): PlanModule => ({ ...one, id: `mod${at}`, name: `Module ${at}` })));

/** Every pair of steps of which the first can be reached before the second along the links. */
function reachable(links: readonly { readonly before: string; readonly after: string }[]): ReadonlySet<string> {
  const followers = new Map<string, string[]>();
  for (const { before, after } of links) followers.set(before, [...(followers.get(before) ?? []), after]);
  const pairs = new Set<string>();
  for (const start of followers.keys()) {
    const queue = [start];
    for (let id = queue.pop(); id !== undefined; id = queue.pop())
      for (const after of followers.get(id) ?? []) {
        if (pairs.has(`${start} ${after}`)) continue;
        pairs.add(`${start} ${after}`);
        queue.push(after);
      }
  }
  return pairs;
}

function firmOf(plan: Plan) {
  const step = (id: string) => plan.steps.find((one) => one.id === id);
  return (link: { readonly before: string; readonly after: string; readonly ruleId: string }, letsGo: boolean) => {
    const [before, after] = [step(link.before), step(link.after)];
    return !letsGo && before !== undefined && after !== undefined && !isAskedAsGate(link.ruleId, before, after);
  };
}

/** A pack whose rules let go here and there, as a shop may edit it. */
const somePack = fc
  .array(fc.boolean(), { minLength: generalPack.rules.length, maxLength: generalPack.rules.length })
  .map(
    (letsGo): RulePack => ({
      ...generalPack,
      rules: generalPack.rules.map((rule, at) => ({
        ...rule,
        letsGoWhen: letsGo[at] && at % 3 === 0 ? 'in-vehicle-routes-failed' : rule.letsGoWhen,
      })),
    }),
  );

describe('the links that are kept', () => {
  it('order every pair of steps that the constraints order, and no other', () => {
    fc.assert(
      fc.property(someModules, somePack, (modules, pack) => {
        const plan = makePlan({ modules, pack, makerOrder: null });
        const kept = keepPlan(plan, pack, '2026-03-02');
        expect(reachable(kept.links)).toEqual(reachable(plan.constraints.filter(({ holds }) => holds)));
      }),
      { numRuns: 120 },
    );
  });

  it('order the same pairs once everything that may let go has let go', () => {
    fc.assert(
      fc.property(someModules, somePack, (modules, pack) => {
        const plan = makePlan({ modules, pack, makerOrder: null });
        const kept = keepPlan(plan, pack, '2026-03-02');
        const isFirm = firmOf(plan);
        const letsGo = new Map(kept.rules.map((rule) => [rule.id, rule.letsGo]));
        const firmKept = kept.links.filter((link) => isFirm(link, letsGo.get(link.ruleId) ?? false));
        const firm = plan.constraints.filter((one) => one.holds && isFirm(one, one.letsGoWhen !== null));
        expect(reachable(firmKept)).toEqual(reachable(firm));
      }),
      { numRuns: 120 },
    );
  });

  it('name only rules that the plan tells the reason of, and each reason stands in it once', () => {
    fc.assert(
      fc.property(someModules, (modules) => {
        const kept = keepPlan(makePlan({ modules, pack: generalPack, makerOrder: null }), generalPack, '2026-03-02');
        expect(keptPlanSchema.parse(kept)).toEqual(kept);
        expect(new Set(kept.rules.map(({ id }) => id)).size).toBe(kept.rules.length);
        const used = new Set(kept.links.map(({ ruleId }) => ruleId));
        expect(kept.rules.filter(({ id }) => !used.has(id))).toEqual([]);
      }),
    );
  });
});

describe('a kept plan', () => {
  const modules: readonly PlanModule[] = [
    { id: 'mod1', kind: 'body', origin: 'used', name: 'Body' },
    { id: 'mod2', kind: 'keys', origin: 'kept', name: 'Keys' },
  ];
  const kept = keepPlan(makePlan({ modules, pack: generalPack, makerOrder: null }), generalPack, '2026-03-02');

  it('says from which version of which pack it was made, and when', () => {
    expect(kept).toMatchObject({ packId: 'general', packVersion: generalPack.version, madeOn: '2026-03-02' });
  });

  it('stays small enough to be read by hand: under 30 kB for a body module with its keys', () => {
    expect(JSON.stringify(kept, null, 2).length).toBeLessThan(30_000);
  });

  it('is refused when its order does not keep its links, or a rule is not told', () => {
    const problems = (plan: typeof kept) => keptPlanSchema.safeParse(plan).error?.issues.map(({ message }) => message);
    expect(problems({ ...kept, steps: kept.steps.toReversed() })?.[0]).toContain('do not keep');
    expect(problems({ ...kept, rules: [] })?.[0]).toContain('does not say what rule');
    expect(problems({ ...kept, steps: [...kept.steps, ...kept.steps.slice(0, 1)] })?.[0]).toContain('same id');
  });
});
