// The programming plan sheet: each job's modules, the order its steps come in and why, what does not agree, every step with room to write,
// and room for remarks. The plan printed is the one kept with the job. No money, and never a code.
import type { Shop } from '../fleet/shop.ts';
import { codeRequestOf, partOf } from '../programming/job-facts.ts';
import { type JobProgress, jobProgress } from '../programming/job-progress.ts';
import type { KeptContradiction } from '../programming/kept-plan.ts';
import type { ProgrammingJob } from '../programming/programming-job.ts';
import { showDay, showDaysIn } from '../shared/show-day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { type CautionKey, deferenceSentence } from '../work/cautions.ts';
import { howCodeStands, whereIsPart } from './in-hand.ts';
import { attemptLine, planStepBlocks } from './plan-steps-of-sheet.ts';
import { gateWords } from './plan-words.ts';
import type { Sheet, SheetBlock } from './sheet.ts';
import { barcodes, frameSheet, masthead, type Printing } from './sheet-frame.ts';
import {
  capitalised,
  driveWords,
  groupVin,
  joined,
  originWords,
  personName,
  plain,
  quiet,
  sentence,
  showMinutes,
  strong,
} from './sheet-words.ts';

type Emphasis = 'none' | 'strong' | 'quiet';

function paragraph(text: string, emphasis: Emphasis = 'none'): SheetBlock[] {
  return text === '' ? [] : [{ kind: 'paragraph', text, emphasis }];
}

function heading(level: 2 | 3, text: string): SheetBlock {
  return { kind: 'heading', level, text };
}

function vehicleFacts({ identity }: Vehicle, jobs: readonly JobProgress[]): SheetBlock {
  const steps = jobs.flatMap((job) => job.steps).filter(({ state }) => state !== 'left-out');
  const done = steps.filter(({ state }) => state === 'done').length;
  const minutes = steps
    .filter(({ state }) => state !== 'done')
    .reduce((sum, { step }) => sum + (step.typicalMinutes ?? 0), 0);
  return {
    kind: 'facts',
    rows: [
      { label: 'VIN', value: identity.vin === '' ? 'not known yet' : groupVin(identity.vin) },
      { label: 'Drive', value: driveWords[identity.drive] },
      {
        label: minutes === 0 ? 'Steps done' : 'Steps done, usual time still to go',
        value: joined([`${done} of ${steps.length}`, minutes === 0 ? '' : showMinutes(minutes)]),
      },
    ],
  };
}

/** Whose order it is. The maker's comes first, whether anybody has typed it in or not. */
function orderWords({ makerOrder, plan }: ProgrammingJob, shop: Shop): SheetBlock[] {
  const made = `Plan made on ${showDay(plan.madeOn, shop.dealer.dayForm)} from the rules “${plan.packId}”, version ${plan.packVersion}.`;
  if (makerOrder === null)
    return [
      ...paragraph(
        'The maker’s own order is not typed in. Look it up before you start: it comes before this one.',
        'strong',
      ),
      ...paragraph(made, 'quiet'),
    ];
  return [
    ...paragraph(
      `This order follows the maker’s own, “${makerOrder.document}”, read on ${showDay(makerOrder.readOn, shop.dealer.dayForm)}. Where the rules say otherwise they give way.`,
      'strong',
    ),
    ...paragraph(made, 'quiet'),
  ];
}

function contradictionLine({ accepted, sentence: told }: KeptContradiction, shop: Shop): string {
  const words = showDaysIn(told, shop.dealer.dayForm);
  if (accepted === null) return `Not settled. ${words}`;
  const { by, on, reason } = accepted;
  return `Seen and accepted by ${personName(shop.people, by)} on ${showDay(on, shop.dealer.dayForm)}: ${sentence(reason)} ${words}`;
}

function contradictionBlocks({ plan }: ProgrammingJob, shop: Shop): SheetBlock[] {
  if (plan.contradictions.length === 0) return [];
  const open = plan.contradictions.filter(({ accepted }) => accepted === null).length;
  return [
    heading(3, 'What does not agree'),
    ...paragraph(
      open === 0 ? '' : 'The order is not settled. Steps that take part wait until somebody has looked at it.',
      'strong',
    ),
    { kind: 'bullets', items: plan.contradictions.map((one) => contradictionLine(one, shop).slice(0, 3900)) },
  ];
}

function moduleTable(vehicle: Vehicle, { modules }: ProgrammingJob, shop: Shop): SheetBlock {
  return {
    kind: 'table',
    caption: 'Modules of this job, what each is, what is in hand, and room for the numbers of the units',
    columns: [
      { title: 'Module', share: 25, align: 'left' },
      { title: 'In hand', share: 27, align: 'left' },
      { title: 'Part number, new', share: 16, align: 'left' },
      { title: 'Serial, new', share: 16, align: 'left' },
      { title: 'Serial, old', share: 16, align: 'left' },
    ],
    rows: modules.map((module) => {
      const part = partOf(vehicle, module);
      const request = codeRequestOf(vehicle, module);
      const isKept = module.origin === 'kept';
      const stands = joined([
        part === null ? '' : capitalised(whereIsPart(part, shop.dealer.dayForm)),
        request === null ? '' : capitalised(`code: ${howCodeStands(request, shop.dealer.dayForm)}`),
      ]);
      const isMissing =
        (part !== null && part.receivedOn === null) || (request !== null && request.outcome !== 'given');
      const known = part?.partNumber ?? '';
      return [
        plain(joined([module.name, originWords[module.origin]])),
        isMissing ? strong(stands) : plain(stands === '' ? '–' : stands),
        isKept ? quiet('stays') : known === '' ? plain('') : plain(known),
        isKept ? quiet('stays') : plain(''),
        plain(''),
      ];
    }),
    whenEmpty: '',
    rowRoom: 'writing',
  };
}

function vouchedFor({ ticks, modules }: ProgrammingJob, shop: Shop): SheetBlock[] {
  const words = ticks.map(({ gate, moduleId, by, on }) => {
    const module = modules.find(({ id }) => id === moduleId);
    return `${gateWords[gate]}${module === undefined ? '' : ` (${module.name})`}: ${personName(shop.people, by)}, ${showDay(on, shop.dealer.dayForm)}`;
  });
  return words.length === 0 ? [] : paragraph(sentence(`Vouched for: ${words.join('; ')}`), 'quiet');
}

/** Attempts at steps of an earlier plan: what was tried is not forgotten because the plan was made again. */
function formerBlocks({ attempts }: Vehicle, { id, formerSteps }: ProgrammingJob, shop: Shop): SheetBlock[] {
  const lines = formerSteps.flatMap((former) =>
    attempts
      .filter(({ jobId, stepId }) => jobId === id && stepId === former.id)
      .map((attempt) => `${former.title}: ${attemptLine(attempt, shop)}`),
  );
  if (lines.length === 0) return [];
  return [heading(3, 'Attempted under an earlier plan'), { kind: 'bullets', items: lines }];
}

function jobBlocks(
  vehicle: Vehicle,
  progress: JobProgress,
  shop: Shop,
  about: { readonly said: Set<CautionKey>; readonly isLast: boolean },
): SheetBlock[] {
  const { job } = progress;
  const { reminders } = job.plan;
  return [
    heading(2, `Program ${job.title}`),
    ...orderWords(job, shop),
    ...paragraph(job.note),
    moduleTable(vehicle, job, shop),
    ...vouchedFor(job, shop),
    ...(reminders.length === 0
      ? []
      : [{ kind: 'bullets', items: reminders.map((words) => `Think of: ${words}`) } as const]),
    ...contradictionBlocks(job, shop),
    ...planStepBlocks(vehicle, progress, shop, about.said),
    ...formerBlocks(vehicle, job, shop),
    heading(3, `Remarks on ${job.title}`),
    {
      kind: 'blank-lines',
      label: 'What the tool and the vehicle showed, what was done otherwise than planned',
      count: 4,
      fillsPage: about.isLast,
    },
  ];
}

function closedBlocks(closed: readonly JobProgress[], shop: Shop): SheetBlock[] {
  if (closed.length === 0) return [];
  const items = closed.map(
    ({ job, closedOn }) =>
      `${job.title}: finished${closedOn === null ? '' : ` ${showDay(closedOn, shop.dealer.dayForm)}`}`,
  );
  return [heading(2, 'Finished jobs'), { kind: 'bullets', items }];
}

/** Why there is nothing to print; null when there is. */
export function whyNoPlanSheet(vehicle: Vehicle, jobId: string | null): string | null {
  if (vehicle.jobs.length === 0)
    return 'This vehicle has no programming job. Add one under Programming, then print its plan.';
  if (jobId !== null && !vehicle.jobs.some(({ id }) => id === jobId))
    return 'This programming job is no longer in the record. Print the plan of another one.';
  return null;
}

/**
 * The plan of one job, or of every open job of the vehicle; of all of them where none is open. The steps, links and contradictions are
 * the kept snapshot: rules that changed later are not in it.
 */
export function planSheet(vehicle: Vehicle, shop: Shop, printed: Printing, jobId: string | null = null): Sheet {
  const all = vehicle.jobs.map((job) => jobProgress(vehicle, job));
  const open = all.filter(({ isClosed }) => !isClosed);
  const shown = jobId === null ? (open.length > 0 ? open : all) : all.filter(({ job }) => job.id === jobId);
  const closed = jobId === null && open.length > 0 ? all.filter(({ isClosed }) => isClosed) : [];
  const said = new Set<CautionKey>();
  const blocks: SheetBlock[] = [
    masthead(vehicle.identity),
    vehicleFacts(vehicle, shown),
    ...barcodes(vehicle.identity).filter((block) => block.kind === 'barcode' && block.label === 'VIN'),
    ...closedBlocks(closed, shop),
    ...shown.flatMap((progress, at) => jobBlocks(vehicle, progress, shop, { said, isLast: at === shown.length - 1 })),
    { kind: 'signatures', labels: ['Programmed by, day', 'Looked over by, day'] },
  ];
  return frameSheet('plan-sheet', 'Programming plan', vehicle, shop, printed, { blocks, footer: deferenceSentence });
}
