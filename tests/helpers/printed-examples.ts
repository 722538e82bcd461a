// The one table of sheets to be proven on paper: an example or more of every kind that there is. A kind without one is no correct type.
// They are printed with `exampleImages`, which has their photographs.

import type { Shop } from '../../app/domain/fleet/shop.ts';
import { codeLetter } from '../../app/domain/sheets/code-letter.ts';
import { costSheet } from '../../app/domain/sheets/cost-sheet.ts';
import { jobSheet } from '../../app/domain/sheets/job-sheet.ts';
import { planSheet } from '../../app/domain/sheets/plan-sheet.ts';
import { readinessSheet } from '../../app/domain/sheets/readiness-sheet.ts';
import type { AnySheetKind, FleetSheetKind, Sheet } from '../../app/domain/sheets/sheet.ts';
import { windowSheet } from '../../app/domain/sheets/window-sheet.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { readFleetDesk } from '../../app/services/fleet-desk.ts';
import { makeFleetSheet } from '../../app/services/fleet-sheets.ts';
import { lotRow } from '../../app/services/lot-rows.ts';
import { exampleAttachments } from './example-pictures.ts';
import { bodyExchange } from './planned-job.ts';
import {
  examplePrinting,
  exampleShop,
  exampleToday,
  exampleVehicle,
  readyToday,
  readyVehicle,
  reckonExample,
} from './sheet-example.ts';

export type PrintedExample = { readonly name: string; readonly sheet: Sheet };

const exchanged: Vehicle = { ...bodyExchange('2026-03-06').vehicle, id: 'exchanged-vehicle' };
const soldVehicle: Vehicle = {
  ...readyVehicle,
  id: 'sold-vehicle',
  identity: { ...readyVehicle.identity, stockNumber: 'F-0977', vin: '0LW4BRHC6KA010977', colour: 'chalk white' },
  sale: { soldOn: '2026-03-25', priceCents: 1_391_100, buyer: 'A. Buyer', paidOffOn: null },
};
const readyBeside: Vehicle = {
  ...readyVehicle,
  id: 'ready-vehicle',
  identity: { ...readyVehicle.identity, stockNumber: 'F-1036', vin: '0LW4BRHC6KA010361' },
};
const atRest: Vehicle = {
  ...exampleVehicle,
  id: 'vehicle-at-rest',
  identity: {
    ...exampleVehicle.identity,
    stockNumber: 'F-1051',
    vin: '0LW4BRHC6KA010511',
    model: 'Ωμέγα Łódź Щёлково 1.4',
    location: 'Hall 2',
  },
  purchase: { ...exampleVehicle.purchase, boughtOn: '2026-01-19' },
};

/** Four vehicles on one day, each at another stage, as far as sheets of many vehicles tell of them. */
export function exampleFleet(vehicles: readonly Vehicle[], today = exampleToday, shop = exampleShop) {
  const desk = readFleetDesk(
    vehicles.map((data) => ({ data, revision: 7 })),
    { data: shop, revision: 3 },
    today,
  );
  return (kind: FleetSheetKind): Sheet => {
    const rows = vehicles.map((vehicle) => {
      const forecast = vehicle.sale === null ? desk.forecasts.forecast(vehicle, shop, today) : null;
      return lotRow(vehicle, desk.reckon(vehicle), forecast);
    });
    return makeFleetSheet(kind, { desk, shop, rows, vehicles, seesPartPrices: true }, examplePrinting);
  };
}

const photographed = (vehicle: Vehicle): Vehicle => ({ ...vehicle, attachments: [...exampleAttachments] });

/** As that shop prints them. By kind, so that the compiler names the kind that has none. */
function examplesByKindOf(shop: Shop): Readonly<Record<AnySheetKind, readonly PrintedExample[]>> {
  const fleet = exampleFleet([exampleVehicle, atRest, readyBeside, soldVehicle], readyToday, shop);
  const reckonedToday = reckonExample(exampleVehicle);
  const reckonedReady = reckonExample(readyVehicle, readyToday);
  return {
    'job-sheet': [
      { name: 'job-sheet', sheet: jobSheet(exampleVehicle, reckonedToday, shop, examplePrinting) },
      {
        name: 'job-sheet-with-photographs',
        sheet: jobSheet(photographed(exampleVehicle), reckonedToday, shop, examplePrinting),
      },
    ],
    'plan-sheet': [
      { name: 'plan-sheet', sheet: planSheet(exampleVehicle, shop, examplePrinting) },
      { name: 'plan-sheet-of-general-pack', sheet: planSheet(exchanged, shop, examplePrinting) },
    ],
    'readiness-sheet': [
      {
        name: 'readiness-sheet-not-ready',
        sheet: readinessSheet(exampleVehicle, reckonedToday, shop, examplePrinting),
      },
      { name: 'readiness-sheet-ready', sheet: readinessSheet(readyVehicle, reckonedReady, shop, examplePrinting) },
      {
        name: 'readiness-sheet-with-photographs',
        sheet: readinessSheet(photographed(readyVehicle), reckonedReady, shop, examplePrinting),
      },
    ],
    'window-sheet': [
      { name: 'window-sheet-not-ready', sheet: windowSheet(exampleVehicle, reckonedToday, shop, examplePrinting) },
      { name: 'window-sheet-ready', sheet: windowSheet(readyVehicle, reckonedReady, shop, examplePrinting) },
    ],
    'code-letter': [
      {
        name: 'code-letter',
        sheet: codeLetter(exampleVehicle, shop, examplePrinting, { today: exampleToday, requestId: 'code-radio' }),
      },
    ],
    'cost-sheet': [{ name: 'cost-sheet', sheet: costSheet(exampleVehicle, reckonedToday, shop, examplePrinting) }],
    'parts-list': [{ name: 'parts-list', sheet: fleet('parts-list') }],
    'fleet-list': [{ name: 'fleet-list', sheet: fleet('fleet-list') }],
    'money-summary': [{ name: 'money-summary', sheet: fleet('money-summary') }],
  };
}

export const examplesByKind = examplesByKindOf(exampleShop);

export function printedExamplesOf(shop: Shop): readonly PrintedExample[] {
  return Object.values(examplesByKindOf(shop)).flat();
}

export const printedExamples: readonly PrintedExample[] = Object.values(examplesByKind).flat();
