// The maker's own order: it overrides the pack, what gives way is shown, and nothing is offered as complete before somebody says so.
import { describe, expect, it } from 'vitest';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import type { PlanModule } from '../../../app/domain/programming/job-condition.ts';
import { type MakerOrder, makerOrderSchema } from '../../../app/domain/programming/maker-order.ts';
import { makePlan, type Plan } from '../../../app/domain/programming/plan.ts';
import type { RulePack } from '../../../app/domain/programming/rule-pack.ts';

const modules: readonly PlanModule[] = [
  { id: 'body', kind: 'body', origin: 'new', name: 'Body module' },
  { id: 'engine', kind: 'powertrain', origin: 'new', name: 'Engine module' },
  { id: 'keys', kind: 'keys', origin: 'new', name: 'Keys' },
];

function planWith(order: Partial<MakerOrder>, pack: RulePack = generalPack): Plan {
  const makerOrder = makerOrderSchema.parse({
    document: 'Body repair sheet 12-4',
    readOn: '2026-01-20',
    ownSteps: [],
    sequence: [],
    pairs: [],
    accepted: [],
    ...order,
  });
  return makePlan({ modules, pack, makerOrder });
}
function isBefore(plan: Plan, first: string, second: string): boolean {
  return plan.order.includes(first) && plan.order.indexOf(first) < plan.order.indexOf(second);
}

describe('the maker’s order', () => {
  it('changes nothing where it agrees with the pack', () => {
    const plan = planWith({
      sequence: ['scan-before', 'lead-off', 'write-vin--body', 'teach-keys--keys', 'scan-after'],
    });
    expect(plan.order).toEqual(makePlan({ modules, pack: generalPack, makerOrder: null }).order);
    expect(plan.isComplete).toBe(true);
  });

  it('puts in order what the pack leaves open, without a contradiction', () => {
    const plan = planWith({ pairs: [{ before: 'take-out--engine', after: 'take-out--body' }] });
    expect(isBefore(plan, 'take-out--engine', 'take-out--body')).toBe(true);
    expect(plan.contradictions).toEqual([]);
  });

  it('overrides the pack, and names the rule that gives way, its reason and the document', () => {
    const plan = planWith({ pairs: [{ before: 'take-identity--engine', after: 'teach-keys--keys' }] });
    expect(isBefore(plan, 'take-identity--engine', 'teach-keys--keys')).toBe(true);
    expect(plan.isComplete).toBe(false);
    expect(plan.contradictions).toHaveLength(1);
    const [contradiction] = plan.contradictions;
    expect(contradiction?.kind).toBe('pack-against-maker');
    expect(contradiction?.rules.toSorted()).toEqual([
      'maker-pair-1',
      'new-keys-before-powertrain-when-body-is-new-too',
    ]);
    expect(contradiction?.setAside?.from).toBe('pack');
    expect(contradiction?.sentence).toContain('“Teach Keys to the vehicle” before “Match Engine module');
    expect(contradiction?.sentence).toContain('Nobody has kept the identity');
    expect(plan.constraints.find(({ from }) => from === 'maker')?.source).toBe(
      'Body repair sheet 12-4, read on 2026-01-20',
    );
  });

  it('overrides a chain of rules, and every rule that gives way is named', () => {
    const plan = planWith({ pairs: [{ before: 'write-config--engine', after: 'write-software--body' }] });
    expect(isBefore(plan, 'write-config--engine', 'write-software--body')).toBe(true);
    const setAside = plan.contradictions.map((one) => one.setAside?.ruleId);
    expect(setAside.length).toBeGreaterThan(0);
    expect(new Set(setAside)).toEqual(new Set(['body-written-before-others']));
    expect(plan.constraints.filter(({ holds }) => !holds)).toHaveLength(setAside.length);
  });

  it('is complete once a named person has accepted each rule that gives way, and still shows it', () => {
    const pairs = [{ before: 'take-identity--engine', after: 'teach-keys--keys' }];
    const accepted = [
      {
        ruleId: 'new-keys-before-powertrain-when-body-is-new-too',
        before: 'teach-keys--keys',
        after: 'take-identity--engine',
        by: 'person-001',
        on: '2026-01-21',
        reason: 'Read again: this engine module takes the identity by itself.',
      },
    ];
    const plan = planWith({ pairs, accepted });
    expect(plan.contradictions).toHaveLength(1);
    expect(plan.contradictions[0]?.accepted?.by).toBe('person-001');
    expect(plan.isComplete).toBe(true);
    const withAnother = planWith({ pairs: [...pairs, { before: 'scan-after', after: 'clear-codes' }], accepted });
    expect(withAnother.isComplete).toBe(false);
  });

  it('that goes round in a circle is named and cannot be accepted away', () => {
    const pairs = [
      { before: 'write-vin--body', after: 'write-vin--engine' },
      { before: 'write-vin--engine', after: 'write-vin--body' },
    ];
    const acceptance = { by: 'person-001', on: '2026-01-21', reason: 'whatever it says' };
    const accepted = [
      { ruleId: 'maker-pair-1', before: 'write-vin--body', after: 'write-vin--engine', ...acceptance },
      { ruleId: 'maker-pair-2', before: 'write-vin--engine', after: 'write-vin--body', ...acceptance },
    ];
    const plan = planWith({ pairs, accepted });
    expect(plan.contradictions.map(({ kind }) => kind)).toEqual(['cycle']);
    expect(plan.contradictions[0]?.rules.toSorted()).toEqual(['maker-pair-1', 'maker-pair-2']);
    expect(plan.contradictions[0]?.sentence).toContain('Correct the order typed in.');
    expect(plan.isComplete).toBe(false);
  });

  it('that puts a step before itself is a circle of one', () => {
    const plan = planWith({ pairs: [{ before: 'lead-off', after: 'lead-off' }] });
    expect(plan.contradictions[0]).toMatchObject({ kind: 'cycle', rules: ['maker-pair-1'], steps: ['lead-off'] });
  });

  it('that names an unknown step says so, and its neighbours keep their order', () => {
    const plan = planWith({ sequence: ['take-out--engine', 'write-vin--gearbox', 'take-out--body'] });
    expect(plan.contradictions).toMatchObject([{ kind: 'unknown-step', steps: ['write-vin--gearbox'] }]);
    expect(plan.contradictions[0]?.sentence).toContain('Body repair sheet 12-4');
    expect(isBefore(plan, 'take-out--engine', 'take-out--body')).toBe(true);
    expect(plan.isComplete).toBe(false);
  });

  it('brings steps of its own, with the document as their source', () => {
    const own = {
      id: 'wake-the-network',
      stage: 'write' as const,
      moduleId: null,
      title: 'Wake the network with the hazard lights',
      detail: '',
      cautions: [],
      cannotBeUndone: false,
      gates: ['supply-connected' as const],
      routes: ['by-hand' as const],
      typicalMinutes: 1,
    };
    const plan = planWith({ ownSteps: [own], pairs: [{ before: 'wake-the-network', after: 'write-software--body' }] });
    expect(plan.isComplete).toBe(true);
    expect(isBefore(plan, 'connect-supply', 'wake-the-network')).toBe(true);
    expect(isBefore(plan, 'wake-the-network', 'write-software--body')).toBe(true);
    expect(plan.steps.find(({ id }) => id === 'wake-the-network')?.source).toContain('Body repair sheet 12-4');
    expect(planWith({ ownSteps: [own, own] }).contradictions).toMatchObject([{ kind: 'step-twice' }]);
    expect(planWith({ ownSteps: [{ ...own, moduleId: 'gearbox' }] }).contradictions).toMatchObject([
      { kind: 'unknown-step' },
    ]);
  });

  it('does not lift what a step asks for: a gate stays although its order gives way', () => {
    const plan = planWith({ pairs: [{ before: 'fit--body', after: 'save-old--body' }] });
    const gate = plan.contradictions.find(({ setAside }) => setAside?.ruleId === 'gate-old-module-saved');
    expect(gate?.sentence).toContain('stays asked');
    expect(plan.steps.find(({ id }) => id === 'fit--body')?.gates).toContain('old-module-saved');
  });
});

describe('a circle within a pack', () => {
  const [some] = generalPack.rules;
  const circular: RulePack = {
    ...generalPack,
    rules: [
      ...generalPack.rules,
      ...(some
        ? [
            {
              ...some,
              id: 'keys-first',
              modules: 'any' as const,
              before: { ...some.before, steps: ['teach-keys'] },
              after: { ...some.after, steps: ['write-software'] },
            },
          ]
        : []),
    ],
  };

  it('is named with the rules that make it, and the plan is not complete', () => {
    const plan = makePlan({ modules, pack: circular, makerOrder: null });
    expect(plan.isComplete).toBe(false);
    expect(plan.contradictions.every(({ kind }) => kind === 'cycle')).toBe(true);
    expect(plan.contradictions[0]?.rules).toContain('keys-first');
    expect(plan.contradictions[0]?.sentence).toContain('Correct the rule pack.');
    expect(plan.order).toHaveLength(plan.steps.length);
  });

  it('is gone when the rule is taken out again', () => {
    const plan = makePlan({
      modules,
      pack: { ...circular, rules: circular.rules.filter(({ id }) => id !== 'keys-first') },
      makerOrder: null,
    });
    expect(plan).toEqual(makePlan({ modules, pack: generalPack, makerOrder: null }));
  });
});
