// Prints the sheets of a fleet outside the window: one of each kind, then two hundred, and says what each took, per page, and in memory.
// Given the fleet's folder.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { type Shop, shopSchema } from '../../app/domain/fleet/shop.ts';
import { fleetSheetKindSchema, type Sheet, sheetKindSchema } from '../../app/domain/sheets/sheet.ts';
import { sheetFacts, whyNoSheet } from '../../app/domain/sheets/why-no-sheet.ts';
import { type Vehicle, vehicleSchema } from '../../app/domain/vehicle/vehicle.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { readFleetDesk } from '../../app/services/fleet-desk.ts';
import { makeFleetSheet } from '../../app/services/fleet-sheets.ts';
import { lotRow } from '../../app/services/lot-rows.ts';
import { makeSheet } from '../../app/services/printer.ts';

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('Name the folder of the fleet.');
const many = 200;
const rounds = 5;

function dataOf(file: string): unknown {
  return Reflect.get(JSON.parse(readFileSync(file, 'utf8')) as object, 'data');
}

const shop: Shop = shopSchema.parse(dataOf(path.join(folder, 'shop.json')));
const today = shop.sample?.today ?? '2026-03-18';
const vehicles: Vehicle[] = readdirSync(path.join(folder, 'vehicles')).map((name) =>
  vehicleSchema.parse(dataOf(path.join(folder, 'vehicles', name))),
);
const printing = { at: `${today}T08:00:00.000Z`, by: 'bench', revision: 1 };

type Maker = () => Sheet;

function makersOfVehicles(): ReadonlyMap<string, readonly Maker[]> {
  return new Map(
    sheetKindSchema.options.map((kind) => [
      kind,
      vehicles.flatMap((vehicle): Maker[] =>
        whyNoSheet(kind, vehicle, shop) !== null
          ? []
          : sheetFacts(kind, vehicle, shop).map(
              (factId) => () => makeSheet(kind, vehicle, shop, today, printing, factId),
            ),
      ),
    ]),
  );
}

/** Of two hundred vehicles each; the forecasts that they show are worked out before, as the program keeps them. */
function makersOfFleet(): ReadonlyMap<string, readonly Maker[]> {
  const chosen = vehicles.slice(0, many);
  const desk = readFleetDesk(
    vehicles.map((data) => ({ data, revision: 1 })),
    { data: shop, revision: 1 },
    today,
  );
  const rows = chosen.map((vehicle) =>
    lotRow(vehicle, desk.reckon(vehicle), vehicle.sale === null ? desk.forecasts.forecast(vehicle, shop, today) : null),
  );
  const source = { desk, shop, rows, vehicles: chosen, seesPartPrices: true };
  return new Map(fleetSheetKindSchema.options.map((kind) => [kind, [() => makeFleetSheet(kind, source, printing)]]));
}

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);

async function timed(makers: readonly Maker[]): Promise<{ readonly ms: number; readonly pages: number }> {
  const began = performance.now();
  let pages = 0;
  for (const make of makers) pages += (await renderSheet(make(), fonts)).pages;
  return { ms: performance.now() - began, pages };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

async function medianOf(makers: readonly Maker[]): Promise<{ readonly ms: number; readonly pages: number }> {
  const results = [];
  for (let round = 0; round < rounds; round += 1) results.push(await timed(makers));
  return { ms: median(results.map(({ ms }) => ms)), pages: results[0]?.pages ?? 0 };
}

const row = (...cells: readonly (string | number)[]) => console.log(cells.join(' | '));
const megabytes = () => process.memoryUsage().rss / 1024 ** 2;

const ofVehicles = makersOfVehicles();
const [firstMaker] = [...ofVehicles.values()].flat();
const cold = await timed(firstMaker === undefined ? [] : [firstMaker]);
console.log(
  `\nSheets: the very first, typefaces opened on the way, ${cold.ms.toFixed(0)} ms. Medians of ${rounds} rounds:`,
);
row('kind', 'one ms', 'pages', `${many} ms`, 'pages', 'ms a page', `${many} to one`);
const memory = megabytes();
let peak = memory;
for (const [kind, makers] of ofVehicles) {
  if (makers.length === 0) {
    row(kind, 'no vehicle of this fleet has one');
    continue;
  }
  const one = await medianOf(makers.slice(0, 1));
  // The same vehicles again where the fleet has not so many.
  const all = Array.from({ length: many }, (_, index) => makers[index % makers.length]).filter(
    (make) => make !== undefined,
  );
  const together = await timed(all);
  peak = Math.max(peak, megabytes());
  const ratio = (together.ms / one.ms).toFixed(0);
  row(
    kind,
    one.ms.toFixed(0),
    one.pages,
    together.ms.toFixed(0),
    together.pages,
    (together.ms / together.pages).toFixed(1),
    ratio,
  );
}
for (const [kind, makers] of makersOfFleet()) {
  const { ms, pages } = await medianOf(makers);
  row(
    `${kind} of ${Math.min(many, vehicles.length)} vehicles`,
    ms.toFixed(0),
    pages,
    '',
    '',
    (ms / pages).toFixed(1),
    '',
  );
}
peak = Math.max(peak, megabytes());
console.log(
  `memory ${memory.toFixed(0)} MB after the first sheet, ${peak.toFixed(0)} MB at the most, ratio ${(peak / memory).toFixed(2)}`,
);
