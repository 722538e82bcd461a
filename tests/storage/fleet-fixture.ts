// Real folders for the storage and fault tests. Each test gets its own and leaves none behind.
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Result } from '../../app/domain/shared/result.ts';
import type { FleetStore } from '../../app/storage/fleet-store.ts';
import { type OpenFleetOptions, openFleet } from '../../app/storage/open-fleet.ts';
import { aShop, aVehicle } from './fleet-records-fixture.ts';
import { byAda } from './telling-fixture.ts';

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
  for (const id of ids) unwrapped(await store.saveVehicle(aVehicle(id), 0, byAda));
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
