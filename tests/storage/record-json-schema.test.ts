// The committed JSON Schemas are the generated ones, every record of the sample holds by them, and broken ones do not.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { recordJsonSchemas } from '../../app/storage/record-json-schema.ts';

const root = join(import.meta.dirname, '..', '..');
const read = (...path: string[]) => JSON.parse(readFileSync(join(root, ...path), 'utf8'));
const committed = {
  vehicle: read('app', 'storage', 'schema', 'vehicle.schema.json'),
  shop: read('app', 'storage', 'schema', 'shop.schema.json'),
};
const ajv = new Ajv2020({ allErrors: false, strict: false });
addFormats.default(ajv);
const vehicleHolds = ajv.compile(committed.vehicle);
const shopHolds = ajv.compile(committed.shop);
const sample = ['sample-fleet', 'current'] as const;
const vehicles = readdirSync(join(root, ...sample, 'vehicles')).map((name) => read(...sample, 'vehicles', name));

describe('the JSON Schemas', () => {
  it('are those that the program’s own schemas give: run npm run schema when this fails', () => {
    expect(committed).toEqual(JSON.parse(JSON.stringify(recordJsonSchemas())));
  });

  it('hold for every record of the sample', () => {
    expect(vehicles.length).toBeGreaterThan(10);
    for (const vehicle of vehicles) expect(vehicleHolds(vehicle) ? [] : vehicleHolds.errors).toEqual([]);
    expect(shopHolds(read(...sample, 'shop.json')) ? [] : shopHolds.errors).toEqual([]);
  });

  it.each([
    ['an unknown key', (one: Record<string, unknown>) => ({ ...one, extra: 1 })],
    [
      'a price that is no whole number',
      (one: { data: { purchase: object } }) => ({
        ...one,
        data: { ...one.data, purchase: { ...one.data.purchase, priceCents: 1.5 } },
      }),
    ],
    ['another format', (one: object) => ({ ...one, format: 'other' })],
    ['no data', ({ data: _data, ...one }: { data: unknown }) => one],
  ])('do not hold for a record with %s', (_what, breakIt) => {
    expect(vehicleHolds((breakIt as (one: unknown) => unknown)(vehicles[0]))).toBe(false);
  });
});
