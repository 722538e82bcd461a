// The maker's own order while it is typed: steps put in a row, steps of its own. Pure.
import type { KeptPlan } from '../../../../app/domain/programming/kept-plan.ts';
import type { MakerOrder, MakerStep } from '../../../../app/domain/programming/maker-order.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';

export function blankOrder(today: Day): MakerOrder {
  return { document: '', readOn: today, ownSteps: [], sequence: [], pairs: [], accepted: [] };
}

/** The next id for an own step that is used neither by another nor by a step of the plan. */
export function blankOwnStep(order: MakerOrder, plan: KeptPlan | null): MakerStep {
  const used = new Set([...order.ownSteps.map(({ id }) => id), ...(plan?.steps ?? []).map(({ id }) => id)]);
  let number = 1;
  while (used.has(`own-${number}`)) number += 1;
  return {
    id: `own-${number}`,
    stage: 'write',
    moduleId: null,
    title: '',
    detail: '',
    cautions: [],
    cannotBeUndone: false,
    gates: [],
    routes: ['on-vehicle'],
    typicalMinutes: null,
  };
}

/** What can still be put in the row: steps of the pack's plan and own steps, each with its title, those in the row left out. */
export function stepsToChoose(
  order: MakerOrder,
  plan: KeptPlan | null,
): readonly { readonly id: string; readonly title: string }[] {
  const own = order.ownSteps.map(({ id, title }) => ({ id, title: title || id }));
  const ofPack = (plan?.steps ?? []).filter(({ id }) => !own.some((step) => step.id === id));
  return [...own, ...ofPack].filter(({ id }) => !order.sequence.includes(id));
}

export function titleOfStep(order: MakerOrder, plan: KeptPlan | null, stepId: string): string {
  const step = [...order.ownSteps, ...(plan?.steps ?? [])].find(({ id }) => id === stepId);
  return step?.title || stepId;
}

/** The row with the step at `from` one place up or down; unchanged at the ends. */
export function moved(sequence: readonly string[], from: number, by: -1 | 1): string[] {
  const [step, other] = [sequence[from], sequence[from + by]];
  if (step === undefined || other === undefined) return [...sequence];
  return sequence.with(from, other).with(from + by, step);
}

/** Without an own step, wherever the order names it. */
export function withoutOwnStep(order: MakerOrder, stepId: string): MakerOrder {
  const isOther = (id: string) => id !== stepId;
  return {
    ...order,
    ownSteps: order.ownSteps.filter(({ id }) => isOther(id)),
    sequence: order.sequence.filter(isOther),
    pairs: order.pairs.filter(({ before, after }) => isOther(before) && isOther(after)),
    accepted: order.accepted.filter(({ before, after }) => isOther(before) && isOther(after)),
  };
}
