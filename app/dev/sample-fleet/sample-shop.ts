// The invented dealer of the sample fleet: its people, rates, checklist, and whom it buys from and sends work to. No real name is meant.
import type { Shop } from '../../domain/fleet/shop.ts';
import type { Day } from '../../domain/shared/day.ts';

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

export const sampleShop: Shop = {
  dealer: {
    name: 'Quillhaven Motor Yard (invented)',
    address: '14 Sample Row\nQuillhaven\nAn invented place',
    phone: '555-0142',
    market: 'US',
    currency: 'USD',
    distanceUnit: 'mi',
    paper: 'letter',
    paperName: 'Title',
    buyerNotice:
      'Invented sample: this dealer, its people, suppliers, makes, models and vehicles do not exist. Ask us for the scan before and after the repair of any vehicle you look at.',
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
  sample: { today: sampleToday },
};
