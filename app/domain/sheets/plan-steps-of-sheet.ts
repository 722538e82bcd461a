// The steps of one programming job for its plan sheet: in the plan's order, by stage, the cautions in full where the work begins that
// calls for them, boxes for what must be true first, blanks for what is read, and every attempt so far. Never a code.
import type { Shop } from '../fleet/shop.ts';
import type { Attempt } from '../programming/attempt.ts';
import { jobFacts } from '../programming/job-facts.ts';
import type { JobProgress, StepProgress } from '../programming/job-progress.ts';
import type { KeptStep } from '../programming/kept-plan.ts';
import { isGateMet } from '../programming/plan-gates.ts';
import { indexOf } from '../programming/plan-index.ts';
import type { Stage } from '../programming/rule-pack.ts';
import { showDay, showDaysIn } from '../shared/show-day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { type CautionKey, cautions } from '../work/cautions.ts';
import { cautionOrder } from './applicable-cautions.ts';
import { gateWords, routeTitles, stageTitles } from './plan-words.ts';
import type { SheetBlock, SheetStep } from './sheet.ts';
import { joined, openStep, outcomeWords, personName, quiet, sentence, showMinutes, strong } from './sheet-words.ts';

function isOpen({ state }: StepProgress): boolean {
  return state !== 'done' && state !== 'left-out';
}

function showVolts({ voltsBefore, voltsLowest, voltsAfter }: Attempt): string {
  const all = [voltsBefore, voltsLowest, voltsAfter];
  if (all.every((volts) => volts === null)) return '';
  return `${all.map((volts) => (volts === null ? '–' : volts.toFixed(1))).join(' / ')} V`;
}

/** 'Failed 16 Mar 2026 · on the vehicle · Tomáš Dvořáček · no answer on the bus'. */
export function attemptLine(attempt: Attempt, { people, dealer }: Shop): string {
  const outcome = outcomeWords[attempt.outcome];
  return joined([
    `${outcome.charAt(0).toUpperCase()}${outcome.slice(1)} ${showDay(attempt.on, dealer.dayForm)}`,
    routeTitles[attempt.route],
    personName(people, attempt.person),
    showVolts(attempt),
    attempt.message,
    attempt.evidence === '' ? '' : `kept: ${attempt.evidence}`,
    attempt.override === null
      ? ''
      : `gone on regardless (${personName(people, attempt.override.by)}): ${attempt.override.reason}`,
  ]);
}

/** Steps that change something for good or write: there the volts are read, and the tool shows a reference worth keeping. */
function isWriting(step: KeptStep): boolean {
  return step.cannotBeUndone || step.cautions.includes('never-interrupt') || step.cautions.includes('supply-voltage');
}

function blanksOf(step: KeptStep): readonly string[] {
  return [
    ...(step.meets.includes('old-module-saved') ? ['saved as'] : []),
    ...(step.cannotBeUndone ? ['VIN, last eight'] : []),
    ...(step.gates.includes('code-in-hand') ? ['code'] : []),
    ...(isWriting(step) ? ['volts before', 'lowest', 'after', 'reference'] : []),
    ...(step.meets.includes('supply-connected') && !isWriting(step) ? ['volts'] : []),
  ];
}

type Seen = {
  readonly vehicle: Vehicle;
  readonly progress: JobProgress;
  readonly shop: Shop;
};

function needsOf({ vehicle, progress }: Seen, step: KeptStep): NonNullable<SheetStep['needs']> {
  const facts = jobFacts(vehicle, progress.job);
  const asked = indexOf(progress.job.plan).gatesOf.get(step.id) ?? [];
  return asked.map((gate) => ({ text: gateWords[gate.gate], isMet: isGateMet(gate, step, facts) }));
}

/** 'after 3, 5': the steps right before it, by their numbers; nothing where that is only the one above. */
function afterWords({ progress }: Seen, { step, number }: StepProgress): string {
  const before = indexOf(progress.job.plan).before.get(step.id) ?? [];
  const numbers = before
    .flatMap((link) => progress.steps.filter((one) => one.step.id === link.step.id).map((one) => one.number))
    .sort((a, b) => a - b);
  if (numbers.length === 0 || (numbers.length === 1 && numbers[0] === number - 1)) return '';
  // No-break spaces: numbers apart from their word say nothing.
  return `after\u00a0${numbers.join(',\u00a0')}`;
}

function isOfMaker({ progress }: Seen, step: KeptStep): boolean {
  return progress.job.makerOrder?.ownSteps.some(({ id }) => id === step.id) ?? false;
}

function stepOf(seen: Seen, one: StepProgress): SheetStep {
  const { step, state } = one;
  const { shop, progress } = seen;
  const tried = one.attempts.map((attempt) => quiet(attemptLine(attempt, shop)));
  if (state === 'done') return openStep(step.title, { state: 'done', marks: tried });
  if (state === 'left-out') {
    const { leftOut } = one;
    const who =
      leftOut === null ? '' : ` (${personName(shop.people, leftOut.by)}, ${showDay(leftOut.on, shop.dealer.dayForm)})`;
    const reason = `Left out${who}: ${sentence(leftOut?.reason ?? '')}`;
    return openStep(step.title, { state: 'left-out', marks: [quiet(reason), ...tried] });
  }
  const isUnsettled = progress.job.plan.contradictions.some(
    ({ accepted, steps }) => accepted === null && steps.includes(step.id),
  );
  const typical = step.typicalMinutes === null ? '' : `usually ${showMinutes(step.typicalMinutes)}`;
  const routes = step.routes.length === 1 && step.routes[0] === 'by-hand' ? [] : step.routes;
  return openStep(step.title, {
    detail: joined([
      step.detail,
      routes.map((route) => routeTitles[route]).join(' / '),
      typical,
      afterWords(seen, one),
      isOfMaker(seen, step) ? 'a step of the maker’s own order' : '',
    ]),
    marks: [
      ...(step.cannotBeUndone ? [strong('Cannot be undone')] : []),
      ...step.cautions.map((key) => strong(cautions[key].title)),
      ...(isUnsettled ? [strong('Order not settled: see above')] : []),
      ...(state === 'blocked' ? [strong(`Waits: ${showDaysIn(one.blockedBy, shop.dealer.dayForm)}`)] : []),
      ...tried,
    ],
    needs: needsOf(seen, step),
    blanks: blanksOf(step),
  });
}

type Stretch = { readonly stage: Stage; readonly steps: readonly StepProgress[] };

/** Steps that follow each other in one stage. A maker's order may come back to a stage; then its title comes again. */
function stretchesOf(steps: readonly StepProgress[]): readonly Stretch[] {
  const stretches: { stage: Stage; steps: StepProgress[] }[] = [];
  for (const one of steps) {
    const last = stretches[stretches.length - 1];
    if (last !== undefined && last.stage === one.step.stage) last.steps.push(one);
    else stretches.push({ stage: one.step.stage, steps: [one] });
  }
  return stretches;
}

/** The blocks of all steps. `said` are cautions that stand in full on this sheet already; those printed here are added to it. */
export function planStepBlocks(
  vehicle: Vehicle,
  progress: JobProgress,
  shop: Shop,
  said: Set<CautionKey>,
): readonly SheetBlock[] {
  const seen: Seen = { vehicle, progress, shop };
  return stretchesOf(progress.steps).flatMap(({ stage, steps }): SheetBlock[] => {
    const first = steps[0];
    if (first === undefined) return [];
    const called = new Set(steps.filter(isOpen).flatMap(({ step }) => step.cautions));
    const here = cautionOrder.filter((key) => called.has(key) && !said.has(key));
    for (const key of here) said.add(key);
    return [
      { kind: 'heading', level: 3, text: stageTitles[stage] },
      ...here.map((key): SheetBlock => ({ kind: 'caution', key, ...cautions[key], concerns: '' })),
      {
        kind: 'steps',
        isNumbered: true,
        hasInitials: true,
        firstNumber: first.number,
        items: steps.map((one) => stepOf(seen, one)),
      },
    ];
  });
}
