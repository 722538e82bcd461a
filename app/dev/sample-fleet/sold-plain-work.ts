// Troubles of sold vehicles without programming: over the counter, or sent to somebody who does it better.
import type { DriveKind } from '../../domain/vehicle/identity.ts';
import type { WorkArea } from '../../domain/work/work-area.ts';
import { people, suppliers, workshops } from './sample-shop.ts';
import type { Trouble } from './sold-trouble.ts';
import { turnaround } from './turnaround.ts';
import { workingDaysAfter } from './working-days.ts';

type InHouse = {
  readonly what: string;
  readonly area: WorkArea;
  readonly part: string;
  readonly price: readonly [least: number, most: number];
  readonly minutes: readonly [least: number, most: number];
  readonly supplier: string;
  readonly module?: string;
  readonly codes?: readonly string[];
};

/** A part, some time, done. */
function inHouse(about: InHouse): Trouble {
  const { what, area, part: name, price, minutes, supplier, module = '', codes = [] } = about;
  return {
    shows: codes.length > 0 ? [`${module}: ${codes.map((code) => `${code} present`).join(', ')}`] : [],
    plan: (random, later, scannedOn) => {
      const decided = workingDaysAfter(scannedOn, random.whole(0, 4));
      const ordered = workingDaysAfter(decided, random.whole(0, 2));
      const comes = turnaround(random, supplier, ordered);
      const done = workingDaysAfter(comes.comesOn, random.whole(0, 5));
      const by = random.chance(0.5) ? people.technician : people.secondTechnician;
      const [estimate, booked] = [random.whole(...minutes), random.whole(...minutes)];
      const cost = random.whole(...price);
      let [fault, part] = ['', ''];
      later.at(scannedOn, (story) => {
        fault = story.find(what, area, { module, codes });
      });
      later.at(decided, (story) => story.decide(fault, 'replace', estimate));
      later.at(ordered, (story) => {
        part = story.need(name, cost, fault);
        story.order(part, supplier, comes.promisedFor);
      });
      later.at(comes.comesOn, (story) => story.receive(part));
      later.at(done, (story) => {
        story.fit(part, by);
        story.book(booked, name, area, fault, by);
        story.finish(fault, by);
      });
      return done;
    },
  };
}

export const plainWork: readonly Trouble[] = [
  inHouse({
    what: 'brakes worn',
    area: 'brakes',
    part: 'discs and pads',
    price: [160, 290],
    minutes: [70, 140],
    supplier: suppliers.counter,
  }),
  inHouse({
    what: 'tyres at the limit',
    area: 'tyres-wheels',
    part: 'pair of tyres',
    price: [190, 340],
    minutes: [40, 60],
    supplier: suppliers.counter,
  }),
  inHouse({
    what: 'misfires',
    area: 'engine',
    part: 'ignition coil and plugs',
    price: [70, 240],
    minutes: [45, 110],
    supplier: suppliers.counter,
    module: 'Engine',
    codes: ['P0302'],
  }),
  inHouse({
    what: 'battery does not hold',
    area: 'electrical',
    part: 'battery',
    price: [150, 230],
    minutes: [25, 40],
    supplier: suppliers.counter,
    module: 'Body',
    codes: ['P0562'],
  }),
  inHouse({
    what: 'fuel vapour leak',
    area: 'engine',
    part: 'vent valve',
    price: [45, 120],
    minutes: [40, 90],
    supplier: suppliers.newParts,
    module: 'Engine',
    codes: ['P0442'],
  }),
  inHouse({
    what: 'wheel bearing howls',
    area: 'steering-suspension',
    part: 'wheel bearing',
    price: [120, 210],
    minutes: [90, 140],
    supplier: suppliers.newParts,
  }),
  inHouse({
    what: 'window regulator broken',
    area: 'body',
    part: 'window regulator',
    price: [90, 160],
    minutes: [70, 120],
    supplier: suppliers.newParts,
  }),
];

type SentOut = {
  readonly what: string;
  readonly work: string;
  readonly area: WorkArea;
  readonly workshop: string;
  readonly price: readonly [least: number, most: number];
  readonly shows: readonly string[];
  readonly tellBuyer: boolean;
};

function sentOut({ what, work, area, workshop, price, shows, tellBuyer }: SentOut): Trouble {
  return {
    shows,
    plan: (random, later, scannedOn) => {
      const decided = workingDaysAfter(scannedOn, random.whole(1, 5));
      const sent = workingDaysAfter(decided, random.whole(0, 5));
      const comes = turnaround(random, workshop, sent);
      const quoted = random.whole(...price);
      const invoiced = Math.round(quoted * (0.95 + random.unit() * 0.25));
      let [fault, sublet] = ['', ''];
      later.at(scannedOn, (story) => {
        fault = story.find(what, area, { tellBuyer });
      });
      later.at(decided, (story) => story.decide(fault, 'repair', 0));
      later.at(sent, (story) => {
        sublet = story.send(work, workshop, area, comes.promisedFor, { fault, quoted });
      });
      later.at(comes.comesOn, (story) => {
        story.bring(sublet, invoiced);
        story.finish(fault);
      });
      return comes.comesOn;
    },
  };
}

export const paint = sentOut({
  what: 'door and wing scratched to the metal',
  work: 'door and wing painted',
  area: 'body',
  workshop: workshops.body,
  price: [380, 820],
  shows: [],
  tellBuyer: false,
});

export const windscreen = sentOut({
  what: 'windscreen cracked across the camera',
  work: 'windscreen and camera calibration',
  area: 'electrical',
  workshop: workshops.glass,
  price: [480, 760],
  shows: [],
  tellBuyer: false,
});

export const transmission = sentOut({
  what: 'transmission shifts hard',
  work: 'valve body and fluid',
  area: 'transmission',
  workshop: workshops.transmission,
  price: [700, 1_500],
  shows: ['Transmission: P0841 present'],
  tellBuyer: true,
});

export const highVoltage = sentOut({
  what: 'high-voltage insulation fault',
  work: 'insulation fault found and put right',
  area: 'high-voltage',
  workshop: workshops.highVoltage,
  price: [650, 1_350],
  shows: ['Hybrid: P0AA6 present'],
  tellBuyer: true,
});

/** Only what is not driven by combustion alone has high voltage. */
export function canHaveHighVoltage(drive: DriveKind): boolean {
  return drive !== 'combustion';
}
