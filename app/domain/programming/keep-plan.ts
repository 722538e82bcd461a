// Turns a plan into what the record keeps of it: nothing that can be worked out from the rest, no text twice. Makes no plan itself.
import type { Day } from '../shared/day.ts';
import type { KeptContradiction, KeptLink, KeptPlan, KeptStep } from './kept-plan.ts';
import { type Link, neededLinks } from './linear-extension.ts';
import { makePlan, type Plan, type PlanConstraint, type PlanRequest, type PlanStep } from './plan.ts';
import { isAskedAsGate } from './plan-constraints.ts';

function keepStep({ id, moduleId, stage, title, detail, routes, cannotBeUndone, ...rest }: PlanStep): KeptStep {
  const { cautions, gates, meets, ends, typicalMinutes, layer } = rest;
  return {
    id,
    moduleId,
    stage,
    title,
    detail,
    cautions: [...cautions],
    gates: [...gates],
    meets: [...meets],
    ends: [...ends],
    routes: [...routes],
    cannotBeUndone,
    typicalMinutes,
    layer,
  };
}

const keyOf = ({ before, after }: Link) => `${before} ${after}`;

/**
 * The links that say everything the constraints say: of the firm ones those that no chain of firm ones implies; every one that may let go
 * later and that no firm chain implies; and what a picture of them all needs beside those. A constraint that is asked as a gate is not
 * firm: the gate itself is judged.
 */
function linksOf({ order, constraints, steps }: Plan): KeptLink[] {
  const kept = constraints.filter(({ holds }) => holds);
  const stepOf = new Map(steps.map((step) => [step.id, step]));
  const isFirm = (constraint: PlanConstraint) => {
    const [before, after] = [stepOf.get(constraint.before), stepOf.get(constraint.after)];
    return constraint.letsGoWhen === null && !(before && after && isAskedAsGate(constraint.ruleId, before, after));
  };
  const firm = kept.filter(isFirm);
  const soft = kept.filter((constraint) => !isFirm(constraint));
  const letGo = soft.filter(({ letsGoWhen }) => letsGoWhen !== null);
  const firmly = new Set(neededLinks(order, firm).map(keyOf));
  const drawn = new Set(neededLinks(order, kept).map(keyOf));
  // Added to the firm ones, it is needed exactly where no firm chain implies it.
  const mayLetGo = new Set(
    letGo.filter((link) => neededLinks(order, [...firm, link]).some((one) => keyOf(one) === keyOf(link))).map(keyOf),
  );
  const found = new Map<string, KeptLink>();
  const take = (constraint: PlanConstraint) => {
    const { before, after, ruleId } = constraint;
    if (!found.has(keyOf(constraint))) found.set(keyOf(constraint), { before, after, ruleId });
  };
  for (const link of firm) if (firmly.has(keyOf(link))) take(link);
  for (const link of letGo) if (mayLetGo.has(keyOf(link))) take(link);
  for (const link of kept) if (drawn.has(keyOf(link))) take(link);
  const place = new Map(order.map((id, at) => [id, at]));
  const at = (id: string) => place.get(id) ?? 0;
  return [...found.values()].sort((a, b) => at(a.before) - at(b.before) || at(a.after) - at(b.after));
}

/** The plan as the record keeps it, made on this day from this version of the pack. */
export function keepPlan(plan: Plan, pack: PlanRequest['pack'], madeOn: Day): KeptPlan {
  const links = linksOf(plan);
  const contradictions = plan.contradictions.map(({ setAside, rules, steps, kind, accepted, sentence }) => {
    const link = setAside && { before: setAside.before, after: setAside.after, ruleId: setAside.ruleId };
    return {
      kind,
      rules: [...rules],
      steps: [...steps],
      setAside: link,
      accepted,
      sentence,
    } satisfies KeptContradiction;
  });
  const named = new Set([...links.map(({ ruleId }) => ruleId), ...contradictions.flatMap(({ rules }) => rules)]);
  return {
    packId: pack.id,
    packVersion: pack.version,
    madeOn,
    steps: plan.steps.map(keepStep),
    links,
    rules: pack.rules
      .filter(({ id }) => named.has(id))
      .map(({ id, reason, source, letsGoWhen }) => ({ id, reason, source, letsGo: letsGoWhen !== null })),
    contradictions,
    reminders: [...plan.reminders],
  };
}

export function makeKeptPlan(request: PlanRequest, madeOn: Day): KeptPlan {
  return keepPlan(makePlan(request), request.pack, madeOn);
}
