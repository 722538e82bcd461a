// What holds for every plan, over packs and maker's orders made at random: an order that keeps its constraints, and nothing dropped in silence.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanModule } from '../../../app/domain/programming/job-condition.ts';
import type { MakerOrder } from '../../../app/domain/programming/maker-order.ts';
import { makePlan, type Plan, type PlanRequest } from '../../../app/domain/programming/plan.ts';
import {
  type OrderRule,
  type RulePack,
  rulePackSchema,
  type StepTemplate,
} from '../../../app/domain/programming/rule-pack.ts';

const modules: readonly PlanModule[] = [
  { id: 'm1', kind: 'body', origin: 'new', name: 'Body' },
  { id: 'm2', kind: 'keys', origin: 'kept', name: 'Keys' },
];
const everyModule = { kinds: 'any', origins: 'any' } as const;
const templateIds = ['a', 'b', 'c', 'd', 'e'];

const template = (id: string) =>
  fc
    .record({
      scope: fc.constantFrom('job' as const, 'module' as const),
      stage: fc.constantFrom('secure' as const, 'write' as const, 'prove' as const),
      asks: fc.boolean(),
      meets: fc.boolean(),
      ends: fc.boolean(),
    })
    .map(
      ({ scope, stage, asks, meets, ends }): StepTemplate => ({
        id,
        stage,
        scope,
        fits: { ...everyModule },
        when: null,
        title: scope === 'module' ? `${id} on {module}` : id,
        detail: '',
        cautions: [],
        cannotBeUndone: false,
        gates: asks ? ['supply-connected'] : [],
        meets: meets && !asks ? ['supply-connected'] : [],
        ends: ends && !asks && !meets ? ['supply-connected'] : [],
        routes: ['by-hand'],
        typicalMinutes: null,
        reason: 'invented',
        source: 'invented',
      }),
    );
const rule = (at: number) =>
  fc
    .record({
      before: fc.constantFrom(...templateIds),
      after: fc.constantFrom(...templateIds),
      modules: fc.constantFrom('same' as const, 'any' as const),
    })
    .map(
      ({ before, after, modules }): OrderRule => ({
        id: `rule-${at}`,
        before: { steps: [before], fits: { ...everyModule } },
        after: { steps: [after], fits: { ...everyModule } },
        modules,
        when: null,
        letsGoWhen: null,
        reason: 'invented',
        source: 'invented',
      }),
    );
const packs = fc
  .record({
    steps: fc.tuple(...templateIds.map(template)),
    rules: fc
      .integer({ min: 0, max: 5 })
      .chain((count) => fc.tuple(...Array.from({ length: count }, (_, at) => rule(at)))),
  })
  .map(({ steps, rules: asMade }): RulePack => {
    const onceAJob = steps.filter(({ scope }) => scope === 'job').map(({ id }) => id);
    // A pack is refused with a rule that puts one step before itself, so such a rule is not made here.
    const rules = asMade.filter(
      ({ before, after, modules }) =>
        before.steps[0] !== after.steps[0] || (modules === 'any' && !onceAJob.includes(before.steps[0] ?? '')),
    );
    const pack = {
      id: 'invented',
      name: 'Invented',
      version: 1,
      changedOn: '2026-01-05',
      note: '',
      steps,
      rules,
      reminders: [],
    };
    return rulePackSchema.parse(pack);
  });
const stepIds = templateIds.flatMap((id) => [id, `${id}--m1`, `${id}--m2`]);
const pair = fc.record({ before: fc.constantFrom(...stepIds), after: fc.constantFrom(...stepIds) });
const makerOrders = fc
  .record({
    sequence: fc.oneof(fc.constant<string[]>([]), fc.shuffledSubarray(stepIds, { maxLength: 6 })),
    pairs: fc.array(pair, { maxLength: 3 }),
  })
  .map((order): MakerOrder => ({ document: 'Sheet 7', readOn: '2026-01-05', ownSteps: [], accepted: [], ...order }));
const requests = fc
  .record({ pack: packs, makerOrder: fc.option(makerOrders) })
  .map((one): PlanRequest => ({ modules, ...one }));

type Edge = { readonly before: string; readonly after: string };

/** Written apart from the code under test: everything that can be reached from each step. */
function reach(edges: readonly Edge[]): ReadonlySet<string> {
  const pairs = new Set(edges.map(({ before, after }) => `${before}>${after}`));
  for (let size = -1; size < pairs.size; ) {
    size = pairs.size;
    for (const known of [...pairs])
      for (const { before, after } of edges) {
        const [from, to] = known.split('>');
        if (to === before) pairs.add(`${from}>${after}`);
      }
  }
  return pairs;
}
function hasCircle(edges: readonly Edge[]): boolean {
  return [...reach(edges)].some((known) => known.split('>')[0] === known.split('>')[1]);
}

/** Every constraint holds in the order, or a contradiction names it as set aside together with its rule. */
function nothingDropped(plan: Plan): void {
  const place = new Map(plan.order.map((id, at) => [id, at]));
  for (const { holds, ...constraint } of plan.constraints) {
    const isKept = (place.get(constraint.before) ?? -1) < (place.get(constraint.after) ?? -1);
    if (holds) expect(isKept, `${constraint.before} before ${constraint.after}`).toBe(true);
    else {
      const naming = plan.contradictions.filter(
        ({ setAside, rules }) =>
          setAside?.before === constraint.before &&
          setAside.after === constraint.after &&
          setAside.ruleId === constraint.ruleId &&
          rules.includes(constraint.ruleId),
      );
      expect(naming.length, `${constraint.ruleId} is named`).toBeGreaterThan(0);
    }
  }
}

describe('every plan', () => {
  it('has each of its steps once, in an order that keeps every constraint it does not name as set aside', () => {
    fc.assert(
      fc.property(requests, (request) => {
        const plan = makePlan(request);
        expect(new Set(plan.order).size).toBe(plan.steps.length);
        expect(plan.order).toEqual(plan.steps.map(({ id }) => id));
        nothingDropped(plan);
      }),
      { numRuns: 500 },
    );
  });

  it('is complete exactly when all that was asked for can be kept', () => {
    fc.assert(
      fc.property(requests, (request) => {
        const plan = makePlan(request);
        const known = new Set(plan.order);
        const named = [
          ...(request.makerOrder?.sequence ?? []),
          ...(request.makerOrder?.pairs ?? []).flatMap((one) => [one.before, one.after]),
        ];
        const isSound = !hasCircle(plan.constraints) && named.every((id) => known.has(id));
        expect(plan.isComplete).toBe(isSound);
        expect(plan.contradictions.length === 0).toBe(isSound);
      }),
      { numRuns: 500 },
    );
  });

  it('names in each contradiction rules and steps that really go round in a circle', () => {
    fc.assert(
      fc.property(requests, (request) => {
        const plan = makePlan(request);
        for (const { kind, rules, steps, sentence } of plan.contradictions) {
          if (kind === 'unknown-step') continue;
          const named = plan.constraints.filter(
            ({ ruleId, before, after }) => rules.includes(ruleId) && steps.includes(before) && steps.includes(after),
          );
          expect(hasCircle(named)).toBe(true);
          for (const id of rules) expect(sentence).toContain(id);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('names a circle within the pack even where the maker’s order breaks it', () => {
    fc.assert(
      fc.property(requests, (request) => {
        const plan = makePlan(request);
        const ofPack = plan.constraints.filter(({ from }) => from === 'pack');
        if (!hasCircle(ofPack)) return;
        const ruleIds = new Set(ofPack.map(({ ruleId }) => ruleId));
        const circles = plan.contradictions.filter(
          ({ kind, rules }) => kind === 'cycle' && rules.every((id) => ruleIds.has(id)),
        );
        expect(circles.length).toBeGreaterThan(0);
        expect(plan.isComplete).toBe(false);
      }),
      { numRuns: 500 },
    );
  });

  it('keeps all of the maker’s order wherever that order can be kept at all', () => {
    fc.assert(
      fc.property(requests, (request) => {
        const ofMaker = makePlan(request).constraints.filter(({ from }) => from === 'maker');
        fc.pre(ofMaker.length > 0 && !hasCircle(ofMaker));
        expect(ofMaker.every(({ holds }) => holds)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('loses no constraint when another is added, and is the old plan again when that one is taken away', () => {
    fc.assert(
      fc.property(packs, makerOrders, pair, (pack, makerOrder, added) => {
        const without = makePlan({ modules, pack, makerOrder });
        const withIt = makePlan({ modules, pack, makerOrder: { ...makerOrder, pairs: [...makerOrder.pairs, added] } });
        const asked = (plan: Plan) =>
          plan.constraints.map(({ ruleId, before, after }) => `${ruleId}: ${before}>${after}`);
        expect(asked(withIt)).toEqual(expect.arrayContaining(asked(without)));
        nothingDropped(withIt);
        const taken = makePlan({ modules, pack, makerOrder: { ...makerOrder, pairs: makerOrder.pairs.slice() } });
        expect(taken).toEqual(without);
      }),
      { numRuns: 300 },
    );
  });

  it('loses no constraint when a rule is added to the pack', () => {
    fc.assert(
      fc.property(requests, rule(9), (request, added) => {
        const without = makePlan(request);
        const withIt = makePlan({ ...request, pack: { ...request.pack, rules: [...request.pack.rules, added] } });
        const asked = (plan: Plan) =>
          plan.constraints.map(({ ruleId, before, after }) => `${ruleId}: ${before}>${after}`);
        expect(asked(withIt)).toEqual(expect.arrayContaining(asked(without)));
        nothingDropped(withIt);
      }),
      { numRuns: 300 },
    );
  });

  it('draws each step one layer or more behind what comes before it, and no link that others imply', () => {
    fc.assert(
      fc.property(requests, (request) => {
        const plan = makePlan(request);
        const layer = new Map(plan.layers.flatMap((ids, at) => ids.map((id) => [id, at] as const)));
        expect(layer.size).toBe(plan.steps.length);
        const held = plan.constraints.filter(({ holds }) => holds);
        for (const { before, after } of held) expect(layer.get(before) ?? 0).toBeLessThan(layer.get(after) ?? 0);
        for (const step of plan.steps)
          if (step.layer > 0)
            expect(held.some(({ before, after }) => after === step.id && layer.get(before) === step.layer - 1)).toBe(
              true,
            );
        expect(reach(plan.links)).toEqual(reach(held));
        for (const link of plan.links)
          expect(reach(plan.links.filter((other) => other !== link)).has(`${link.before}>${link.after}`)).toBe(false);
      }),
      { numRuns: 200 },
    );
  });
});
