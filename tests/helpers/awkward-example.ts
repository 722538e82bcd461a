// A vehicle and a fleet as awkward to print as they come: two hundred of everything, very long names, letters of three scripts.
import type { Shop } from '../../app/domain/fleet/shop.ts';
import {
  type AnySheetKind,
  fleetSheetKindSchema,
  type Sheet,
  type SheetKind,
  sheetKindSchema,
} from '../../app/domain/sheets/sheet.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { makeSheet } from '../../app/services/printer.ts';
import { exampleFleet } from './printed-examples.ts';
import { examplePrinting, exampleShop, exampleToday, exampleVehicle } from './sheet-example.ts';
import { makeFault, makeJob, makeLabour, makeOtherCost, makePart, makeStep } from './vehicle-maker.ts';

export const lines = 200;
const long = 'Žluťoučký-kůň Θεσσαλονίκη-Παπαδοπούλου Щёлково-Зеленодольск Grundsätzlichkeitsüberprüfung';
const unbroken = 'ΩЖŁ'.repeat(30);
const count = <One>(make: (index: number) => One): One[] => Array.from({ length: lines }, (_, index) => make(index));

const shop: Shop = {
  ...exampleShop,
  dealer: {
    ...exampleShop.dealer,
    name: `${long} Motor Yard`,
    address: `${long}\n${unbroken}\nŁódź`,
    phone: '555 0142 / 555 0143 / 555 0144',
  },
  people: exampleShop.people.map((person) => ({ ...person, name: `${person.name} ${long}` })),
};
const printing = { ...examplePrinting, by: `Mara Lindqvist-${long}` };

const job = makeJob('2026-03-06', {
  id: 'job-long',
  module: `Body control module ${long}`,
  steps: count((index) =>
    makeStep({
      id: `step-${index}`,
      title: `Line ${index} of the plan ${index % 7 === 0 ? long : ''}`,
      detail: index % 5 === 0 ? long : '',
      cautions: index % 9 === 0 ? ['supply-voltage', 'never-interrupt'] : [],
    }),
  ),
});

export const awkwardVehicle: Vehicle = {
  ...exampleVehicle,
  id: 'awkward-vehicle',
  identity: {
    ...exampleVehicle.identity,
    stockNumber: 'STOCK-2026-00047-FERN-01',
    make: 'Merrowick-Żółkiewski',
    model: long,
    colour: long,
    location: 'Αποθήκη 3, Зал 2, Halle Süd',
    keyTag: 'ΚΛΕΙΔΊ-0017',
  },
  parts: count((index) =>
    makePart('2026-03-05', {
      what: `Line ${index} ${index % 3 === 0 ? long : 'clip'}`,
      partNumber: index % 4 === 0 ? `LW-${unbroken.slice(0, 40)}` : `LW-${index}`,
      supplier: index % 2 === 0 ? 'Northbank Vehicle Parts' : long,
      orderedOn: '2026-03-06',
      expectedOn: '2026-03-12',
      priceCents: 123_456_789,
      coreChargeCents: 98_765,
    }),
  ),
  faults: count((index) =>
    makeFault('2026-03-04', {
      what: `Line ${index} ${index % 3 === 0 ? long : 'scratch'}`,
      module: index % 5 === 0 ? unbroken : '',
      note: index % 8 === 0 ? long : '',
      tellBuyer: true,
    }),
  ),
  jobs: [job],
  attempts: [],
  labour: count((index) => makeLabour('2026-03-05', { person: 'tomas', minutes: 50, what: `Line ${index} ${long}` })),
  otherCosts: count(() => makeOtherCost('2026-03-04', 123_456_789)),
  codeRequests: exampleVehicle.codeRequests.map((request) => ({
    ...request,
    module: long,
    askedOf: `${long}\n${unbroken}`,
    credentialReference: unbroken,
    reason: long,
  })),
};

const fleetOf = () =>
  exampleFleet(
    count((index) => ({
      ...(index === 0 ? awkwardVehicle : exampleVehicle),
      id: `vehicle-${index}`,
      identity: { ...(index % 3 === 0 ? awkwardVehicle : exampleVehicle).identity, stockNumber: `N-${index + 1000}` },
    })),
    exampleToday,
    shop,
  );

/** A sheet of every kind that there is, of the awkward vehicle or the awkward fleet. */
export function awkwardSheets(): readonly { readonly kind: AnySheetKind; readonly sheet: Sheet }[] {
  const fleet = fleetOf();
  const ofVehicle = (kind: SheetKind) => makeSheet(kind, awkwardVehicle, shop, exampleToday, printing);
  return [
    ...sheetKindSchema.options.map((kind) => ({ kind, sheet: ofVehicle(kind) })),
    ...fleetSheetKindSchema.options.map((kind) => ({ kind, sheet: fleet(kind) })),
  ];
}
