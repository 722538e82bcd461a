// A programming job as its form holds it: steps that may still be blank, and whether a new one begins with the usual steps. Pure.
import type { ProgrammingJobDraft, ProgrammingStep } from '../../../../app/domain/programming/programming-job.ts';
import { guessModuleKind, type ModuleKind, standardSteps } from '../../../../app/domain/programming/standard-steps.ts';
import { ok } from '../../../../app/domain/shared/result.ts';
import type { DriveKind } from '../../../../app/domain/vehicle/identity.ts';
import type { Typed } from '../../../state/edit-draft.ts';

export type JobValue = Omit<Typed<ProgrammingJobDraft>, 'steps'> & {
  readonly id: string;
  readonly steps: readonly ProgrammingStep[];
  /** Only for a job without steps: fill in the usual ones of this kind when it is saved. Empty: the kind its name suggests. */
  readonly withUsualSteps: boolean;
  readonly usualKind: ModuleKind | '';
};

export function jobValue(job: ProgrammingJobDraft): JobValue {
  return { ...job, withUsualSteps: job.steps.length === 0, usualKind: '' };
}

export function kindOf(value: Pick<JobValue, 'module' | 'usualKind'>): ModuleKind {
  return value.usualKind === '' ? guessModuleKind(value.module) : value.usualKind;
}

export function usualSteps(
  value: Pick<JobValue, 'module' | 'usualKind' | 'origin'>,
  drive: DriveKind,
  newIdentifier: () => string,
): readonly ProgrammingStep[] {
  const steps = standardSteps({ kind: kindOf(value), origin: value.origin, drive });
  return steps.map((step) => ({ id: newIdentifier(), ...step, cautions: [...step.cautions] }));
}

/** The job to judge and save: without the form's own fields, and with the usual steps where they were asked for. */
export function finishJob(value: JobValue, drive: DriveKind, newIdentifier: () => string) {
  const { withUsualSteps, usualKind: _usualKind, ...job } = value;
  const fills = withUsualSteps && job.steps.length === 0;
  return ok({ ...job, steps: fills ? usualSteps(value, drive, newIdentifier) : job.steps });
}

export function blankStep(id: string): ProgrammingStep {
  return {
    id,
    title: '',
    detail: '',
    cautions: [],
    cannotBeUndone: false,
    needsPart: false,
    needsCode: false,
    typicalMinutes: null,
    leftOutReason: '',
  };
}

/** The steps with the one at `index` moved by one place; unchanged at the ends. */
export function movedStep(steps: readonly ProgrammingStep[], index: number, by: -1 | 1): readonly ProgrammingStep[] {
  const moved = steps[index];
  const other = steps[index + by];
  if (moved === undefined || other === undefined) return steps;
  return steps.with(index, other).with(index + by, moved);
}
