// Real folders with invented records for the storage tests. Each test gets its own and leaves none behind.
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Shop } from '../../app/domain/fleet/shop.ts';
import type { Result } from '../../app/domain/shared/result.ts';
import { newVehicle } from '../../app/domain/vehicle/take-in.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import type { FleetStore } from '../../app/storage/fleet-store.ts';
import { type OpenFleetOptions, openFleet } from '../../app/storage/open-fleet.ts';

export function aVehicle(id: string, keyTag = 'K1'): Vehicle {
  return newVehicle(
    id,
    { by: 'person-1', at: '2026-02-01T08:00:00.000Z' },
    {
      identity: {
        stockNumber: `S-${id}`,
        vin: '100AB54C450110341',
        vinReason: '',
        modelYear: 2019,
        make: 'Brindle',
        model: 'Hearth',
        body: 'Estate',
        colour: 'Grey',
        drive: 'combustion',
        odometer: { reading: 81_200, unit: 'km' },
        location: 'Row 2',
        keyTag,
      },
      purchase: {
        boughtOn: '2026-01-31',
        source: 'Auction',
        priceCents: 640_000,
        feesCents: 12_000,
        transportCents: 8_000,
        paperKind: 'Title',
        paperExpectedOn: null,
        paperReceivedOn: null,
        keysReceived: 1,
      },
      arrival: { expectedOn: null, arrivedOn: '2026-02-01' },
      targets: { askingCents: null, budgetCents: null, tradeValueCents: null, marginFloorCents: null },
    },
  );
}

export function aShop(name = 'Invented Motors'): Shop {
  return {
    dealer: {
      name,
      address: '1 Nowhere Road',
      phone: '',
      market: 'US',
      currency: 'USD',
      distanceUnit: 'mi',
      paper: 'letter',
      paperName: 'Title',
      buyerNotice: '',
    },
    rates: {
      labourCentsPerHour: 9_000,
      fundingRatePpm: 80_000,
      dayCount: 'actual-365',
      overheadCentsPerDay: 900,
      countsFirstDay: true,
    },
    people: [{ id: 'person-1', name: 'Ada Invented', role: 'manager', labourCentsPerHour: null, isActive: true }],
    checklist: [],
    sample: null,
  };
}

export async function tempFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'lotwright-test-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** A clock that a test moves; each call is a millisecond later than the one before. */
export function testClock(start = '2026-03-04T10:00:00.000Z') {
  let now = Date.parse(start);
  const clock = () => new Date(now++).toISOString();
  const moveTo = (instant: string) => {
    now = Date.parse(instant);
  };
  return Object.assign(clock, { moveTo });
}

export const testOwner = { user: 'ada', host: 'desk-1', processId: process.pid };

export function unwrapped<Value>(result: Result<Value, unknown>): Value {
  if (!result.ok) throw new Error(`Refused: ${JSON.stringify(result.error)}`);
  return result.value;
}

/** Opens for the length of the test. */
export async function openForTest(folder: string, options: Partial<OpenFleetOptions> = {}): Promise<FleetStore> {
  const opened = await openFleet({ folder, clock: testClock(), owner: testOwner, createFolder: true, ...options });
  const store = unwrapped(opened);
  onTestFinished(() => store.close());
  return store;
}

/** A closed fleet with shop settings and vehicles of these ids at revision 1, and its daily backup of 2026-03-04. */
export async function fleetOf(ids: readonly string[], options: Partial<OpenFleetOptions> = {}): Promise<string> {
  const folder = options.folder ?? (await tempFolder());
  const base = { folder, clock: testClock('2026-03-04T08:00:00.000Z'), owner: testOwner, createFolder: true };
  const store = unwrapped(await openFleet({ ...base, ...options }));
  unwrapped(await store.saveShop(aShop(), 0));
  for (const id of ids) unwrapped(await store.saveVehicle(aVehicle(id), 0));
  unwrapped(await store.backUp('daily'));
  await store.close();
  return folder;
}

export function textOf(folder: string, path: string): Promise<string> {
  return readFile(join(folder, path), 'utf8');
}

/** Every file below, with '/' between, and its bytes: for showing that nothing at all has changed. */
export async function contentsOf(folder: string): Promise<Map<string, string>> {
  const names = await readdir(folder, { recursive: true, withFileTypes: true });
  const found = new Map<string, string>();
  for (const entry of names) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    found.set(path.slice(folder.length + 1), (await readFile(path)).toString('base64'));
  }
  return found;
}
