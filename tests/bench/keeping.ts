// One save as this program does it, beside the whole fleet in one file of a settings store, and beside a spreadsheet of the same ledger that is
// recalculated and saved. Ratios in one run; asserts nothing. Given the folders of fleets.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import Conf from 'conf';
import { addDays } from '../../app/domain/shared/day.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { openFleet } from '../../app/storage/open-fleet.ts';

const saves = 7;

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

async function timed(job: () => Promise<void> | void): Promise<number> {
  const start = performance.now();
  await job();
  return performance.now() - start;
}

/** The same note again and again, each time with another text. */
function noted(vehicle: Vehicle, index: number): Vehicle {
  const stamp = { by: 'manager', at: new Date().toISOString() };
  const note = { id: `bench-note-${index}`, on: vehicle.purchase.boughtOn, text: `Measured ${index}.`, entered: stamp };
  return { ...vehicle, notes: [...vehicle.notes.filter(({ id }) => !id.startsWith('bench-')), note] };
}

async function ownSave(folder: string): Promise<{ readonly ms: number; readonly vehicles: readonly Vehicle[] }> {
  const owner = { user: 'bench', host: 'bench', processId: process.pid };
  const never = new Promise<void>(() => {});
  const opened = await openFleet({ folder, clock: () => new Date().toISOString(), owner, backUpAfter: never });
  if (!opened.ok) throw new Error(opened.error.detail);
  const store = opened.value;
  await store.whole;
  const [first] = store.vehicles().values();
  if (!first) throw new Error('The fleet is empty.');
  let { data, revision } = first;
  const times: number[] = [];
  for (let index = 0; index < saves; index += 1) {
    data = noted(data, index);
    times.push(
      await timed(async () => {
        const saved = await store.saveVehicle(data, revision, { by: 'manager', kind: 'change', label: 'A note' });
        if (!saved.ok) throw new Error(saved.error.detail);
        revision = saved.value.revision;
      }),
    );
  }
  return { ms: median(times), vehicles: [...store.vehicles().values()].map((kept) => kept.data) };
}

/** `conf` is what electron-store is made of; one key for the whole fleet's vehicles, as a program would that keeps it there. */
async function settingsStoreSave(folder: string, vehicles: readonly Vehicle[]): Promise<number> {
  const store = new Conf<Record<string, unknown>>({ cwd: folder, configName: 'fleet', projectName: 'bench' });
  store.set('vehicles', Object.fromEntries(vehicles.map((vehicle) => [vehicle.id, vehicle])));
  const [first] = vehicles;
  if (!first) return Number.NaN;
  const times: number[] = [];
  for (let index = 0; index < saves; index += 1)
    times.push(await timed(() => store.set(`vehicles.${first.id}`, noted(first, index))));
  return median(times);
}

const office = ['soffice', 'libreoffice'].find((name) => {
  try {
    execFileSync(name, ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
});

function cell(value: string | number): string {
  return typeof value === 'number'
    ? `<table:table-cell office:value-type="float" office:value="${value}"/>`
    : `<table:table-cell office:value-type="string"><text:p>${value}</text:p></table:table-cell>`;
}

function formula(text: string): string {
  return `<table:table-cell table:formula="of:=${text.replaceAll('"', '&quot;')}"/>`;
}

/** The ledger as somebody would keep it in a spreadsheet: a line a cost, and a sum and the days held for each vehicle. */
function ledger(vehicles: readonly Vehicle[]): string {
  const lines: string[] = [];
  for (const { identity, purchase, parts, labour, otherCosts } of vehicles) {
    const line = (what: string, cents: number) =>
      lines.push(`<table:table-row>${[identity.stockNumber, what, cents / 100].map(cell).join('')}</table:table-row>`);
    line('purchase', purchase.priceCents + purchase.feesCents + purchase.transportCents);
    for (const part of parts) line('part', (part.priceCents ?? 0) * part.quantity);
    for (const work of labour) line('labour', work.minutes * 100);
    for (const cost of otherCosts) line('other', cost.amountCents);
  }
  const sums = vehicles.map(({ identity, purchase, sale }, index) => {
    const row = index + 1;
    const end = sale?.soldOn ?? addDays(purchase.boughtOn, 40);
    const cells = [
      cell(identity.stockNumber),
      formula(`SUMIF([$lines.$A$1:.$A$${lines.length}];[.A${row}];[$lines.$C$1:.$C$${lines.length}])`),
      formula(`DATEVALUE("${end}")-DATEVALUE("${purchase.boughtOn}")`),
      formula(`[.B${row}]+[.C${row}]*23`),
    ];
    return `<table:table-row>${cells.join('')}</table:table-row>`;
  });
  const names = ['office', 'table', 'text'].map(
    (name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name}:1.0"`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?><office:document ${names.join(' ')} xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet><table:table table:name="lines">${lines.join('')}</table:table><table:table table:name="vehicles">${sums.join('')}</table:table></office:spreadsheet></office:body></office:document>`;
}

/** Opening, recalculating and saving, without what the spreadsheet program takes to start with an empty ledger. */
async function spreadsheetSave(folder: string, vehicles: readonly Vehicle[]): Promise<number | null> {
  if (office === undefined) return null;
  const convert = (name: string) =>
    timed(() => {
      const profile = `-env:UserInstallation=file://${path.join(folder, 'profile')}`;
      const words = [profile, '--headless', '--convert-to', 'ods', '--outdir', path.join(folder, 'out'), name];
      execFileSync(office, words, { stdio: 'ignore', timeout: 240_000 });
    });
  const full = path.join(folder, 'ledger.fods');
  const empty = path.join(folder, 'empty.fods');
  writeFileSync(full, ledger(vehicles));
  writeFileSync(empty, ledger(vehicles.slice(0, 1)));
  await convert(empty);
  const emptyMs = Math.min(await convert(empty), await convert(empty));
  return Math.min(await convert(full), await convert(full)) - emptyMs;
}

for (const fleet of process.argv.slice(2)) {
  const folder = mkdtempSync(path.join(tmpdir(), 'lotwright-bench-keeping-'));
  try {
    const own = path.join(folder, 'fleet');
    for (const part of ['shop.json', 'vehicles'])
      cpSync(path.join(fleet, part), path.join(own, part), { recursive: true });
    const { ms, vehicles } = await ownSave(own);
    const settingsMs = await settingsStoreSave(folder, vehicles);
    const officeMs = await spreadsheetSave(folder, vehicles);
    const beside = (what: string, other: number) => `${what} ${other.toFixed(0)} ms, ${(other / ms).toFixed(0)} times`;
    console.log(
      `One save of ${vehicles.length} vehicles: here ${ms.toFixed(1)} ms; ${beside('one file of a settings store', settingsMs)}; ${
        officeMs === null
          ? 'no spreadsheet program here to compare with'
          : officeMs < ms
            ? 'a spreadsheet: not to be told from its start'
            : beside('a spreadsheet, recalculated and saved,', officeMs)
      }.`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
process.exit(0);
