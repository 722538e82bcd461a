// Small valid records for tests: a whole vehicle or one fact, with only what the test is about spelled out.

import { shippedCodeKinds } from '../../app/domain/codes/code-kinds.ts';
import type { CodeRequest } from '../../app/domain/codes/code-request.ts';
import { shippedFilingRules } from '../../app/domain/codes/filing-limit.ts';
import type { BatteryReading } from '../../app/domain/diagnosis/battery-reading.ts';
import type { Decision, Fault } from '../../app/domain/diagnosis/fault.ts';
import { nothingElseRead, type Scan } from '../../app/domain/diagnosis/scan.ts';
import type { Check, Person, Rates, Shop } from '../../app/domain/fleet/shop.ts';
import type { OtherCost } from '../../app/domain/money/other-cost.ts';
import type { Part } from '../../app/domain/parts/part.ts';
import { startingSignInRules } from '../../app/domain/people/sign-in.ts';
import type { Attempt } from '../../app/domain/programming/attempt.ts';
import type { KeptPlan, KeptStep } from '../../app/domain/programming/kept-plan.ts';
import { moduleKindFromName } from '../../app/domain/programming/module-kind.ts';
import type { JobModule, ProgrammingJob } from '../../app/domain/programming/programming-job.ts';
import type { SignOff } from '../../app/domain/readiness/sign-off.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import type { Stamp } from '../../app/domain/shared/fact.ts';
import { firstTurnaroundSettings } from '../../app/domain/time/turnaround-settings.ts';
import type { Identity } from '../../app/domain/vehicle/identity.ts';
import type { Note } from '../../app/domain/vehicle/note.ts';
import type { Arrival, Purchase, Targets } from '../../app/domain/vehicle/purchase.ts';
import { noTargets } from '../../app/domain/vehicle/purchase.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import type { Labour } from '../../app/domain/work/labour.ts';
import type { Sublet } from '../../app/domain/work/sublet.ts';
import { blankRequest } from './blank-request.ts';

let made = 0;
function nextId(kind: string): string {
  made += 1;
  return `${kind}-${made}`;
}

/** Entered by the shop's technician on this day at this hour (UTC). */
export function stampAt(day: Day, hour = 12): Stamp {
  return { by: 'technician-1', at: `${day}T${String(hour).padStart(2, '0')}:00:00.000Z` };
}

type About<Fact> = Partial<Fact>;

export function makeScan(takenOn: Day, about: About<Scan> = {}): Scan {
  return {
    id: nextId('scan'),
    takenOn,
    kind: 'pre-repair',
    device: 'shop reader',
    ...nothingElseRead,
    modules: [{ name: 'Engine', answered: true, codes: [] }],
    note: '',
    entered: stampAt(takenOn),
    ...about,
  };
}

export function makeBatteryReading(measuredOn: Day, about: About<BatteryReading> = {}): BatteryReading {
  return {
    id: nextId('battery'),
    measuredOn,
    volts: 12.45,
    chemistry: 'flooded',
    temperatureCelsius: null,
    isRested: true,
    note: '',
    entered: stampAt(measuredOn),
    ...about,
  };
}

export function makeDecision(decidedOn: Day, about: About<Decision> = {}): Decision {
  return { kind: 'repair', decidedOn, reason: '', estimateMinutes: 60, ...about };
}

export function makeFault(foundOn: Day, about: About<Fault> = {}): Fault {
  return {
    id: nextId('fault'),
    foundOn,
    what: 'wipers dead',
    area: 'electrical',
    module: '',
    codes: [],
    note: '',
    decision: null,
    doneOn: null,
    tellBuyer: false,
    entered: stampAt(foundOn),
    ...about,
  };
}

export function makePart(neededOn: Day, about: About<Part> = {}): Part {
  return {
    id: nextId('part'),
    neededOn,
    what: 'body module',
    partNumber: '',
    supplier: 'Yard',
    faultId: null,
    quantity: 1,
    priceCents: 12_000,
    coreChargeCents: 0,
    orderedOn: null,
    expectedOn: null,
    receivedOn: null,
    fittedOn: null,
    returnedOn: null,
    coreReturnedOn: null,
    chases: [],
    note: '',
    entered: stampAt(neededOn),
    ...about,
  };
}

export function makeCodeRequest(notedOn: Day, about: About<CodeRequest> = {}): CodeRequest {
  return {
    id: nextId('request'),
    ...blankRequest(notedOn),
    module: 'immobiliser',
    reason: 'keys not accepted',
    proof: { document: 'purchase invoice', checkedOn: notedOn, checkedBy: 'manager-1' },
    askedOf: 'Code desk',
    entered: stampAt(notedOn),
    ...about,
  };
}

/** A step of a made-up plan: what it asks for said in two words, and whether it is left out. */
export type MadeStep = KeptStep & { readonly leftOutReason: string };

export function makeStep(
  about: About<KeptStep> & { needsPart?: boolean; needsCode?: boolean; leftOutReason?: string } = {},
): MadeStep {
  const { needsPart = false, needsCode = false, leftOutReason = '', ...step } = about;
  const gates: KeptStep['gates'] = [];
  if (needsPart) gates.push('part-in-hand');
  if (needsCode) gates.push('code-in-hand');
  return {
    id: nextId('step'),
    moduleId: gates.length > 0 ? 'mod1' : null,
    stage: 'write',
    title: 'write the module',
    detail: '',
    cautions: [],
    gates,
    meets: [],
    ends: [],
    routes: ['on-vehicle', 'bench', 'pass-through', 'sent-out', 'by-hand'],
    cannotBeUndone: false,
    typicalMinutes: null,
    layer: 0,
    leftOutReason,
    ...step,
  };
}

/** A plan that does these steps one after the other, whatever a rule pack would say. */
export function planOf(madeOn: Day, steps: readonly KeptStep[]): KeptPlan {
  return {
    packId: 'general',
    packVersion: 1,
    madeOn,
    steps: steps.map((step, layer) => ({ ...step, layer })),
    links: steps.slice(1).map((step, at) => ({ before: steps[at]?.id ?? '', after: step.id, ruleId: 'in-turn' })),
    rules: [{ id: 'in-turn', reason: 'One after the other.', source: 'made up', letsGo: false }],
    contradictions: [],
    reminders: [],
  };
}

type AboutJob = About<ProgrammingJob> &
  About<Pick<JobModule, 'origin' | 'partId' | 'codeRequestId'>> & { module?: string; steps?: readonly MadeStep[] };

/** A job on one module with these steps in turn; a module that says what it is by its name. */
export function makeJob(openedOn: Day, about: AboutJob = {}): ProgrammingJob {
  const { module = 'Body', origin = 'used', partId = null, codeRequestId = null, steps = [makeStep()], ...job } = about;
  const plain = steps.map(({ leftOutReason: _reason, ...step }): KeptStep => step);
  return {
    id: nextId('job'),
    openedOn,
    title: module,
    faultId: null,
    modules: [{ id: 'mod1', kind: moduleKindFromName(module), name: module, origin, partId, codeRequestId }],
    plan: planOf(openedOn, plain),
    makerOrder: null,
    ticks: [],
    leftOut: steps
      .filter(({ leftOutReason }) => leftOutReason !== '')
      .map(({ id, leftOutReason }) => ({ stepId: id, reason: leftOutReason, by: 'technician-1', on: openedOn })),
    formerSteps: [],
    note: '',
    entered: stampAt(openedOn),
    ...job,
  };
}

export function makeAttempt(on: Day, job: ProgrammingJob, stepId: string, about: About<Attempt> = {}): Attempt {
  return {
    id: nextId('attempt'),
    jobId: job.id,
    stepId,
    on,
    person: 'technician-1',
    route: 'on-vehicle',
    outcome: 'worked',
    vinRead: '',
    override: null,
    voltsBefore: null,
    voltsLowest: null,
    voltsAfter: null,
    message: '',
    evidence: '',
    entered: stampAt(on),
    ...about,
  };
}

export function makeLabour(workedOn: Day, about: About<Labour> = {}): Labour {
  return {
    id: nextId('labour'),
    workedOn,
    person: 'technician-1',
    minutes: 60,
    what: 'fitted it',
    area: 'electrical',
    faultId: null,
    entered: stampAt(workedOn),
    ...about,
  };
}

export function makeSublet(notedOn: Day, about: About<Sublet> = {}): Sublet {
  return {
    id: nextId('sublet'),
    notedOn,
    what: 'windscreen',
    supplier: 'Glass people',
    area: 'body',
    faultId: null,
    sentOn: null,
    expectedOn: null,
    backOn: null,
    quotedCents: 30_000,
    invoicedCents: null,
    chases: [],
    note: '',
    entered: stampAt(notedOn),
    ...about,
  };
}

export function makeSignOff(signedOn: Day, checkId: string, about: About<SignOff> = {}): SignOff {
  return {
    id: nextId('sign-off'),
    checkId,
    signedOn,
    signedBy: 'technician-1',
    result: 'passed',
    note: '',
    entered: stampAt(signedOn),
    ...about,
  };
}

export function makeOtherCost(spentOn: Day, amountCents: number): OtherCost {
  return { id: nextId('cost'), spentOn, what: 'fuel', amountCents, entered: stampAt(spentOn) };
}

export function makeNote(on: Day, text = 'a remark'): Note {
  return { id: nextId('note'), on, text, entered: stampAt(on) };
}

type AboutVehicle = Partial<Omit<Vehicle, 'identity' | 'purchase' | 'arrival' | 'targets'>> & {
  readonly identity?: Partial<Identity>;
  readonly purchase?: Partial<Purchase>;
  readonly arrival?: Partial<Arrival>;
  readonly targets?: Partial<Targets>;
};

/** Bought and here on `boughtOn`, its paper with it, a price set; nothing found, nothing done. */
export function makeVehicle(boughtOn: Day, about: AboutVehicle = {}): Vehicle {
  const { identity, purchase, arrival, targets, ...facts } = about;
  return {
    id: nextId('vehicle'),
    takenIn: stampAt(boughtOn),
    identity: {
      stockNumber: 'T-100',
      vin: '11111111111111111',
      vinReason: '',
      modelYear: 2018,
      make: 'Invented',
      model: 'Testbed',
      body: 'saloon',
      colour: 'grey',
      drive: 'combustion',
      odometer: { reading: 60_000, unit: 'mi' },
      location: '',
      keyTag: '',
      ...identity,
    },
    purchase: {
      boughtOn,
      source: 'an auction',
      priceCents: 800_000,
      feesCents: 0,
      transportCents: 0,
      paperKind: 'Title',
      paperExpectedOn: null,
      paperReceivedOn: boughtOn,
      keysReceived: 1,
      fundingPlanId: null,
      ...purchase,
    },
    arrival: { expectedOn: null, arrivedOn: boughtOn, ...arrival },
    targets: { ...noTargets, askingCents: 1_000_000, ...targets },
    scans: [],
    batteryReadings: [],
    faults: [],
    jobs: [],
    attempts: [],
    parts: [],
    codeRequests: [],
    labour: [],
    sublets: [],
    otherCosts: [],
    signOffs: [],
    notes: [],
    attachments: [],
    sale: null,
    ...facts,
  };
}

export const roadTest: Check = {
  id: 'road-test',
  title: 'Road test',
  stage: 'verify',
  who: 'technician',
  staleAfter: ['mechanical', 'safety'],
  isActive: true,
};

export const cleaned: Check = {
  id: 'cleaned',
  title: 'Cleaned',
  stage: 'present',
  who: 'sales',
  staleAfter: ['body', 'interior'],
  isActive: true,
};

export const noHoldingCost: Rates = {
  labourCentsPerHour: 6_000,
  fundingRatePpm: 0,
  dayCount: 'actual-365',
  overheadCentsPerDay: 0,
  countsFirstDay: false,
};

export function makePerson(id: string, about: About<Person> = {}): Person {
  return { id, name: `Person ${id}`, role: 'technician', labourCentsPerHour: null, isActive: true, ...about };
}

export function makeShop(about: { readonly rates?: Partial<Rates>; readonly checklist?: readonly Check[] } = {}): Shop {
  return {
    dealer: {
      name: 'Test yard',
      address: '',
      phone: '',
      market: 'US',
      currency: 'USD',
      distanceUnit: 'mi',
      dayForm: 'day-month',
      paper: 'letter',
      paperName: 'Title',
      buyerNotice: '',
      showsPriceInWindow: true,
    },
    rates: { ...noHoldingCost, ...about.rates },
    people: [makePerson('technician-1'), makePerson('manager-1', { role: 'manager' })],
    checklist: [...(about.checklist ?? [roadTest, cleaned])],
    rulePacks: [],
    fundingPlans: [],
    saleTax: { kind: 'none' },
    selling: { retailCents: null, tradeCents: null, daysToSell: null, daysToTrade: null },
    calendar: { workDays: [1, 2, 3, 4, 5], minutesPerDay: 480, holidays: [] },
    turnaround: firstTurnaroundSettings,
    ageingBands: [30, 60, 90],
    valueLoss: [],
    inspection: { chosenId: null, schemes: [] },
    signIn: startingSignInRules,
    supportRanges: [],
    codeKinds: [...shippedCodeKinds],
    filingRules: [...shippedFilingRules],
    daysUntilCodesAreDestroyed: 30,
    sample: null,
  };
}
