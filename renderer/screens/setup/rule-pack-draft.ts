// The rule pack while it is edited: new steps and rules, and text read back into a pack. Pure; the schema judges it.
import { moduleKindTitles } from '../../../app/domain/programming/module-kind.ts';
import {
  type ModuleFit,
  type OrderRule,
  type RulePack,
  rulePackSchema,
  type StepTemplate,
} from '../../../app/domain/programming/rule-pack.ts';
import { fail, ok, type Result } from '../../../app/domain/shared/result.ts';
import { originChoices } from '../../text/programming.ts';
import { setupRulesText } from '../../text/setup-rules.ts';

/** The first of 'word', 'word-2', 'word-3' … that no other has. */
export function freeId(word: string, taken: readonly { readonly id: string }[]): string {
  const ids = new Set(taken.map(({ id }) => id));
  let id = word;
  for (let number = 2; ids.has(id); number += 1) id = `${word}-${number}`;
  return id;
}

const everything: ModuleFit = { kinds: 'any', origins: 'any' };

export function newStep(pack: RulePack): StepTemplate {
  return {
    id: freeId('own-step', pack.steps),
    stage: 'secure',
    scope: 'job',
    fits: everything,
    when: null,
    title: setupRulesText.newStepTitle,
    detail: '',
    cautions: [],
    cannotBeUndone: false,
    gates: [],
    meets: [],
    ends: [],
    routes: ['by-hand'],
    typicalMinutes: null,
    reason: setupRulesText.newReason,
    source: setupRulesText.newSource,
  };
}

/** Between the first two steps, so that it is whole; the person then says between which. */
export function newRule(pack: RulePack): OrderRule {
  const [first, second] = pack.steps.map(({ id }) => id);
  return {
    id: freeId('own-rule', pack.rules),
    before: { steps: first ? [first] : [], fits: everything },
    after: { steps: second ? [second] : [], fits: everything },
    modules: 'any',
    when: null,
    letsGoWhen: null,
    reason: setupRulesText.newReason,
    source: setupRulesText.newSource,
  };
}

/** A step goes with everything that names it: a rule that then has no step on one side goes too. */
export function withoutStep(pack: RulePack, stepId: string): RulePack {
  const other = (id: string) => id !== stepId;
  return {
    ...pack,
    steps: pack.steps.filter(({ id }) => other(id)),
    rules: pack.rules
      .map((rule) => ({
        ...rule,
        before: { ...rule.before, steps: rule.before.steps.filter(other) },
        after: { ...rule.after, steps: rule.after.steps.filter(other) },
      }))
      .filter(({ before, after }) => before.steps.length > 0 && after.steps.length > 0),
  };
}

/** A step under another name: rules that name it follow. */
export function withStep(pack: RulePack, index: number, step: StepTemplate): RulePack {
  const before = pack.steps[index]?.id;
  const follow = (id: string) => (id === before ? step.id : id);
  return {
    ...pack,
    steps: pack.steps.with(index, step),
    rules:
      before === step.id
        ? pack.rules
        : pack.rules.map((rule) => ({
            ...rule,
            before: { ...rule.before, steps: rule.before.steps.map(follow) },
            after: { ...rule.after, steps: rule.after.steps.map(follow) },
          })),
  };
}

/** With the entry taken in or left out, in the order of all. */
export function toggled<Entry>(all: readonly Entry[], chosen: readonly Entry[], entry: Entry, isIn: boolean): Entry[] {
  return all.filter((one) => (one === entry ? isIn : chosen.includes(one)));
}

/** 'Body control module, Keys; new, used'. */
export function sayFits({ kinds, origins }: ModuleFit): string {
  const { anyKind, anyOrigin, fits } = setupRulesText;
  return fits(
    kinds === 'any' ? anyKind : kinds.map((kind) => moduleKindTitles[kind]).join(', '),
    origins === 'any' ? anyOrigin : origins.map((origin) => originChoices[origin].toLowerCase()).join(', '),
  );
}

export function packText(pack: RulePack): string {
  return JSON.stringify(pack, null, 2);
}

/** The pack that the text says, or what stands against it in sentences, each with its place. */
export function readPackText(text: string): Result<RulePack, readonly string[]> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return fail([setupRulesText.notJson(error instanceof Error ? error.message : String(error))]);
  }
  const read = rulePackSchema.safeParse(json);
  if (read.success) return ok(read.data);
  return fail(read.error.issues.map(({ path, message }) => setupRulesText.problemAt(path.join('.'), message)));
}

/** True when one of the words stands in the step or rule; everything for an empty search. */
export function matches(search: string, texts: readonly string[]): boolean {
  const words = search.trim().toLowerCase();
  return words === '' || texts.some((text) => text.toLowerCase().includes(words));
}
