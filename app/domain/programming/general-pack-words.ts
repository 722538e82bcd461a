// What the tables of the general rule pack have in common: groups of modules, and steps and rules with the usual fields filled in.
import type { ModuleKind } from './module-kind.ts';
import { moduleKindSchema } from './module-kind.ts';
import type { ModuleOrigin } from './module-origin.ts';
import type { JobCondition, ModuleFit, OrderRule, StepTemplate } from './rule-pack.ts';

export const commonPractice = 'common practice, no source';

/** Modules that are bolted in and plugged; keys are not, and the high-voltage system is not touched by the shop. */
export const fittedKinds: ModuleKind[] = [
  'body',
  'powertrain',
  'immobiliser-receiver',
  'instrument-cluster',
  'radio',
  'gateway',
  'transmission',
  'brakes',
  'airbag',
  'steering-lock',
  'battery-sensor',
  'camera-radar',
  'other',
];
/** Those that commonly carry software and a VIN of their own. */
export const writtenKinds: ModuleKind[] = [
  'body',
  'powertrain',
  'instrument-cluster',
  'radio',
  'gateway',
  'transmission',
  'brakes',
  'airbag',
  'camera-radar',
  'other',
];
export const identityKinds: ModuleKind[] = [
  'body',
  'powertrain',
  'immobiliser-receiver',
  'instrument-cluster',
  'steering-lock',
];
export const exchanged: ModuleOrigin[] = ['new', 'used', 'repaired', 'cloned'];
/** Without this vehicle's data, unlike a repaired or a cloned one. */
export const foreign: ModuleOrigin[] = ['new', 'used'];

export function modulesOf(kinds: ModuleFit['kinds'], origins: ModuleFit['origins'] = 'any'): ModuleFit {
  return { kinds, origins };
}

type Plain = Omit<StepTemplate, 'when' | 'cautions' | 'cannotBeUndone' | 'gates' | 'meets' | 'ends' | 'source'> & {
  readonly source?: string;
};

export function step(plain: Plain, more: Partial<StepTemplate> = {}): StepTemplate {
  return {
    when: null,
    cautions: [],
    cannotBeUndone: false,
    gates: [],
    meets: [],
    ends: [],
    source: commonPractice,
    ...plain,
    ...more,
  };
}

export function kindsOtherThan(...left: readonly ModuleKind[]): ModuleKind[] {
  return moduleKindSchema.options.filter((kind) => !left.includes(kind));
}

export function stepsChosen(steps: readonly string[], fits: ModuleFit = modulesOf('any')): OrderRule['before'] {
  return { steps: [...steps], fits };
}

/** Not the case where all that is exchanged is left to people qualified for high voltage. */
export const somethingIsWritten: JobCondition = {
  any: [{ has: modulesOf([...fittedKinds, 'keys'], exchanged) }, { not: { has: modulesOf('any', exchanged) } }],
};

/** A rule between all modules, without a condition, of common practice, unless said otherwise. */
export function rule(
  plain: Pick<OrderRule, 'id' | 'before' | 'after' | 'reason'>,
  more: Partial<OrderRule> = {},
): OrderRule {
  return { modules: 'any', when: null, letsGoWhen: null, source: commonPractice, ...plain, ...more };
}
