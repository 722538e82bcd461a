// The invented dealer of the sample fleet: its people, rates, checklist, and whom it buys from and sends work to. No real name is meant.
import { shippedCodeKinds } from '../../domain/codes/code-kinds.ts';
import { shippedFilingRules } from '../../domain/codes/filing-limit.ts';
import { inspectionSchemes } from '../../domain/diagnosis/inspection-schemes.ts';
import { usualSupportRange } from '../../domain/diagnosis/support-voltage.ts';
import type { Shop } from '../../domain/fleet/shop.ts';
import { startingSignInRules } from '../../domain/people/sign-in.ts';
import type { Day } from '../../domain/shared/day.ts';
import { firstTurnaroundSettings } from '../../domain/time/turnaround-settings.ts';

/** A Wednesday. Everything in the sample happened on or before it. */
export const sampleToday: Day = '2026-03-18';

export const people = {
  manager: 'ruth-ambersley',
  technician: 'tomas-ferrick',
  secondTechnician: 'nell-lunt',
  sales: 'casper-windle',
} as const;

export const suppliers = {
  /** Used units out of dismantled vehicles: cheap, slow, now and then the wrong one. */
  salvage: 'Lowmarsh Salvage',
  /** New parts by order. */
  newParts: 'Penhallow Parts',
  /** Repaired units against the old one, with a core charge. */
  exchange: 'Corvane Exchange Units',
  /** Over the counter, same or next day. */
  counter: 'Trellis Trade Counter',
} as const;

export const codeDesks = {
  maker: 'maker’s code desk',
  keys: 'Keywright Code Desk',
  audio: 'Audio Code Line',
  gateway: 'maker’s gateway desk',
} as const;

export const workshops = {
  glass: 'Pell Street Glass',
  highVoltage: 'Voltmoor Hybrid and Electric',
  body: 'Gull Lane Body Shop',
  transmission: 'Ironbridge Lane Transmissions',
} as const;

export const sources = {
  auction: 'Hollin Cross Auction',
  fleetAuction: 'Saltmarsh Fleet Auction',
  tradeIn: 'trade-in',
  privateSeller: 'private seller',
} as const;

export const checks = {
  roadTest: 'road-test',
  safety: 'safety-check',
  keys: 'keys-proven',
  recalls: 'recall-check',
  ownerData: 'owner-data',
  cleaned: 'cleaned',
  photographed: 'photographed',
  windowForm: 'window-form',
} as const;

/** An invented lender's terms. */
export const plans = { yard: 'hollin-stock-finance' } as const;

export const sampleShop: Shop = {
  dealer: {
    name: 'Quillhaven Motor Yard (invented)',
    address: '14 Sample Row\nQuillhaven\nAn invented place',
    phone: '555-0142',
    market: 'US',
    currency: 'USD',
    distanceUnit: 'mi',
    dayForm: 'day-month',
    paper: 'letter',
    paperName: 'Title',
    buyerNotice:
      'Invented sample: this dealer, its people, suppliers, makes, models and vehicles do not exist. Ask us for the scan before and after the repair of any vehicle you look at.',
    showsPriceInWindow: true,
  },
  rates: {
    labourCentsPerHour: 62_00,
    fundingRatePpm: 84_000,
    dayCount: 'actual-360',
    overheadCentsPerDay: 23_00,
    countsFirstDay: false,
  },
  people: [
    { id: people.manager, name: 'Ruth Ambersley', role: 'manager', labourCentsPerHour: null, isActive: true },
    { id: people.technician, name: 'Tomas Ferrick', role: 'technician', labourCentsPerHour: 68_00, isActive: true },
    { id: people.secondTechnician, name: 'Nell Lunt', role: 'technician', labourCentsPerHour: null, isActive: true },
    { id: people.sales, name: 'Casper Windle', role: 'sales', labourCentsPerHour: null, isActive: true },
  ],
  checklist: [
    {
      id: checks.roadTest,
      title: 'Road test: brakes, steering, no lamp lit, no noise',
      stage: 'verify',
      who: 'technician',
      staleAfter: ['mechanical', 'electrical', 'safety'],
      isActive: true,
    },
    {
      id: checks.safety,
      title: 'Lights, wipers, horn, belts, tyres and airbag lamp looked at',
      stage: 'verify',
      who: 'technician',
      staleAfter: ['electrical', 'safety'],
      isActive: true,
    },
    {
      id: checks.keys,
      title: 'Every key starts it and works the locks',
      stage: 'verify',
      who: 'technician',
      staleAfter: ['electrical'],
      isActive: true,
    },
    {
      id: checks.recalls,
      title: 'Open recalls looked up, answer and day noted',
      stage: 'verify',
      who: 'manager',
      staleAfter: [],
      isActive: true,
    },
    {
      id: checks.ownerData,
      title: 'Earlier owner’s phones and addresses cleared',
      stage: 'present',
      who: 'sales',
      staleAfter: [],
      isActive: true,
    },
    {
      id: checks.cleaned,
      title: 'Cleaned inside and out',
      stage: 'present',
      who: 'sales',
      staleAfter: ['body', 'interior'],
      isActive: true,
    },
    {
      id: checks.photographed,
      title: 'Photographed',
      stage: 'present',
      who: 'sales',
      staleAfter: ['body'],
      isActive: true,
    },
    {
      id: checks.windowForm,
      title: 'Buyers Guide filled in and in the window',
      stage: 'present',
      who: 'sales',
      staleAfter: [],
      isActive: true,
    },
  ],
  rulePacks: [],
  fundingPlans: [
    {
      id: plans.yard,
      name: 'Hollin Stock Finance (invented)',
      advancePpm: 900_000,
      ratePpm: 92_500,
      rateChanges: [{ from: '2026-02-02', ratePpm: 89_000 }],
      dayCount: 'actual-360',
      freeDays: 0,
      drawFeeCents: 95_00,
      curtailments: [
        { kind: 'percent-of-original', valuePpm: 100_000, dayMark: 45, every: { count: 30, unit: 'days' } },
      ],
      floor: { ofOriginalPpm: 500_000, ofWholesalePpm: null },
      payoffWorkingDays: 5,
    },
  ],
  saleTax: { kind: 'none' },
  selling: { retailCents: 180_00, tradeCents: 120_00, daysToSell: null, daysToTrade: 3 },
  calendar: {
    workDays: [1, 2, 3, 4, 5],
    minutesPerDay: 480,
    holidays: [
      '2025-05-26',
      '2025-07-04',
      '2025-09-01',
      '2025-11-27',
      '2025-12-25',
      '2026-01-01',
      '2026-05-25',
      '2026-07-03',
    ],
  },
  turnaround: firstTurnaroundSettings,
  ageingBands: [15, 30, 45, 60, 90],
  valueLoss: [
    { heldDays: 30, lostPpm: 0 },
    { heldDays: 90, lostPpm: 40_000 },
    { heldDays: 180, lostPpm: 110_000 },
  ],
  inspection: { chosenId: 'us-federal-guidance', schemes: [...inspectionSchemes] },
  supportRanges: [
    usualSupportRange,
    {
      make: 'Orvane',
      lowestVolts: 13.4,
      highestVolts: 14.8,
      source: 'invented, as if read from its service information',
    },
  ],
  codeKinds: [...shippedCodeKinds],
  filingRules: [...shippedFilingRules],
  daysUntilCodesAreDestroyed: 30,
  signIn: startingSignInRules,
  sample: { today: sampleToday },
};
