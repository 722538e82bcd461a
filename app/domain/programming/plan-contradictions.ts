// Says in sentences what does not agree in a plan, with the rules that make it. Decides nothing.
import type { AcceptedContradiction, MakerOrder } from './maker-order.ts';
import type { Constraint } from './plan-constraints.ts';
import type { Conflict } from './settle-constraints.ts';

export type Contradiction = {
  readonly kind: 'cycle' | 'pack-against-maker' | 'unknown-step' | 'step-twice';
  /** The rules that make it, by id; empty for a step that cannot be placed. */
  readonly rules: readonly string[];
  /** Every step that takes part. */
  readonly steps: readonly string[];
  /** The constraint that the shown order does not keep; null when it keeps all of them. */
  readonly setAside: Constraint | null;
  /** Who has seen it and why it is right here. Only a rule of the pack that gives way to the maker can be accepted. */
  readonly accepted: AcceptedContradiction | null;
  readonly sentence: string;
};

type TitleOf = (stepId: string) => string;

function sayLink({ before, after, ruleId, from }: Constraint, titleOf: TitleOf): string {
  const by = from === 'maker' ? `the maker’s order, ${ruleId}` : `rule ${ruleId}`;
  return `“${titleOf(before)}” before “${titleOf(after)}” (${by})`;
}

function sayConflict({ kind, circle, setAside }: Conflict, titleOf: TitleOf): string {
  const links = circle.map((link) => sayLink(link, titleOf)).join('; ');
  if (kind === 'cycle') {
    const where = circle.every(({ from }) => from === 'maker') ? 'the order typed in' : 'the rule pack';
    return `These rules go round in a circle, so no order keeps them all: ${links}. Correct ${where}.`;
  }
  const rule = setAside ?? circle[0];
  const stays = rule?.ruleId.startsWith('gate-')
    ? ' What that step asks for stays asked: going past it takes a named person and a reason.'
    : '';
  return (
    `The maker’s order and the rule pack do not agree: ${links}. The maker’s order is followed and rule ${rule?.ruleId ?? ''} gives way` +
    `${rule ? ` (its reason: ${rule.reason.replace(/\.$/, '')})` : ''}. Check that the document was read rightly, and say so.${stays}`
  );
}

export function describeConflict(conflict: Conflict, titleOf: TitleOf): Contradiction {
  return {
    kind: conflict.kind,
    rules: [...new Set(conflict.circle.map(({ ruleId }) => ruleId))],
    steps: [...new Set(conflict.circle.flatMap(({ before, after }) => [before, after]))],
    setAside: conflict.setAside,
    accepted: conflict.accepted,
    sentence: sayConflict(conflict, titleOf),
  };
}

function misplaced(kind: 'unknown-step' | 'step-twice', id: string, sentence: string): Contradiction {
  return { kind, rules: [], steps: [id], setAside: null, accepted: null, sentence };
}

export function describeUnknownStep(id: string, { document }: MakerOrder): Contradiction {
  return misplaced(
    'unknown-step',
    id,
    `The order from “${document}” names the step “${id}”, which this job does not have. Name the module it belongs to, or correct the order.`,
  );
}

export function describeUnknownModule(stepTitle: string, id: string, { document }: MakerOrder): Contradiction {
  return misplaced(
    'unknown-step',
    id,
    `The step “${stepTitle}” from “${document}” belongs to a module that this job does not name. Add the module, or correct the step.`,
  );
}

export function describeStepTwice(stepTitle: string, id: string, { document }: MakerOrder): Contradiction {
  return misplaced(
    'step-twice',
    id,
    `The step “${stepTitle}” from “${document}” has the same id as another step, “${id}”. Give it another, or leave it out.`,
  );
}
