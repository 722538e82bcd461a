// What a person can press at a step, and with what a new attempt begins. Pure.
import type { AttemptDraft } from '../../../../app/domain/programming/attempt.ts';
import { gates } from '../../../../app/domain/programming/gate-kind.ts';
import { isToldByRecord } from '../../../../app/domain/programming/job-facts.ts';
import type { StepProgress } from '../../../../app/domain/programming/job-progress.ts';
import type { KeptStep } from '../../../../app/domain/programming/kept-plan.ts';
import { indexOf, type PlanIndex } from '../../../../app/domain/programming/plan-index.ts';
import type { ProgrammingJob, Tick } from '../../../../app/domain/programming/programming-job.ts';
import type { ProgrammingRoute } from '../../../../app/domain/programming/programming-route.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';
import { tickWords } from '../../../text/programming.ts';

/** No write, nothing permanent: one press is enough to record that it was done. */
export function isSimple({ cannotBeUndone, cautions }: KeptStep): boolean {
  return !cannotBeUndone && !cautions.includes('never-interrupt');
}

/** Steps at which the supply is measured: they write, or the supply is their subject. */
export function asksVolts({ cautions, ends, meets }: KeptStep): boolean {
  return (
    cautions.some((caution) => caution === 'supply-voltage' || caution === 'never-interrupt') ||
    [...ends, ...meets].includes('supply-connected')
  );
}

export function failedRoutes({ attempts }: StepProgress): readonly ProgrammingRoute[] {
  return attempts.filter(({ outcome }) => outcome === 'failed').map(({ route }) => route);
}

/** A route that failed is not begun with again; where all have failed, the last that was tried. */
export function likelyRoute(progress: StepProgress, ranked: readonly ProgrammingRoute[]): ProgrammingRoute {
  const failed = failedRoutes(progress);
  const order = ranked.length > 0 ? ranked : progress.step.routes;
  return (
    order.find((route) => !failed.includes(route)) ??
    progress.attempts.at(-1)?.route ??
    progress.step.routes[0] ??
    'by-hand'
  );
}

/** True when a name and a reason can take a person past all that blocks the step. */
export function mayGoOnRegardless({ state, reasons }: StepProgress): boolean {
  return (state === 'blocked' || state === 'later') && reasons.every(({ mayBeOverridden }) => mayBeOverridden);
}

export function freshAttempt(
  id: string,
  progress: StepProgress,
  about: { readonly jobId: string; readonly today: Day; readonly person: string; readonly route: ProgrammingRoute },
): AttemptDraft {
  const { jobId, today, person, route } = about;
  const isBlocked = progress.state === 'blocked' || progress.state === 'later';
  return {
    id,
    jobId,
    stepId: progress.step.id,
    on: today,
    person,
    route,
    outcome: 'worked',
    vinRead: '',
    override: isBlocked ? { by: person, reason: '' } : null,
    voltsBefore: null,
    voltsLowest: null,
    voltsAfter: null,
    message: '',
    evidence: '',
  };
}

export type Vouchable = Pick<Tick, 'gate' | 'moduleId'> & { readonly words: string };

/** The gates among what blocks the step that a person can vouch for: nothing in the record and no step of the plan says it. */
export function vouchables(job: ProgrammingJob, { step, reasons }: StepProgress): readonly Vouchable[] {
  return (indexOf(job.plan).gatesOf.get(step.id) ?? []).flatMap(({ gate, providers }): Vouchable[] => {
    const words = tickWords[gate];
    const isMissing = reasons.some(({ kind, what }) => kind === 'gate' && what === gate);
    if (!isMissing || words === undefined || providers.length > 0) return [];
    const moduleId = gates[gate].scope === 'module' ? step.moduleId : null;
    return isToldByRecord({ gate, moduleId }, job) ? [] : [{ gate, moduleId, words }];
  });
}

/** All steps that cannot begin before this one, however many lie between. */
function behind(id: string, after: PlanIndex['after']): ReadonlySet<string> {
  const reached = new Set<string>();
  const open = [id];
  for (let at = open.pop(); at !== undefined; at = open.pop())
    for (const one of after.get(at) ?? []) {
      if (reached.has(one)) continue;
      reached.add(one);
      open.push(one);
    }
  return reached;
}

/**
 * Titles of the steps that a later step waits for: those that must come first, and those that bring about what it asks for. Of several that
 * lie one behind the other only the last is named: the others say themselves what they wait for.
 */
export function waitsForTitles(
  job: ProgrammingJob,
  { step, reasons }: StepProgress,
  steps: readonly StepProgress[],
): readonly string[] {
  const ids = new Set(reasons.filter(({ kind }) => kind === 'step').map(({ what }) => what));
  for (const { gate, providers } of indexOf(job.plan).gatesOf.get(step.id) ?? [])
    if (reasons.some(({ kind, what }) => kind === 'gate' && what === gate)) for (const { id } of providers) ids.add(id);
  const waited = steps.filter((one) => ids.has(one.step.id) && one.state !== 'done');
  const isLast = (id: string) => {
    const later = behind(id, indexOf(job.plan).after);
    return !waited.some((one) => later.has(one.step.id));
  };
  return waited.filter((one) => isLast(one.step.id)).map((one) => one.step.title);
}
