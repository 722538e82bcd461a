// Gathers what must come before what in one job: from the pack's gates, the pack's rules and the maker's order. Decides nothing.
import { type GateKind, gates } from './gate-kind.ts';
import { holdsFor, moduleFits, type PlanModule } from './job-condition.ts';
import type { MakerOrder } from './maker-order.ts';
import type { DraftStep } from './plan-steps.ts';
import type { OrderRule, RulePack } from './rule-pack.ts';

export type Constraint = {
  /** Step ids: `before` is done first. */
  readonly before: string;
  readonly after: string;
  readonly ruleId: string;
  readonly reason: string;
  readonly source: string;
  readonly from: 'pack' | 'maker';
  readonly letsGoWhen: OrderRule['letsGoWhen'];
};

/** True when what `provider` makes true, or ends, is what `step` asks for: a gate asked module by module only counts for its module. */
export function concernsSameGate(
  gate: GateKind,
  provider: Pick<DraftStep, 'moduleId'>,
  step: Pick<DraftStep, 'moduleId'>,
): boolean {
  return gates[gate].scope === 'job' || provider.moduleId === step.moduleId;
}

/** True for a link whose first step brings about what the second asks for as a gate: the gate itself is judged, the link only orders. */
export function isAskedAsGate(
  ruleId: string,
  before: Pick<DraftStep, 'meets'>,
  after: Pick<DraftStep, 'gates'>,
): boolean {
  return after.gates.some((gate) => ruleId === `gate-${gate}` && before.meets.includes(gate));
}

function gateConstraints(steps: readonly DraftStep[]): Constraint[] {
  const found: Constraint[] = [];
  const add = (before: DraftStep, after: DraftStep, gate: GateKind, reason: string) => {
    if (before.id === after.id) return;
    const source = before.source;
    found.push({
      before: before.id,
      after: after.id,
      ruleId: `gate-${gate}`,
      reason,
      source,
      from: 'pack',
      letsGoWhen: null,
    });
  };
  for (const step of steps)
    for (const gate of step.gates) {
      const providers = steps.filter((one) => one.meets.includes(gate) && concernsSameGate(gate, one, step));
      const enders = steps.filter((one) => one.ends.includes(gate) && concernsSameGate(gate, one, step));
      for (const provider of providers)
        add(provider, step, gate, `“${step.title}” asks for what “${provider.title}” brings about.`);
      for (const ender of enders) add(step, ender, gate, `“${ender.title}” ends what “${step.title}” asks for.`);
    }
  return found;
}

function ruleConstraints(rule: OrderRule, steps: readonly DraftStep[], modules: readonly PlanModule[]): Constraint[] {
  if (!holdsFor(rule.when, modules)) return [];
  const choose = (choice: OrderRule['before']) =>
    steps.filter((step) => {
      if (step.templateId === null || !choice.steps.includes(step.templateId)) return false;
      const module = modules.find((one) => one.id === step.moduleId);
      return module === undefined || moduleFits(module, choice.fits);
    });
  const { id: ruleId, reason, source, letsGoWhen } = rule;
  const afters = choose(rule.after);
  return choose(rule.before).flatMap((before) =>
    afters
      .filter((after) => {
        if (after.id === before.id) return false;
        return (
          rule.modules === 'any' ||
          [before.moduleId, after.moduleId].includes(null) ||
          before.moduleId === after.moduleId
        );
      })
      .map((after) => ({
        before: before.id,
        after: after.id,
        ruleId,
        reason,
        source,
        from: 'pack' as const,
        letsGoWhen,
      })),
  );
}

/**
 * Everything the pack asks for, the most binding first: what gates imply, then the rules as listed. A rule that meets only one side in
 * this job says nothing.
 */
export function packConstraints(
  pack: RulePack,
  steps: readonly DraftStep[],
  modules: readonly PlanModule[],
): readonly Constraint[] {
  return [...gateConstraints(steps), ...pack.rules.flatMap((rule) => ruleConstraints(rule, steps, modules))];
}

/** What the maker's document asks for, and the ids it names that this job does not have; neighbours of such an id are still joined. */
export function makerConstraints(
  maker: MakerOrder,
  steps: readonly DraftStep[],
): { readonly constraints: readonly Constraint[]; readonly unknownIds: readonly string[] } {
  const known = new Set(steps.map(({ id }) => id));
  const named = [...maker.sequence, ...maker.pairs.flatMap(({ before, after }) => [before, after])];
  const unknownIds = [...new Set(named.filter((id) => !known.has(id)))];
  const sequence = maker.sequence.filter((id) => known.has(id));
  const constraintOf = (before: string, after: string, ruleId: string): Constraint => ({
    before,
    after,
    ruleId,
    reason: `The maker’s document “${maker.document}” gives this order.`,
    source: `${maker.document}, read on ${maker.readOn}`,
    from: 'maker',
    letsGoWhen: null,
  });
  return {
    constraints: [
      ...sequence.slice(1).map((after, at) => constraintOf(sequence[at] ?? after, after, `maker-sequence-${at + 1}`)),
      ...maker.pairs.flatMap(({ before, after }, at) =>
        known.has(before) && known.has(after) ? [constraintOf(before, after, `maker-pair-${at + 1}`)] : [],
      ),
    ],
    unknownIds,
  };
}
