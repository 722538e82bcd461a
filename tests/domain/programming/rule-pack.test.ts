// Rule packs: the shipped one is sound, and what is wrong with an edited one is said before it is used.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gateKindSchema, gates } from '../../../app/domain/programming/gate-kind.ts';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import { holdsFor, type PlanModule } from '../../../app/domain/programming/job-condition.ts';
import { makeKeptPlan } from '../../../app/domain/programming/keep-plan.ts';
import { keptPlanSchema } from '../../../app/domain/programming/kept-plan.ts';
import { moduleKindFromName, moduleKindSchema } from '../../../app/domain/programming/module-kind.ts';
import { moduleOriginSchema } from '../../../app/domain/programming/module-origin.ts';
import { makePlan } from '../../../app/domain/programming/plan.ts';
import { type JobCondition, rulePackSchema, type StepTemplate } from '../../../app/domain/programming/rule-pack.ts';

const module = fc.record({
  kind: fc.constantFrom(...moduleKindSchema.options),
  origin: fc.constantFrom(...moduleOriginSchema.options),
});
const someModules = fc
  .array(module, { minLength: 1, maxLength: 8 })
  .map((list) => list.map((one, at): PlanModule => ({ ...one, id: `mod${at}`, name: `Module ${at}` })));

function problemsOf(change: (pack: ReturnType<typeof copyOfGeneral>) => void): readonly string[] {
  const pack = copyOfGeneral();
  change(pack);
  return rulePackSchema.safeParse(pack).error?.issues.map(({ message }) => message) ?? [];
}
function copyOfGeneral() {
  return rulePackSchema.parse(JSON.parse(JSON.stringify(generalPack)));
}
function firstStep(pack: ReturnType<typeof copyOfGeneral>): StepTemplate {
  const [step] = pack.steps;
  if (!step) throw new Error('The pack has no step.');
  return step;
}

describe('the general pack', () => {
  it('is a pack, and stays the same through JSON', () => {
    expect(rulePackSchema.parse(JSON.parse(JSON.stringify(generalPack)))).toEqual(generalPack);
  });

  it('contradicts itself for no combination of modules', () => {
    fc.assert(
      fc.property(someModules, (modules) => {
        const plan = makePlan({ modules, pack: generalPack, makerOrder: null });
        expect(plan.contradictions).toEqual([]);
        expect(plan.constraints.every(({ holds }) => holds)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('gives steps that a job can keep', () => {
    fc.assert(
      fc.property(someModules, (modules) => {
        const named = modules.map((one) => ({ ...one, name: 'x'.repeat(60) }));
        const plan = makeKeptPlan({ modules: named, pack: generalPack, makerOrder: null }, '2026-03-02');
        expect(keptPlanSchema.parse(plan)).toEqual(plan);
      }),
      { numRuns: 60 },
    );
  });

  it('scans first, saves every old module before it comes out, and lets it go only at the end', () => {
    fc.assert(
      fc.property(someModules, (modules) => {
        const { order } = makePlan({ modules, pack: generalPack, makerOrder: null });
        expect(order.filter((id) => !id.startsWith('check-used'))[0]).toBe('scan-before');
        for (const { id } of modules) {
          const place = (step: string) => order.indexOf(`${step}--${id}`);
          if (place('take-out') >= 0) expect(place('save-old')).toBeLessThan(place('take-out'));
          if (place('take-out') >= 0) expect(place('save-old')).toBeGreaterThanOrEqual(0);
          if (place('release-old') >= 0) expect(place('release-old')).toBeGreaterThan(order.indexOf('scan-after'));
          if (place('write-vin') >= 0) {
            expect(place('write-vin')).toBeGreaterThan(order.indexOf('compare-vins'));
            expect(place('write-vin')).toBeGreaterThan(order.indexOf('connect-supply'));
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  it('marks every write of software or VIN and all anti-theft work as not to be undone, under a steady supply', () => {
    const lasting = [
      'write-software',
      'update-software',
      'write-vin',
      'body-takes-identity',
      'body-starts-identity',
      'take-identity',
    ];
    for (const id of [...lasting, 'teach-keys', 'reteach-keys']) {
      const template = generalPack.steps.find((one) => one.id === id);
      expect(template?.cannotBeUndone, id).toBe(true);
      expect(template?.gates, id).toContain('supply-connected');
      expect(template?.cautions, id).toContain('never-interrupt');
    }
  });

  it('asks for proof of ownership wherever it asks for a code', () => {
    const withCode = generalPack.steps.filter((one) => one.gates.includes('code-in-hand'));
    expect(withCode.length).toBeGreaterThan(4);
    for (const { gates: asked, cautions } of withCode) {
      expect(asked).toContain('ownership-proven');
      expect(cautions).toContain('anti-theft-code');
    }
  });

  it('covers every kind of module with at least one step of its own or of the whole job', () => {
    for (const kind of moduleKindSchema.options) {
      const modules: PlanModule[] = [{ id: 'm', kind, origin: 'new', name: kind }];
      const { steps } = makePlan({ modules, pack: generalPack, makerOrder: null });
      expect(
        steps.some(({ moduleId }) => moduleId === 'm'),
        kind,
      ).toBe(true);
    }
  });

  it('leaves the high-voltage system itself to others: no step takes it out, fits it or writes to it', () => {
    for (const origin of moduleOriginSchema.options) {
      const modules: PlanModule[] = [{ id: 'm', kind: 'high-voltage', origin, name: 'Traction battery' }];
      const { steps } = makePlan({ modules, pack: generalPack, makerOrder: null });
      for (const step of steps.filter(({ moduleId }) => moduleId === 'm')) {
        expect(['hv-refer-out', 'hv-release']).toContain(step.templateId);
        expect(step.cautions).toContain('high-voltage');
      }
    }
  });
});

describe('an edited pack', () => {
  it('is refused when a rule names a step that it does not have', () => {
    expect(problemsOf((pack) => pack.rules[0]?.after.steps.push('polish-the-roof'))).toEqual([
      'Rule "scan-first" names the step "polish-the-roof", which this pack does not have.',
    ]);
  });

  it('is refused when two steps have one name', () => {
    expect(problemsOf((pack) => pack.steps.push(firstStep(pack)))[0]).toMatch(/"scan-before" is used twice/);
  });

  it('is refused when a step of the whole job speaks of one module, or asks for what is asked module by module', () => {
    expect(problemsOf((pack) => Object.assign(firstStep(pack), { title: 'Scan {module}' }))[0]).toMatch(
      /cannot name one module/,
    );
    expect(problemsOf((pack) => firstStep(pack).gates.push('old-module-saved'))[0]).toMatch(/asked module by module/);
  });

  it('is refused when it asks for the high-voltage release and has no step that brings it', () => {
    expect(
      problemsOf((pack) => {
        pack.steps = pack.steps.map((step) => ({
          ...step,
          meets: step.meets.filter((gate) => gate !== 'high-voltage-safe'),
        }));
      })[0],
    ).toMatch(/no step of this pack brings it about/);
  });

  it('is refused when a rule puts a step before itself', () => {
    expect(problemsOf((pack) => pack.rules[0]?.after.steps.push('scan-before'))).toEqual([
      'Rule "scan-first" puts the step "scan-before" before itself.',
    ]);
  });

  it('is refused with a field that it should not have', () => {
    expect(rulePackSchema.safeParse({ ...generalPack, colour: 'red' }).success).toBe(false);
  });
});

describe('a condition over the modules of a job', () => {
  const body: PlanModule = { id: 'b', kind: 'body', origin: 'new', name: 'Body' };
  const keys: PlanModule = { id: 'k', kind: 'keys', origin: 'kept', name: 'Keys' };
  const hasBodyNew: JobCondition = { has: { kinds: ['body'], origins: ['new'] } };
  const hasKeysNew: JobCondition = { has: { kinds: ['keys'], origins: ['new'] } };

  it('asks for kind and origin of one and the same module', () => {
    expect(holdsFor(hasBodyNew, [body, keys])).toBe(true);
    expect(holdsFor(hasKeysNew, [body, keys])).toBe(false);
  });

  it('can be turned round and joined', () => {
    expect(holdsFor({ not: hasKeysNew }, [body, keys])).toBe(true);
    expect(holdsFor({ all: [hasBodyNew, hasKeysNew] }, [body, keys])).toBe(false);
    expect(holdsFor({ any: [hasBodyNew, hasKeysNew] }, [body, keys])).toBe(true);
    expect(holdsFor(null, [])).toBe(true);
  });
});

describe('the kind of a module, guessed from its name', () => {
  it.each([
    ['Body control module', 'body'],
    ['BCM', 'body'],
    ['Engine ECM', 'powertrain'],
    ['Immobiliser receiver ring', 'immobiliser-receiver'],
    ['Spare key', 'keys'],
    ['Steering column lock', 'steering-lock'],
    ['Battery sensor', 'battery-sensor'],
    ['Traction battery inverter', 'high-voltage'],
    ['Front radar', 'camera-radar'],
    ['ABS pump', 'brakes'],
    ['Seat heater', 'other'],
  ])('takes %s for %s', (name, kind) => {
    expect(moduleKindFromName(name)).toBe(kind);
  });
});

describe('the gates', () => {
  it('let nobody past high voltage, the airbag wait and missing proof of ownership', () => {
    const firm = gateKindSchema.options.filter((gate) => !gates[gate].mayBeOverridden);
    expect(firm).toEqual(['ownership-proven', 'airbag-wait-over', 'high-voltage-safe']);
  });
});
