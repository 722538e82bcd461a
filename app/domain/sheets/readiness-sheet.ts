// The readiness sheet for sales: is it ready, what was found, what was done, how it was proven, what a buyer must be told.
// No cost, no code, no supplier.
import type { Fault } from '../diagnosis/fault.ts';
import type { Shop } from '../fleet/shop.ts';
import type { Gate } from '../readiness/gate.ts';
import { currentSignOff } from '../readiness/proof-gates.ts';
import type { SignOff } from '../readiness/sign-off.ts';
import { type DayForm, showDay, showDaysIn } from '../shared/show-day.ts';
import type { VehicleReckoning } from '../vehicle/reckon.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { buyerReminders, type ReminderSituation, remindersDefer } from './buyer-reminders.ts';
import { holdingReasons } from './holding-reasons.ts';
import { pictureBlocks } from './pictures.ts';
import { scanBlocks } from './scan-summary.ts';
import type { Sheet, SheetBlock } from './sheet.ts';
import { barcodes, frameSheet, masthead, type Printing } from './sheet-frame.ts';
import {
  driveWords,
  groupVin,
  joined,
  personName,
  plain,
  quiet,
  sentence,
  showOdometer,
  strong,
} from './sheet-words.ts';

function verdict(vehicle: Vehicle, { readiness }: VehicleReckoning, shop: Shop): SheetBlock {
  const { dayForm } = shop.dealer;
  const { isReady, readyOn } = readiness;
  const held = holdingReasons(vehicle, readiness.gates, dayForm, shop.codeKinds);
  const since = readyOn === null ? '' : `Everything is done, proven and signed since ${showDay(readyOn, dayForm)}.`;
  const reasons = isReady ? [since] : held;
  if (vehicle.sale !== null)
    return { kind: 'verdict', isGood: isReady, text: `Sold ${showDay(vehicle.sale.soldOn, dayForm)}`, reasons };
  return { kind: 'verdict', isGood: isReady, text: isReady ? 'Ready for sale' : 'Not ready', reasons };
}

function vehicleFacts({ identity, purchase }: Vehicle, shop: Shop): SheetBlock {
  const { dayForm } = shop.dealer;
  const { keysReceived, paperReceivedOn, paperExpectedOn } = purchase;
  const expected = paperExpectedOn === null ? '' : `, expected ${showDay(paperExpectedOn, dayForm)}`;
  const rows = [
    { label: 'VIN', value: identity.vin === '' ? 'not known yet' : groupVin(identity.vin) },
    { label: 'Odometer', value: showOdometer(identity.odometer) },
    { label: 'Body, colour', value: joined([identity.body, identity.colour]) },
    { label: 'Drive', value: driveWords[identity.drive] },
    { label: 'Keys', value: keysReceived === null ? 'not counted' : String(keysReceived) },
    {
      label: purchase.paperKind || shop.dealer.paperName,
      value: paperReceivedOn === null ? `not here${expected}` : `here since ${showDay(paperReceivedOn, dayForm)}`,
    },
  ];
  return { kind: 'facts', rows: rows.filter((row) => row.value !== '') };
}

function whatWasDone({ decision, doneOn }: Fault, dayForm: DayForm): string {
  if (decision === null) return 'Not decided yet.';
  switch (decision.kind) {
    case 'leave':
      return `Left as it is: ${sentence(decision.reason)}`;
    case 'repair':
      return doneOn === null ? 'To be repaired.' : `Repaired on ${showDay(doneOn, dayForm)}.`;
    case 'replace':
      return doneOn === null ? 'To be replaced.' : `Replaced on ${showDay(doneOn, dayForm)}.`;
  }
}

/** What a buyer is told: faults marked for it, faults left as they are, and everything that is still open. */
export function faultsToTell(faults: readonly Fault[]): readonly Fault[] {
  return faults.filter((fault) => fault.tellBuyer || fault.doneOn === null);
}

function tellBlocks(vehicle: Vehicle, shop: Shop): SheetBlock[] {
  const told = faultsToTell(vehicle.faults).map(
    (fault) => `${sentence(fault.what)} ${whatWasDone(fault, shop.dealer.dayForm)}`,
  );
  const notice = shop.dealer.buyerNotice.trim();
  return [
    { kind: 'heading', level: 2, text: 'What a buyer must be told' },
    told.length === 0
      ? { kind: 'paragraph', text: 'Nothing in the record has to be told beyond what stands below.', emphasis: 'none' }
      : { kind: 'bullets', items: told },
    ...(notice === '' ? [] : [{ kind: 'paragraph', text: notice, emphasis: 'strong' } as const]),
  ];
}

function faultBlocks({ faults }: Vehicle, dayForm: DayForm): SheetBlock[] {
  return [
    { kind: 'heading', level: 2, text: 'What was found and what was done' },
    {
      kind: 'table',
      caption: 'Faults found and what was done about each',
      columns: [
        { title: 'Found', share: 14, align: 'left' },
        { title: 'What', share: 36, align: 'left' },
        { title: 'Codes', share: 16, align: 'left' },
        { title: 'What was done', share: 34, align: 'left' },
      ],
      rows: faults.map((fault) => [
        plain(showDay(fault.foundOn, dayForm)),
        plain(joined([fault.what, fault.module])),
        plain(fault.codes.join(', ')),
        fault.decision !== null && fault.doneOn !== null
          ? plain(whatWasDone(fault, dayForm))
          : strong(whatWasDone(fault, dayForm)),
      ]),
      whenEmpty: 'No fault is recorded.',
      rowRoom: 'text',
    },
  ];
}

const resultWords = { passed: 'passed', failed: 'failed', 'not-needed': 'not needed' } as const;

function standing(
  gate: Gate,
  signOff: SignOff | null,
  dayForm: DayForm,
): { readonly text: string; readonly isGood: boolean } {
  if (signOff === null) return { text: 'not signed', isGood: false };
  if (gate.state === 'stale') {
    const why = gate.items[0]?.text.replace(`Sign again: ${gate.title}. `, '') ?? '';
    return { text: `out of date: ${showDaysIn(why, dayForm)}`, isGood: false };
  }
  return { text: joined([resultWords[signOff.result], signOff.note]), isGood: signOff.result !== 'failed' };
}

function checkBlocks(vehicle: Vehicle, { readiness }: VehicleReckoning, shop: Shop): SheetBlock[] {
  const gates = readiness.gates.filter((gate) => gate.key.startsWith('check:'));
  if (gates.length === 0) return [];
  const rows = gates.map((gate) => {
    const signOff = currentSignOff(vehicle, gate.key.slice('check:'.length));
    const { text, isGood } = standing(gate, signOff, shop.dealer.dayForm);
    return [
      plain(gate.title),
      signOff === null ? quiet('') : plain(personName(shop.people, signOff.signedBy)),
      signOff === null ? quiet('') : plain(showDay(signOff.signedOn, shop.dealer.dayForm)),
      isGood ? plain(text) : strong(text),
    ];
  });
  return [
    { kind: 'heading', level: 2, text: 'Checks and signatures' },
    {
      kind: 'table',
      caption: 'Checks of this shop, who signed each, when, and whether the signature still holds',
      columns: [
        { title: 'Check', share: 40, align: 'left' },
        { title: 'Signed by', share: 18, align: 'left' },
        { title: 'On', share: 14, align: 'left' },
        { title: 'Result', share: 28, align: 'left' },
      ],
      rows,
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}

/** The signed check that speaks of recalls, by the shop's own words for it; a failed one has found something and is told all the same. */
function recallCheckOf(vehicle: Vehicle, shop: Shop): ReminderSituation['recallCheck'] {
  const check = shop.checklist.find(({ id, title }) => /recall/i.test(`${id} ${title}`));
  const signed = check === undefined ? null : currentSignOff(vehicle, check.id);
  if (signed === null || signed.result === 'not-needed') return null;
  const note = joined([signed.result === 'failed' ? 'check failed' : '', signed.note]);
  return { on: signed.signedOn, by: personName(shop.people, signed.signedBy), note };
}

function reminderBlocks(vehicle: Vehicle, { today }: VehicleReckoning, shop: Shop): SheetBlock[] {
  const transferYear = Number((vehicle.sale?.soldOn ?? today).slice(0, 4));
  const { modelYear } = vehicle.identity;
  const items = buyerReminders(shop.dealer.market, {
    modelYear,
    transferYear,
    dayForm: shop.dealer.dayForm,
    isMarginScheme: shop.saleTax.kind === 'on-margin',
    recallCheck: recallCheckOf(vehicle, shop),
  });
  return [
    { kind: 'heading', level: 2, text: 'Before the sale' },
    { kind: 'paragraph', text: remindersDefer, emphasis: 'quiet' },
    { kind: 'steps', isNumbered: false, hasInitials: false, items },
  ];
}

const footer =
  'This sheet says what the record of the vehicle says on the day of printing. It is no warranty and no inspection report.';

/** The readiness sheet of a vehicle as the record stands on the reckoning's day. Holds no money at all, whoever prints it. */
export function readinessSheet(vehicle: Vehicle, reckoning: VehicleReckoning, shop: Shop, printed: Printing): Sheet {
  const blocks: SheetBlock[] = [
    masthead(vehicle.identity),
    verdict(vehicle, reckoning, shop),
    vehicleFacts(vehicle, shop),
    ...tellBlocks(vehicle, shop),
    ...faultBlocks(vehicle, shop.dealer.dayForm),
    ...pictureBlocks(vehicle, ['everyone'], shop.dealer.dayForm),
    ...scanBlocks(vehicle.scans, shop.dealer.dayForm),
    ...checkBlocks(vehicle, reckoning, shop),
    ...reminderBlocks(vehicle, reckoning, shop),
    { kind: 'signatures', labels: ['Released for sale by, day', 'Told to the buyer by, day'] },
    ...barcodes(vehicle.identity),
  ];
  return frameSheet('readiness-sheet', 'Readiness sheet', vehicle, shop, printed, { blocks, footer });
}
