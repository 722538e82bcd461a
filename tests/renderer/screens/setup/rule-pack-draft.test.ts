// Editing the rule pack: what is added is whole, what is renamed or removed takes its rules with it, and pasted text is judged before it is taken.
import { describe, expect, it } from 'vitest';
import { generalPack } from '../../../../app/domain/programming/general-pack.ts';
import { type RulePack, rulePackSchema } from '../../../../app/domain/programming/rule-pack.ts';
import {
  freeId,
  matches,
  newRule,
  newStep,
  packText,
  readPackText,
  withoutStep,
  withStep,
} from '../../../../renderer/screens/setup/rule-pack-draft.ts';

const isWhole = (pack: RulePack) => rulePackSchema.safeParse(pack).success;

describe('what is added', () => {
  it('is whole at once, and named as nothing else is', () => {
    const once = { ...generalPack, steps: [...generalPack.steps, newStep(generalPack)] };
    const twice = { ...once, steps: [...once.steps, newStep(once)] };
    expect(twice.steps.slice(-2).map(({ id }) => id)).toEqual(['own-step', 'own-step-2']);
    expect(isWhole({ ...twice, rules: [...twice.rules, newRule(twice)] })).toBe(true);
    expect(freeId('own-rule', [{ id: 'own-rule' }, { id: 'own-rule-2' }])).toBe('own-rule-3');
  });
});

describe('a step', () => {
  it('takes the rules that name it to its new name', () => {
    const at = generalPack.steps.findIndex(({ id }) => id === 'compare-vins');
    const step = generalPack.steps[at];
    if (!step) throw new Error('no step');
    const renamed = withStep(generalPack, at, { ...step, id: 'compare-all' });
    expect(isWhole(renamed)).toBe(true);
    expect(JSON.stringify(renamed)).not.toContain('"compare-vins"');
  });

  it('goes with every mention of it; a rule left without one side goes too', () => {
    for (const { id } of generalPack.steps) {
      const without = withoutStep(generalPack, id);
      expect(without.steps.some((step) => step.id === id)).toBe(false);
      for (const { before, after } of without.rules) {
        expect(before.steps.length > 0 && after.steps.length > 0).toBe(true);
        expect([...before.steps, ...after.steps]).not.toContain(id);
      }
    }
  });
});

describe('the pack as text', () => {
  it('reads back as it was', () => {
    expect(readPackText(packText(generalPack))).toEqual({ ok: true, value: generalPack });
  });

  it('is refused with sentences that say where', () => {
    const problems = (text: string) => {
      const read = readPackText(text);
      return read.ok ? [] : read.error;
    };
    expect(problems('{')[0]).toContain('not JSON');
    const [first] = generalPack.rules;
    if (!first) throw new Error('no rule');
    const odd = { ...generalPack, rules: [{ ...first, after: { ...first.after, steps: ['not-there'] } }] };
    expect(problems(JSON.stringify(odd))).toEqual([
      'rules.0.after: Rule "scan-first" names the step "not-there", which this pack does not have.',
    ]);
  });
});

describe('the search', () => {
  it('finds words in any of the texts, and everything while it is empty', () => {
    expect(matches(' VIN ', ['Compare the vin', 'x'])).toBe(true);
    expect(matches('radio', ['Compare the vin'])).toBe(false);
    expect(matches('', [])).toBe(true);
  });
});
