// The technician's job sheet: which vehicle, what can hurt, what must be in hand, what to do in which order, and room to write.
// Never any money, never a code.
import { codeKindName, type NamedKinds } from '../codes/code-name.ts';
import { failsSince } from '../codes/request-life.ts';
import type { Fault } from '../diagnosis/fault.ts';
import type { Shop } from '../fleet/shop.ts';
import type { Part } from '../parts/part.ts';
import { jobProgress } from '../programming/job-progress.ts';
import type { ProgrammingJob } from '../programming/programming-job.ts';
import { type DayForm, showDay, showDaysIn } from '../shared/show-day.ts';
import type { VehicleReckoning } from '../vehicle/reckon.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { cautions, deferenceSentence } from '../work/cautions.ts';
import { applicableCautions } from './applicable-cautions.ts';
import { howCodeStands, inHandItems, whereIsPart } from './in-hand.ts';
import { programmingSteps, proofSteps, repairSteps } from './job-steps.ts';
import { pictureBlocks } from './pictures.ts';
import type { Sheet, SheetBlock, SheetStep } from './sheet.ts';
import { barcodes, frameSheet, masthead, type Printing } from './sheet-frame.ts';
import {
  driveWords,
  groupVin,
  joined,
  originWords,
  personName,
  plain,
  quiet,
  sentence,
  showMinutes,
  showOdometer,
  strong,
} from './sheet-words.ts';

function vehicleFacts({ identity, arrival }: Vehicle, dayForm: DayForm): SheetBlock {
  const rows = [
    { label: 'VIN', value: identity.vin === '' ? 'not known yet' : groupVin(identity.vin) },
    { label: 'Drive', value: driveWords[identity.drive] },
    { label: 'Odometer', value: showOdometer(identity.odometer) },
    { label: 'Body, colour', value: joined([identity.body, identity.colour]) },
    { label: 'Arrived', value: arrival.arrivedOn === null ? 'not here yet' : showDay(arrival.arrivedOn, dayForm) },
  ];
  return { kind: 'facts', rows: rows.filter((row) => row.value !== '') };
}

function cautionBlocks(vehicle: Vehicle, kinds: NamedKinds): SheetBlock[] {
  const applying = applicableCautions(vehicle, kinds);
  if (applying.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Cautions for this vehicle' },
    ...applying.map(({ key, concerns }): SheetBlock => ({ kind: 'caution', key, ...cautions[key], concerns })),
  ];
}

function decisionWords({ decision, doneOn }: Fault, dayForm: DayForm): string {
  if (decision === null) return 'To decide';
  if (decision.kind === 'leave') return `Leave: ${decision.reason}`;
  const verb = decision.kind === 'replace' ? ['Replace', 'Replaced'] : ['Repair', 'Repaired'];
  if (doneOn !== null) return `${verb[1]} ${showDay(doneOn, dayForm)}`;
  return decision.reason === '' ? (verb[0] ?? '') : `${verb[0]}: ${decision.reason}`;
}

function faultTable(faults: readonly Fault[], dayForm: DayForm): SheetBlock[] {
  if (faults.length === 0) return [];
  const rows = faults.map((fault) => [
    fault.doneOn === null ? strong(fault.what) : plain(fault.what),
    plain(fault.module),
    plain(fault.codes.join(', ')),
    fault.decision === null ? strong(decisionWords(fault, dayForm)) : plain(decisionWords(fault, dayForm)),
    quiet(fault.note),
  ]);
  return [
    { kind: 'heading', level: 2, text: 'Faults and decisions' },
    {
      kind: 'table',
      caption: 'Faults found, their trouble codes and what was decided',
      columns: [
        { title: 'Fault', share: 27, align: 'left' },
        { title: 'Module', share: 17, align: 'left' },
        { title: 'Codes', share: 12, align: 'left' },
        { title: 'Decision', share: 22, align: 'left' },
        { title: 'Remark', share: 22, align: 'left' },
      ],
      rows,
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}

function stepBlocks(title: string, level: 2 | 3, items: readonly SheetStep[]): SheetBlock[] {
  if (items.length === 0) return [];
  return [
    { kind: 'heading', level, text: title },
    { kind: 'steps', isNumbered: true, hasInitials: true, items },
  ];
}

/** Which modules it touches, whose order it follows, and where that order is not settled. */
function jobHead({ modules, makerOrder, plan, note }: ProgrammingJob, dayForm: DayForm): SheetBlock[] {
  const words = modules.map(({ name, origin }) => `${name}: ${originWords[origin]}`).join('; ');
  const maker = makerOrder
    ? ` Order after “${makerOrder.document}”, read on ${showDay(makerOrder.readOn, dayForm)}.`
    : ' The maker’s own order comes before this one.';
  const open = plan.contradictions.filter(({ accepted }) => accepted === null).length;
  const paragraph = (text: string, emphasis: 'none' | 'strong'): SheetBlock[] =>
    text === '' ? [] : [{ kind: 'paragraph', text, emphasis }];
  return [
    ...paragraph(`${words}.${maker}`, 'none'),
    ...paragraph(
      open > 0 ? 'The order is not settled: rules contradict each other. See the program before you start.' : '',
      'strong',
    ),
    ...paragraph(note, 'none'),
  ];
}

function workBlocks(vehicle: Vehicle, reckoning: VehicleReckoning, shop: Shop): SheetBlock[] {
  const { dayForm } = shop.dealer;
  const jobs = vehicle.jobs.map((job) => jobProgress(vehicle, job));
  const open = jobs.filter((job) => !job.isClosed);
  const closed = jobs.filter((job) => job.isClosed);
  const programming = open.flatMap((progress): SheetBlock[] => {
    const { job } = progress;
    const [heading, ...steps] = stepBlocks(`Program ${job.title}`, 3, programmingSteps(progress, shop));
    return heading ? [heading, ...jobHead(job, dayForm), ...steps] : [];
  });
  const work: SheetBlock[] = [...stepBlocks('Repairs', 3, repairSteps(vehicle, dayForm)), ...programming];
  const done = closed.map(
    ({ job, closedOn }) => `${job.title}: programmed${closedOn === null ? '' : ` ${showDay(closedOn, dayForm)}`}`,
  );
  const doneBlocks: SheetBlock[] =
    done.length === 0
      ? []
      : [
          { kind: 'heading', level: 3, text: 'Already programmed' },
          { kind: 'bullets', items: done },
        ];
  const heading: SheetBlock = { kind: 'heading', level: 2, text: 'Work, in this order' };
  const proof = stepBlocks('Prove it', 3, proofSteps(reckoning.readiness, dayForm));
  const all = [...work, ...proof, ...doneBlocks];
  return all.length === 0 ? [] : [heading, ...all];
}

function partState(part: Part, dayForm: DayForm): string {
  const isOldUnitOwed = part.coreChargeCents > 0 && part.coreReturnedOn === null && part.returnedOn === null;
  return joined([
    whereIsPart(part, dayForm),
    part.supplier,
    isOldUnitOwed ? 'the old unit goes back to the supplier' : '',
  ]);
}

function partTable(parts: readonly Part[], dayForm: DayForm): SheetBlock[] {
  if (parts.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Parts' },
    {
      kind: 'table',
      caption: 'Parts for this vehicle and where they are',
      columns: [
        { title: 'Part', share: 32, align: 'left' },
        { title: 'Part number', share: 20, align: 'left' },
        { title: 'Qty', share: 6, align: 'right' },
        { title: 'Where it is', share: 42, align: 'left' },
      ],
      rows: parts.map((part) => [
        plain(part.what),
        plain(part.partNumber),
        plain(String(part.quantity)),
        part.receivedOn === null && part.returnedOn === null
          ? strong(partState(part, dayForm))
          : plain(partState(part, dayForm)),
      ]),
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}

function codeTable({ codeRequests }: Vehicle, shop: Shop): SheetBlock[] {
  if (codeRequests.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Codes' },
    {
      kind: 'table',
      caption: 'Code requests, how each stands, and room to write the code by hand',
      columns: [
        { title: 'Code', share: 26, align: 'left' },
        { title: 'Unit and serial', share: 26, align: 'left' },
        { title: 'How it stands', share: 26, align: 'left' },
        { title: 'Code, by hand; black out after use', share: 22, align: 'left' },
      ],
      rows: codeRequests.map((request) => [
        plain(codeKindName(request.kind, shop.codeKinds)),
        plain(joined([request.module, request.deviceSerial])),
        request.outcome === 'given' && failsSince(request) === null
          ? plain(howCodeStands(request, shop.dealer.dayForm))
          : strong(howCodeStands(request, shop.dealer.dayForm)),
        plain(''),
      ]),
      whenEmpty: '',
      rowRoom: 'writing',
    },
  ];
}

function labourBlocks({ labour, faults }: Vehicle, shop: Shop): SheetBlock[] {
  const bookedMinutes = labour.reduce((sum, entry) => sum + entry.minutes, 0);
  const open = faults.filter((fault) => fault.doneOn === null && fault.decision?.kind !== 'leave');
  const expectedMinutes = open.reduce((sum, fault) => sum + (fault.decision?.estimateMinutes ?? 0), 0);
  if (labour.length === 0 && expectedMinutes === 0) return [];
  const booked = bookedMinutes === 0 ? 'Nothing booked yet' : `Booked so far: ${showMinutes(bookedMinutes)}`;
  const expected = expectedMinutes === 0 ? '' : `; expected for the open repairs: ${showMinutes(expectedMinutes)}`;
  const total: SheetBlock = { kind: 'paragraph', text: `${booked}${expected}.`, emphasis: 'strong' };
  const table: SheetBlock = {
    kind: 'table',
    caption: 'Work booked so far',
    columns: [
      { title: 'Day', share: 15, align: 'left' },
      { title: 'Who', share: 22, align: 'left' },
      { title: 'What', share: 48, align: 'left' },
      { title: 'Time', share: 15, align: 'right' },
    ],
    rows: [...labour]
      .sort((a, b) => (a.workedOn < b.workedOn ? -1 : 1))
      .map((entry) => [
        plain(showDay(entry.workedOn, shop.dealer.dayForm)),
        plain(personName(shop.people, entry.person)),
        plain(entry.what),
        plain(showMinutes(entry.minutes)),
      ]),
    whenEmpty: '',
    rowRoom: 'text',
  };
  return [{ kind: 'heading', level: 2, text: 'Hours' }, ...(labour.length === 0 ? [] : [table]), total];
}

function nextBlock({ nextMove, readiness }: VehicleReckoning, dayForm: DayForm): SheetBlock[] {
  if (readiness.isReady) return [{ kind: 'paragraph', text: 'No work is open on this vehicle.', emphasis: 'strong' }];
  if (nextMove === null) return [];
  const who = nextMove.who === 'technician' ? '' : nextMove.who === 'outside' ? ' (waits)' : ` (${nextMove.who})`;
  return [
    { kind: 'paragraph', text: `Next${who}: ${sentence(showDaysIn(nextMove.what, dayForm))}`, emphasis: 'strong' },
  ];
}

/** The job sheet of a vehicle as the record stands. Holds hours and parts, no money and no code, whoever prints it. */
export function jobSheet(vehicle: Vehicle, reckoning: VehicleReckoning, shop: Shop, printed: Printing): Sheet {
  const { dayForm } = shop.dealer;
  const inHand = inHandItems(vehicle, dayForm, shop.codeKinds);
  const silent = vehicle.scans.length === 0 ? 'Not scanned yet: scan every module and note all codes first.' : '';
  const blocks: SheetBlock[] = [
    masthead(vehicle.identity),
    vehicleFacts(vehicle, dayForm),
    ...barcodes(vehicle.identity),
    ...nextBlock(reckoning, dayForm),
    ...(silent === '' ? [] : [{ kind: 'paragraph', text: silent, emphasis: 'strong' } as const]),
    ...cautionBlocks(vehicle, shop.codeKinds),
    ...(inHand.length === 0
      ? []
      : [
          { kind: 'heading', level: 2, text: 'In hand before you start' } as const,
          { kind: 'steps', isNumbered: false, hasInitials: false, items: inHand } as const,
        ]),
    ...faultTable(vehicle.faults, dayForm),
    ...workBlocks(vehicle, reckoning, shop),
    ...partTable(vehicle.parts, dayForm),
    ...codeTable(vehicle, shop),
    ...labourBlocks(vehicle, shop),
    ...pictureBlocks(vehicle, ['everyone', 'workshop'], dayForm),
    { kind: 'heading', level: 2, text: 'What happened' },
    { kind: 'blank-lines', label: 'New faults, readings, time taken, what is still to do', count: 6, fillsPage: true },
    { kind: 'signatures', labels: ['Work done by, day', 'Looked over by, day'] },
  ];
  return frameSheet('job-sheet', 'Job sheet', vehicle, shop, printed, { blocks, footer: deferenceSentence });
}
