// The work on the job sheet as boxes to tick: repairs, programming steps in the job's order, and what proves the work.
import { type Fault, isOpenRepair } from '../diagnosis/fault.ts';
import type { Shop } from '../fleet/shop.ts';
import type { Part } from '../parts/part.ts';
import type { Attempt } from '../programming/attempt.ts';
import type { JobProgress, StepProgress } from '../programming/job-progress.ts';
import { isHolding } from '../readiness/gate.ts';
import type { Readiness } from '../readiness/gates.ts';
import { type DayForm, showDay, showDaysIn } from '../shared/show-day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { cautions } from '../work/cautions.ts';
import { whereIsPart } from './in-hand.ts';
import type { SheetStep } from './sheet.ts';
import { joined, openStep, outcomeWords, personName, quiet, sentence, showMinutes, strong } from './sheet-words.ts';

const voltBlanks = ['volts before', 'lowest', 'after'] as const;

function isWaitingToBeFitted(part: Part): boolean {
  return part.fittedOn === null && part.returnedOn === null;
}

function repairStep(vehicle: Vehicle, fault: Fault, dayForm: DayForm): SheetStep {
  const { decision } = fault;
  const verb = decision?.kind === 'replace' ? 'Replace' : 'Repair';
  const parts = vehicle.parts.filter((part) => part.faultId === fault.id && isWaitingToBeFitted(part));
  const estimate =
    decision?.estimateMinutes === null || decision === null ? '' : `about ${showMinutes(decision.estimateMinutes)}`;
  const marks = parts
    .filter((part) => part.receivedOn === null)
    .map((part) => strong(`Waits: ${part.what}, ${whereIsPart(part, dayForm)}`));
  const here = parts.filter((part) => part.receivedOn !== null).map((part) => `fit ${part.what}`);
  return openStep(`${verb}: ${fault.what}`, {
    detail: joined([fault.module, fault.codes.join(', '), decision?.reason ?? '', ...here, estimate]),
    marks,
  });
}

/** Open repairs, then parts that wait to be fitted and belong to none of them. */
export function repairSteps(vehicle: Vehicle, dayForm: DayForm): readonly SheetStep[] {
  const open = vehicle.faults.filter(isOpenRepair);
  const loose = vehicle.parts.filter(
    (part) => isWaitingToBeFitted(part) && !open.some((fault) => fault.id === part.faultId),
  );
  return [
    ...open.map((fault) => repairStep(vehicle, fault, dayForm)),
    ...loose.map((part) =>
      openStep(`Fit: ${part.what}`, {
        marks: part.receivedOn === null ? [strong(`Waits: ${whereIsPart(part, dayForm)}`)] : [],
      }),
    ),
  ];
}

function showVolts({ voltsBefore, voltsLowest, voltsAfter }: Attempt): string {
  const all = [voltsBefore, voltsLowest, voltsAfter];
  if (all.every((volts) => volts === null)) return '';
  return `${all.map((volts) => (volts === null ? '–' : volts.toFixed(1))).join(' / ')} V`;
}

function attemptWords(attempt: Attempt, { people, dealer }: Shop): string {
  const who = personName(people, attempt.person);
  return joined([
    `${outcomeWords[attempt.outcome]} ${showDay(attempt.on, dealer.dayForm)}`,
    who,
    showVolts(attempt),
    attempt.outcome === 'worked' ? '' : attempt.message,
    attempt.override === null ? '' : `gone on regardless: ${attempt.override.reason}`,
  ]);
}

/** Steps that write, by what they carry: there the supply voltage is measured. */
function isWriting({ step }: StepProgress): boolean {
  return step.cannotBeUndone || step.cautions.includes('never-interrupt') || step.cautions.includes('supply-voltage');
}

function isOpen(progress: StepProgress): boolean {
  return progress.state !== 'done' && progress.state !== 'left-out';
}

function programmingStep(progress: StepProgress, asksVolts: boolean, shop: Shop): SheetStep {
  const { step, state, attempts } = progress;
  const tried = attempts.map((attempt) => quiet(attemptWords(attempt, shop)));
  if (state === 'done') return openStep(step.title, { state: 'done', marks: tried });
  if (state === 'left-out')
    return openStep(step.title, {
      state: 'left-out',
      marks: [quiet(`Left out: ${sentence(progress.leftOut?.reason ?? '')}`)],
    });
  const typical = step.typicalMinutes === null ? '' : `usually ${showMinutes(step.typicalMinutes)}`;
  return openStep(step.title, {
    detail: joined([step.detail, typical]),
    marks: [
      ...(step.cannotBeUndone ? [strong('Cannot be undone')] : []),
      ...step.cautions.map((key) => strong(cautions[key].title)),
      ...(state === 'blocked' ? [strong(`Waits: ${showDaysIn(progress.blockedBy, shop.dealer.dayForm)}`)] : []),
      ...tried,
    ],
    blanks: [
      ...(step.cannotBeUndone ? ['last eight of the VIN'] : []),
      ...(step.gates.includes('code-in-hand') ? ['code'] : []),
      ...(asksVolts ? voltBlanks : []),
    ],
  });
}

/** The steps of one job in its own order. Volts are asked for at every step that writes, and at least once in an open job. */
export function programmingSteps(job: JobProgress, shop: Shop): readonly SheetStep[] {
  const open = job.steps.filter(isOpen);
  const measured = open.some(isWriting) ? open.filter(isWriting) : open.slice(0, 1);
  return job.steps.map((progress) => programmingStep(progress, measured.includes(progress), shop));
}

/** What the technician does once the work is finished: the scan after the repair and the checks that are the technician's to sign. */
export function proofSteps(readiness: Readiness, dayForm: DayForm): readonly SheetStep[] {
  return readiness.gates.filter(isHolding).flatMap((gate) => {
    if (gate.key === 'post-scan') {
      const detail =
        gate.state === 'stale' ? gate.items.map((item) => sentence(showDaysIn(item.text, dayForm))).join(' ') : '';
      return [openStep('Scan every module after the repair and keep the result', { detail, blanks: ['codes left'] })];
    }
    const isMine = gate.key.startsWith('check:') && gate.items.some((item) => item.who === 'technician');
    if (!isMine) return [];
    const why = gate.items
      .map((item) => item.text)
      .filter((text) => text !== `Not signed: ${gate.title}`)
      .map((text) => sentence(showDaysIn(text, dayForm)));
    return [openStep(gate.title, { marks: why.map(strong) })];
  });
}
