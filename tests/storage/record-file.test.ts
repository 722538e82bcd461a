// A record as bytes and back: what is written is read, and what cannot be read is said precisely.
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { migrateData } from '../../app/storage/migrations/migration.ts';
import { readRecord, recordBytes } from '../../app/storage/record-file.ts';
import { type RecordKind, recordKinds } from '../../app/storage/record-kind.ts';
import { unwrapped } from './fleet-fixture.ts';
import { aShop, aVehicle } from './fleet-records-fixture.ts';

const savedAt = '2026-03-04T10:00:00.000Z';
const kind = recordKinds.vehicle;

function bytesOf(vehicle: Vehicle, revision = 3): Buffer {
  return unwrapped(recordBytes(kind, { data: vehicle, revision, savedAt })).bytes;
}
function changed(change: (envelope: Record<string, unknown>) => void): Buffer {
  const envelope = JSON.parse(bytesOf(aVehicle('abcd')).toString()) as Record<string, unknown>;
  change(envelope);
  return Buffer.from(JSON.stringify(envelope));
}
function faultOf(bytes: Buffer, id: string | null = 'abcd') {
  const read = readRecord(bytes, kind, id);
  return read.ok ? null : { kind: read.error.kind, reason: read.error.reason };
}

describe('writing', () => {
  it('gives two-space JSON in an envelope, with a newline at the end', () => {
    const text = bytesOf(aVehicle('abcd')).toString();
    expect(text.startsWith('{\n  "format": "lotwright-vehicle",\n  "version": 1,\n  "revision": 3,\n')).toBe(true);
    expect(text.endsWith('}\n')).toBe(true);
  });

  it('gives the same bytes whatever order the keys came in', () => {
    const vehicle = aVehicle('abcd');
    const backwards = (value: object) => Object.fromEntries(Object.entries(value).reverse());
    const shuffled = { ...backwards(vehicle), identity: backwards(vehicle.identity) } as Vehicle;
    expect(Object.keys(shuffled)[0]).not.toBe('id');
    expect(bytesOf(shuffled).equals(bytesOf(vehicle))).toBe(true);
  });

  it('refuses a record that would not read back, naming the first field', () => {
    const vehicle = aVehicle('abcd');
    const bad = { ...vehicle, purchase: { ...vehicle.purchase, priceCents: Number.NaN } };
    const result = recordBytes(kind, { data: bad, revision: 1, savedAt });
    expect(result.ok ? '' : result.error).toMatch(/^purchase\.priceCents: /);
  });
});

describe('reading', () => {
  it('gives back what was written', () => {
    const vehicle = aVehicle('abcd', 'Ünïcödé 車 🔑');
    expect(readRecord(bytesOf(vehicle), kind, 'abcd')).toEqual({
      ok: true,
      value: { data: vehicle, revision: 3, savedAt, version: 1 },
    });
    const shop = unwrapped(recordBytes(recordKinds.shop, { data: aShop(), revision: 1, savedAt }));
    expect(unwrapped(readRecord(shop.bytes, recordKinds.shop, null)).data).toEqual(aShop());
  });

  it('reads a file to which an editor added a byte order mark', () => {
    expect(faultOf(Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), bytesOf(aVehicle('abcd'))]))).toBeNull();
  });

  const whole = bytesOf(aVehicle('abcd'));
  it.each([
    ['empty', Buffer.alloc(0)],
    ['empty', Buffer.from(' \n')],
    ['zero-filled', Buffer.alloc(4096)],
    ['zero-filled', Buffer.concat([whole.subarray(0, 200), Buffer.alloc(800)])],
    ['not-json', Buffer.from('Dear all, the key is in the drawer')],
    ['not-json', Buffer.from('{"format": oops}')],
    ['not-json', Buffer.from([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x7d])],
    ['foreign-format', Buffer.from('{"name":"something else"}')],
    ['foreign-format', Buffer.from('[1,2,3]')],
    ['foreign-format', unwrapped(recordBytes(recordKinds.shop, { data: aShop(), revision: 1, savedAt })).bytes],
    ['newer-version', changed((envelope) => Object.assign(envelope, { version: 2, more: true }))],
    ['fails-schema', changed((envelope) => Object.assign(envelope, { revision: 0 }))],
    ['fails-schema', changed((envelope) => Object.assign(envelope, { more: true }))],
  ])('calls it %s', (expected, bytes) => {
    expect(faultOf(bytes)?.kind).toBe(expected);
  });

  it('calls every shorter beginning of a file cut off, empty or no record, never a record', () => {
    const end = whole.length - 1; // the last newline may go
    for (let length = 0; length < end; length++) {
      const kindOfCut = faultOf(whole.subarray(0, length))?.kind;
      expect([length, kindOfCut]).toEqual([length, length === 0 ? 'empty' : 'truncated']);
    }
  });

  it('names the first field that does not hold', () => {
    const bytes = changed(({ data }) => Object.assign((data as Vehicle).purchase, { priceCents: 'much' }));
    expect(faultOf(bytes)).toMatchObject({
      kind: 'fails-schema',
      reason: expect.stringContaining('purchase.priceCents'),
    });
  });

  it('says so when the record is not the one that the name says, and still gives it', () => {
    const read = readRecord(whole, kind, 'other');
    expect(read.ok ? null : read.error).toMatchObject({
      kind: 'wrong-name',
      record: { data: { id: 'abcd' }, revision: 3 },
    });
  });
});

describe('older versions', () => {
  // Invented: version 1 kept a weight in pounds as text, 2 made it a number, 3 whole grams.
  const crate: RecordKind<{ id: string; grams: number }> = {
    format: 'invented-crate',
    version: 3,
    schema: z.strictObject({ id: z.string(), grams: z.int() }),
    migrations: [
      { from: 2, what: 'Grams', migrate: (data) => grams(data as { id: string; pounds: number }) },
      { from: 1, what: 'A number', migrate: (data) => numbered(data as { id: string; pounds: string }) },
    ],
    what: 'crate',
    idOf: (data) => data.id,
  };
  const numbered = ({ id, pounds }: { id: string; pounds: string }) => {
    if (Number.isNaN(Number(pounds))) throw new Error(`not a weight: ${pounds}`);
    return { id, pounds: Number(pounds) };
  };
  const grams = ({ id, pounds }: { id: string; pounds: number }) => ({ id, grams: Math.round(pounds * 453.59237) });
  const old = (version: number, data: unknown) =>
    Buffer.from(JSON.stringify({ format: 'invented-crate', version, revision: 7, savedAt, data }));

  it('takes the steps in order, whatever the order of the list, and tells the version it came from', () => {
    expect(readRecord(old(1, { id: 'c1', pounds: '2' }), crate, 'c1')).toEqual({
      ok: true,
      value: { data: { id: 'c1', grams: 907 }, revision: 7, savedAt, version: 1 },
    });
    expect(unwrapped(readRecord(old(2, { id: 'c1', pounds: 1 }), crate, 'c1')).data).toEqual({ id: 'c1', grams: 454 });
    expect(unwrapped(readRecord(old(3, { id: 'c1', grams: 5 }), crate, 'c1')).data).toEqual({ id: 'c1', grams: 5 });
  });

  it('says why when a step cannot be taken', () => {
    const read = readRecord(old(1, { id: 'c1', pounds: 'heavy' }), crate, 'c1');
    expect(read.ok ? null : read.error).toMatchObject({
      kind: 'migration-failed',
      reason: expect.stringContaining('not a weight: heavy'),
    });
  });

  it('checks the migrated record by the schema of today', () => {
    const read = readRecord(old(1, { id: 5, pounds: '2' }), crate, 'c1');
    expect(read.ok ? null : read.error.kind).toBe('fails-schema');
  });

  it('has a step for each version of the real records', () => {
    for (const real of [recordKinds.vehicle, recordKinds.shop]) {
      expect(real.migrations.map((step) => step.from).sort((a, b) => a - b)).toEqual(
        Array.from({ length: real.version - 1 }, (_, index) => index + 1),
      );
    }
    expect(() => migrateData({}, 1, 2, [])).toThrow('no migration from version 1');
  });
});
