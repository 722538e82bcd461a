// Answers the questions that a rule pack asks about the modules of a job. Knows no rule itself.
import type { ModuleKind } from './module-kind.ts';
import type { ModuleOrigin } from './module-origin.ts';
import type { JobCondition, ModuleFit } from './rule-pack.ts';

/** A module that the job touches, as a plan needs to know it. */
export type PlanModule = {
  readonly id: string;
  readonly kind: ModuleKind;
  readonly name: string;
  readonly origin: ModuleOrigin;
};

export function moduleFits(module: PlanModule, { kinds, origins }: ModuleFit): boolean {
  return (kinds === 'any' || kinds.includes(module.kind)) && (origins === 'any' || origins.includes(module.origin));
}

/** True when the condition holds for these modules together; null, no condition, always holds. */
export function holdsFor(condition: JobCondition | null, modules: readonly PlanModule[]): boolean {
  if (condition === null) return true;
  if ('has' in condition) return modules.some((module) => moduleFits(module, condition.has));
  if ('not' in condition) return !holdsFor(condition.not, modules);
  if ('all' in condition) return condition.all.every((part) => holdsFor(part, modules));
  return condition.any.some((part) => holdsFor(part, modules));
}
