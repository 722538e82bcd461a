// Entry of `npm run sheets`: prints sheets of a fleet as PDF files in plain Node, without a window. Only reads the fleet folder.
import { existsSync } from 'node:fs';
import { userInfo } from 'node:os';
import { dirname, join } from 'node:path';
import process from 'node:process';
import { parseArgs } from 'node:util';
import type { Shop } from './domain/fleet/shop.ts';
import { shortOf } from './domain/sheets/request-reference.ts';
import {
  type FleetSheetKind,
  fleetSheetKindSchema,
  type Sheet,
  type SheetKind,
  sheetKindSchema,
} from './domain/sheets/sheet.ts';
import { sheetFacts, whyNoSheet } from './domain/sheets/why-no-sheet.ts';
import type { Vehicle } from './domain/vehicle/vehicle.ts';
import { readFleetDesk } from './services/fleet-desk.ts';
import { fleetSheetFileName, makeFleetSheet } from './services/fleet-sheets.ts';
import { lotRow } from './services/lot-rows.ts';
import { makeSheet, printSheet, sheetFileName } from './services/printer.ts';
import { readSheetImages } from './services/sheet-images.ts';
import { registerEntry } from './services/sheet-marks.ts';
import { isFleetFolder } from './storage/fleet-folder.ts';
import { notePrinted } from './storage/printed-register.ts';
import { readFleet } from './storage/read-fleet.ts';
import type { ReadRecord } from './storage/record-file.ts';
import { recordKinds } from './storage/record-kind.ts';

const usage = `Prints sheets of a fleet as PDF files. Reads the fleet folder and changes nothing in it but for --note.

  npm run sheets -- --fleet DIR --out DIR [--kind KIND] [--stock NUMBER[,NUMBER]] [--paper PAPER] [--note]

  --fleet DIR    the fleet folder
  --out DIR      where the files go; made if it is missing, files of the same name are replaced
  --kind KIND    ${sheetKindSchema.options.join(', ')}
                 or all (all, if left out); vehicles that have nothing for a kind are passed over;
                 of many vehicles: ${fleetSheetKindSchema.options.join(', ')} or fleet for all of these
  --stock LIST   stock numbers, with commas between; every vehicle that is not sold, if left out
  --paper PAPER  a4 or letter; the paper of the shop's settings, if left out
  --note         notes each sheet in the fleet's register, so that the program finds it by its mark;
                 without it the sheets carry no mark, because nobody could look it up

Exit status: 0 all printed; 1 something could not be read or printed; 2 words not understood.`;

type Order = {
  readonly fleet: string;
  readonly out: string;
  readonly kinds: readonly SheetKind[];
  readonly fleetKinds: readonly FleetSheetKind[];
  readonly isNoted: boolean;
  readonly stock: readonly string[] | null;
  readonly paper: Shop['dealer']['paper'] | null;
};

/** What was asked for, or a sentence about the words that make no order. */
function readOrder(words: readonly string[]): Order | string {
  const text = { type: 'string' } as const;
  let given: { fleet?: string; out?: string; kind?: string; stock?: string; paper?: string; note?: boolean };
  try {
    const options = {
      fleet: text,
      out: text,
      kind: text,
      stock: text,
      paper: text,
      note: { type: 'boolean' } as const,
    };
    given = parseArgs({ args: [...words], options, strict: true, allowPositionals: false }).values;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  if (!given.fleet) return 'Say which fleet folder: --fleet DIR.';
  if (!given.out) return 'Say where the sheets go: --out DIR.';
  const kind = given.kind ?? 'all';
  const one = sheetKindSchema.safeParse(kind);
  const ofFleet = fleetSheetKindSchema.safeParse(kind);
  if (kind !== 'all' && kind !== 'fleet' && !one.success && !ofFleet.success)
    return `There is no kind of sheet called “${kind}”.`;
  const { paper = null } = given;
  if (paper !== null && paper !== 'a4' && paper !== 'letter') return `There is no paper called “${paper}” here.`;
  const stock = given.stock?.split(',').map((number) => number.trim()) ?? null;
  if (stock?.some((number) => number === '')) return 'A stock number after --stock is empty.';
  return {
    fleet: given.fleet,
    out: given.out,
    kinds: one.success ? [one.data] : kind === 'all' ? sheetKindSchema.options : [],
    fleetKinds: ofFleet.success ? [ofFleet.data] : kind === 'fleet' ? fleetSheetKindSchema.options : [],
    isNoted: given.note === true,
    stock,
    paper,
  };
}

/** The folder beside this file once it is built, or the one it comes from. */
function fontsFolder(): string {
  const here = dirname(process.argv[1] ?? '.');
  const built = join(here, 'fonts');
  return existsSync(built) ? built : join(here, 'printing', 'fonts');
}

function todayHere(): string {
  const now = new Date();
  const two = (number: number) => number.toString().padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function whoPrints(): string {
  try {
    return userInfo().username;
  } catch {
    // Some systems know no name for the account.
    return 'an unnamed account';
  }
}

/** File names by vehicle; where two would share one, also on disks that know no capitals, each is told apart by its identity. */
function fileNames(kind: SheetKind, vehicles: readonly Vehicle[]): ReadonlyMap<string, string> {
  const counts = new Map<string, number>();
  const names = vehicles.map((vehicle) => [vehicle, sheetFileName(kind, vehicle)] as const);
  for (const [, name] of names) counts.set(name.toLowerCase(), (counts.get(name.toLowerCase()) ?? 0) + 1);
  return new Map(
    names.map(([vehicle, name]) => [
      vehicle.id,
      (counts.get(name.toLowerCase()) ?? 0) > 1 ? name.replace(`-${kind}.pdf`, `-${vehicle.id}-${kind}.pdf`) : name,
    ]),
  );
}

function choose(all: readonly ReadRecord<Vehicle>[], stock: Order['stock']): readonly ReadRecord<Vehicle>[] {
  const sorted = [...all].sort((a, b) => (a.data.identity.stockNumber < b.data.identity.stockNumber ? -1 : 1));
  if (stock === null) return sorted.filter(({ data }) => data.sale === null);
  return sorted.filter(({ data }) => stock.includes(data.identity.stockNumber));
}

/** Prints what was asked for, a line each. True when everything could be read and printed. */
async function printOrder(order: Order): Promise<boolean> {
  if (!(await isFleetFolder(order.fleet))) {
    console.error(`This is not a fleet folder, or it cannot be reached: ${order.fleet}`);
    return false;
  }
  const found = await readFleet(order.fleet, recordKinds);
  for (const bad of found.bad) console.error(`Not read: ${bad.fileName}. ${bad.reason}`);
  if (found.shop === null) {
    console.error(
      'The shop’s settings are missing or cannot be read, and every sheet needs them. Open the fleet in the program first.',
    );
    return false;
  }
  const settings = found.shop.record.data;
  const shop = order.paper === null ? settings : { ...settings, dealer: { ...settings.dealer, paper: order.paper } };
  const all = found.vehicles.map(({ record }) => record);
  const chosen = choose(all, order.stock);
  const missing = (order.stock ?? []).filter(
    (number) => !chosen.some(({ data }) => data.identity.stockNumber === number),
  );
  for (const number of missing) console.error(`There is no vehicle with the stock number ${number} in this fleet.`);
  let isAllWell = found.bad.length === 0 && missing.length === 0;
  const today = shop.sample?.today ?? todayHere();
  const by = whoPrints();
  const images = await readSheetImages(order.fleet);
  /** Writes one sheet, notes it where that was asked for, and says so in a line. */
  const write = async (make: () => Sheet, vehicleId: string | null, path: string) => {
    try {
      const sheet = make();
      const { pages } = await printSheet(order.isNoted ? sheet : { ...sheet, mark: '' }, fontsFolder(), path, images);
      console.log(`${path}: ${pages === 1 ? '1 page' : `${pages} pages`}`);
      if (!order.isNoted) return;
      const noted = await notePrinted(join(order.fleet, 'sheets'), [registerEntry({ vehicleId, sheet }, today)]);
      if (noted.ok) return;
      console.error(`${path}: written, but its mark could not be noted. ${noted.error.detail}`);
    } catch (error) {
      console.error(`${path}: ${error instanceof Error ? error.message : String(error)}`);
    }
    isAllWell = false;
  };
  if (order.fleetKinds.length > 0) {
    const desk = readFleetDesk(all, { data: shop, revision: found.shop.record.revision }, today);
    const open = chosen.map(({ data }) => data);
    for (const kind of order.fleetKinds) {
      const source = {
        desk,
        shop,
        rows: open.map((vehicle) =>
          lotRow(vehicle, desk.reckon(vehicle), desk.forecasts.forecast(vehicle, shop, today)),
        ),
        // Old units of sold vehicles are owed as well.
        vehicles: order.stock === null ? all.map(({ data }) => data) : open,
        seesPartPrices: true,
      };
      const make = () => makeFleetSheet(kind, source, { at: new Date().toISOString(), by });
      await write(make, null, join(order.out, fleetSheetFileName(kind, today)));
    }
  }
  for (const kind of order.kinds) {
    const names = fileNames(
      kind,
      all.map(({ data }) => data),
    );
    for (const { data, revision } of chosen) {
      const why = whyNoSheet(kind, data, shop);
      if (why !== null) {
        // Asked for by its name and by its number, it is missed; of a whole fleet only some have it.
        if (order.kinds.length === 1) console.error(`${data.identity.stockNumber}: ${why}`);
        if (order.kinds.length === 1 && order.stock !== null) isAllWell = false;
        continue;
      }
      for (const factId of sheetFacts(kind, data, shop)) {
        const end = factId === null ? '' : `-${shortOf(factId)}`;
        const name = (names.get(data.id) ?? sheetFileName(kind, data)).replace(`-${kind}.pdf`, `${end}-${kind}.pdf`);
        const path = join(order.out, name);
        const printed = { at: new Date().toISOString(), by, revision };
        await write(() => makeSheet(kind, data, shop, today, printed, factId), data.id, path);
      }
    }
  }
  return isAllWell;
}

async function run(): Promise<void> {
  const words = process.argv.slice(2);
  if (words.includes('--help') || words.includes('-h')) {
    console.log(usage);
    return;
  }
  const order = readOrder(words);
  if (typeof order === 'string') {
    console.error(`${order}\n\n${usage}`);
    process.exitCode = 2;
    return;
  }
  process.exitCode = (await printOrder(order)) ? 0 : 1;
}

run().catch((error) => {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
});
