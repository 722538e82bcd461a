// One invented vehicle in the middle of its work and the same one ready for sale, with an invented shop: what sheets are tried on.
// Amounts are odd on purpose, so that a test can look for them.

import { shippedCodeKinds } from '../../app/domain/codes/code-kinds.ts';
import { shippedFilingRules } from '../../app/domain/codes/filing-limit.ts';
import { plainCode } from '../../app/domain/diagnosis/scan.ts';
import type { Shop } from '../../app/domain/fleet/shop.ts';
import { startingSignInRules } from '../../app/domain/people/sign-in.ts';
import { firstTurnaroundSettings } from '../../app/domain/time/turnaround-settings.ts';
import { noTargets } from '../../app/domain/vehicle/purchase.ts';
import { reckonVehicle, type VehicleReckoning } from '../../app/domain/vehicle/reckon.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import {
  makeAttempt,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeJob,
  makeLabour,
  makeNote,
  makeOtherCost,
  makePart,
  makeScan,
  makeSignOff,
  makeStep,
  makeSublet,
  makeVehicle,
} from './vehicle-maker.ts';

export const exampleToday = '2026-03-18';
export const examplePrinting = { at: '2026-03-18T08:42:00.000Z', by: 'Mara Lindqvist', revision: 23 };

/** Every amount of money in the example, in cents. None may reach a sheet. */
export const exampleAmounts = [
  913_700, 41_300, 18_900, 1_427_300, 137_100, 761_900, 95_300, 34_700, 7_300, 11_900, 2_990, 23_900, 26_700, 4_700,
  1_391_100,
] as const;

export const exampleShop: Shop = {
  dealer: {
    name: 'Fernhollow Motor Yard',
    address: '14 Millrace Lane\nFernhollow',
    phone: '555 0142',
    market: 'US',
    currency: 'USD',
    distanceUnit: 'mi',
    dayForm: 'day-month',
    paper: 'a4',
    paperName: 'Title',
    buyerNotice:
      'Sold as described here and on the Buyers Guide. Ask for the scan results: you may take a copy of both with you.',
    showsPriceInWindow: true,
  },
  rates: {
    labourCentsPerHour: 7300,
    fundingRatePpm: 84_000,
    dayCount: 'actual-360',
    overheadCentsPerDay: 1190,
    countsFirstDay: false,
  },
  people: [
    { id: 'mara', name: 'Mara Lindqvist', role: 'manager', labourCentsPerHour: null, isActive: true },
    { id: 'tomas', name: 'Tomáš Dvořáček', role: 'technician', labourCentsPerHour: null, isActive: true },
    { id: 'eleni', name: 'Ελένη Παπαδάκη', role: 'sales', labourCentsPerHour: null, isActive: true },
  ],
  checklist: [
    {
      id: 'road-test',
      title: 'Road test: brakes, steering, no lamp lit, no noise',
      stage: 'verify',
      who: 'technician',
      staleAfter: ['mechanical', 'electrical', 'safety'],
      isActive: true,
    },
    {
      id: 'safety-check',
      title: 'Safety check: lights, wipers, horn, belts, tyres, airbag lamp',
      stage: 'verify',
      who: 'technician',
      staleAfter: ['electrical', 'safety', 'body'],
      isActive: true,
    },
    {
      id: 'recall-check',
      title: 'Open recalls looked up, result noted with the day',
      stage: 'verify',
      who: 'manager',
      staleAfter: [],
      isActive: true,
    },
    {
      id: 'cleaned',
      title: 'Cleaned inside and out',
      stage: 'present',
      who: 'sales',
      staleAfter: ['body', 'interior'],
      isActive: true,
    },
    { id: 'photographed', title: 'Photographed', stage: 'present', who: 'sales', staleAfter: ['body'], isActive: true },
  ],
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
  sample: { today: exampleToday },
};

const bodyPart = makePart('2026-03-05', {
  id: 'part-body',
  what: 'Body control module',
  partNumber: 'LW-BCM-20417-C',
  supplier: 'Northbank Vehicle Parts',
  faultId: 'fault-body',
  priceCents: 34_700,
  coreChargeCents: 7300,
  orderedOn: '2026-03-06',
  expectedOn: '2026-03-12',
  receivedOn: '2026-03-13',
  note: 'used, from a 2020 donor',
});
const lampPart = makePart('2026-03-05', {
  id: 'part-lamp',
  what: 'Rear lamp, left',
  partNumber: 'LW-RL-7731',
  supplier: 'Northbank Vehicle Parts',
  faultId: 'fault-lamp',
  priceCents: 11_900,
  orderedOn: '2026-03-09',
  expectedOn: '2026-03-20',
});
const bulbs = makePart('2026-03-05', {
  id: 'part-bulbs',
  what: 'Number plate bulb',
  quantity: 2,
  priceCents: 2990,
  supplier: '',
  orderedOn: '2026-03-10',
  receivedOn: '2026-03-10',
  fittedOn: '2026-03-10',
});
const bodyCode = makeCodeRequest('2026-03-06', {
  id: 'code-body',
  kind: 'immobiliser',
  module: 'Body control module',
  deviceSerial: '7731-0042-C',
  faultId: 'fault-body',
  proof: { document: 'purchase invoice', checkedOn: '2026-03-06', checkedBy: 'mara' },
  askedOn: '2026-03-06',
  askedOf: 'Maker’s code desk',
  expectedOn: '2026-03-12',
  answeredOn: '2026-03-11',
  outcome: 'given',
  feeCents: 4700,
  keptWhere: 'office safe, envelope 31',
});
const radioCode = makeCodeRequest('2026-03-09', {
  id: 'code-radio',
  kind: 'radio',
  module: 'Radio',
  deviceSerial: 'R20-118834',
  askedOn: '2026-03-16',
  askedOf: 'Maker’s code desk',
  expectedOn: '2026-03-23',
});

const bodyJob = makeJob('2026-03-06', {
  id: 'job-body',
  module: 'Body control module',
  origin: 'used',
  faultId: 'fault-body',
  partId: 'part-body',
  codeRequestId: 'code-body',
  note: 'The donor unit has its own key data; the keys are learned again at the end.',
  steps: [
    makeStep({
      id: 'step-read',
      title: 'Read and save the old module',
      cautions: ['keep-old-module'],
      typicalMinutes: 20,
    }),
    makeStep({
      id: 'step-fit',
      title: 'Fit the replacement',
      detail: 'Battery off first; note the connector positions.',
      needsPart: true,
      typicalMinutes: 45,
    }),
    makeStep({
      id: 'step-write',
      title: 'Write the vehicle’s software and configuration',
      detail: 'From the maker’s service information for this VIN.',
      cautions: ['supply-voltage', 'never-interrupt'],
      typicalMinutes: 40,
      needsPart: true,
    }),
    makeStep({
      id: 'step-vin',
      title: 'Write the VIN',
      cautions: ['vin-permanent', 'never-interrupt'],
      cannotBeUndone: true,
      needsPart: true,
    }),
    makeStep({
      id: 'step-keys',
      title: 'Learn every key',
      detail: 'All keys in the vehicle; a key left out stops working.',
      cautions: ['anti-theft-code'],
      needsCode: true,
      typicalMinutes: 30,
    }),
    makeStep({
      id: 'step-tow',
      title: 'Set the trailer socket',
      leftOutReason: 'no trailer socket on this vehicle',
    }),
  ],
});

const identity = {
  stockNumber: 'F-1042',
  vin: '0LW4BRHC6KA010427',
  modelYear: 2019,
  make: 'Merrowick',
  model: 'Hearth 2.0 Estate',
  body: 'estate, five doors',
  colour: 'river blue',
  drive: 'hybrid',
  odometer: { reading: 61_482, unit: 'mi' },
  location: 'Bay 3',
  keyTag: '17',
} as const;

const purchase = {
  source: 'Harrow Cross auction',
  priceCents: 913_700,
  feesCents: 41_300,
  transportCents: 18_900,
  paperExpectedOn: '2026-03-10',
  paperReceivedOn: '2026-03-09',
  keysReceived: 2,
  fundingPlanId: null,
};

const targets = {
  ...noTargets,
  askingCents: 1_427_300,
  budgetCents: 137_100,
  tradeValueCents: 761_900,
  marginFloorCents: 95_300,
};

const arrivalScan = makeScan('2026-03-04', {
  device: 'shop reader',
  modules: [
    {
      name: 'Engine',
      answered: true,
      codes: [
        plainCode('U0140', 'present', 'Lost communication with body control module'),
        plainCode('P0562', 'history', 'System voltage low'),
      ],
    },
    {
      name: 'Instrument cluster',
      answered: true,
      codes: [plainCode('U0140', 'present', 'Lost communication with body control module')],
    },
    { name: 'Brakes', answered: true, codes: [] },
    { name: 'Airbag', answered: true, codes: [plainCode('B0001', 'present')] },
    { name: 'Body control module', answered: false, codes: [] },
  ],
});

const faults = {
  body: makeFault('2026-03-04', {
    id: 'fault-body',
    what: 'Body control module does not answer; no locks, no wipers',
    area: 'control-module',
    module: 'Body control module',
    codes: ['U0140'],
    note: 'Supply and earth at the connector measured good.',
    decision: makeDecision('2026-03-05', { kind: 'replace', estimateMinutes: 150 }),
    tellBuyer: true,
  }),
  airbag: makeFault('2026-03-04', {
    id: 'fault-airbag',
    what: 'Airbag lamp lit: driver’s airbag circuit',
    area: 'airbag',
    module: 'Airbag',
    codes: ['B0001'],
    decision: makeDecision('2026-03-05', { kind: 'repair', estimateMinutes: 60 }),
  }),
  lamp: makeFault('2026-03-05', {
    id: 'fault-lamp',
    what: 'Rear lamp left cracked',
    area: 'body',
    decision: makeDecision('2026-03-05', { kind: 'replace', estimateMinutes: 20 }),
  }),
  tailgate: makeFault('2026-03-05', {
    id: 'fault-tailgate',
    what: 'Scratch on the tailgate, 20 cm',
    area: 'body',
    decision: makeDecision('2026-03-05', {
      kind: 'leave',
      reason: 'polished; painting it would cost more than it is worth',
      estimateMinutes: null,
    }),
    tellBuyer: true,
  }),
  blower: makeFault('2026-03-16', {
    id: 'fault-blower',
    what: 'Blower whistles on stage 4',
    area: 'climate',
  }),
};

/** In the middle of its work: a part and a code are missing, a programming step is done, one fault waits for a decision. */
export const exampleVehicle: Vehicle = makeVehicle('2026-03-02', {
  id: 'example-vehicle',
  identity,
  purchase,
  arrival: { arrivedOn: '2026-03-04' },
  targets,
  scans: [arrivalScan],
  faults: Object.values(faults),
  jobs: [bodyJob],
  attempts: [
    makeAttempt('2026-03-16', bodyJob, 'step-read', {
      person: 'tomas',
      outcome: 'failed',
      message: 'no answer on the bus',
      route: 'on-vehicle',
    }),
    makeAttempt('2026-03-17', bodyJob, 'step-read', {
      person: 'tomas',
      route: 'bench',
      voltsBefore: 13.5,
      voltsLowest: 13.3,
      voltsAfter: 13.4,
    }),
  ],
  parts: [bodyPart, lampPart, bulbs],
  codeRequests: [bodyCode, radioCode],
  labour: [
    makeLabour('2026-03-05', { person: 'tomas', minutes: 50, what: 'Scan of every module, wiring measured' }),
    makeLabour('2026-03-17', { person: 'tomas', minutes: 75, what: 'Old module out, read on the bench' }),
  ],
  sublets: [
    makeSublet('2026-03-09', {
      what: 'Windscreen chip filled',
      supplier: 'Clearpane Glass',
      sentOn: '2026-03-10',
      backOn: '2026-03-10',
      quotedCents: 23_900,
      invoicedCents: 26_700,
    }),
  ],
  otherCosts: [makeOtherCost('2026-03-04', 4700)],
  notes: [makeNote('2026-03-04', 'Seller wanted 13,911.00 at first.')],
});

const readyScan = makeScan('2026-03-24', {
  kind: 'post-repair',
  modules: [
    { name: 'Engine', answered: true, codes: [] },
    { name: 'Instrument cluster', answered: true, codes: [] },
    { name: 'Brakes', answered: true, codes: [] },
    { name: 'Airbag', answered: true, codes: [] },
    { name: 'Body control module', answered: true, codes: [] },
  ],
});

/** The same vehicle a week later, everything done, proven and signed. */
export const readyVehicle: Vehicle = {
  ...exampleVehicle,
  identity: { ...exampleVehicle.identity, location: 'Front row' },
  scans: [arrivalScan, readyScan],
  faults: [
    { ...faults.body, doneOn: '2026-03-23' },
    { ...faults.airbag, doneOn: '2026-03-20' },
    { ...faults.lamp, doneOn: '2026-03-21' },
    faults.tailgate,
    {
      ...faults.blower,
      decision: makeDecision('2026-03-18', { kind: 'leave', reason: 'normal for this model', estimateMinutes: null }),
    },
  ],
  attempts: bodyJob.plan.steps
    .filter(({ id }) => id !== 'step-tow')
    .map((step) => makeAttempt('2026-03-23', bodyJob, step.id, { person: 'tomas' })),
  parts: [
    { ...bodyPart, fittedOn: '2026-03-20', coreReturnedOn: '2026-03-23' },
    { ...lampPart, receivedOn: '2026-03-20', fittedOn: '2026-03-21' },
    bulbs,
  ],
  codeRequests: [
    bodyCode,
    { ...radioCode, answeredOn: '2026-03-20', outcome: 'given', keptWhere: 'office safe, envelope 32' },
  ],
  signOffs: [
    makeSignOff('2026-03-24', 'road-test', { signedBy: 'tomas' }),
    makeSignOff('2026-03-24', 'safety-check', { signedBy: 'tomas' }),
    makeSignOff('2026-03-24', 'recall-check', { signedBy: 'mara', note: 'none open' }),
    makeSignOff('2026-03-25', 'cleaned', { signedBy: 'eleni' }),
    makeSignOff('2026-03-25', 'photographed', { signedBy: 'eleni' }),
  ],
};

export const readyToday = '2026-03-26';

export function reckonExample(vehicle: Vehicle, today = exampleToday, shop = exampleShop): VehicleReckoning {
  return reckonVehicle(vehicle, shop, today);
}
