// The two kinds of record the fleet folder holds, each with its format, schema and way up from older versions.
import type { z } from 'zod';
import { type Shop, shopSchema } from '../domain/fleet/shop.ts';
import { type Vehicle, vehicleSchema } from '../domain/vehicle/vehicle.ts';
import type { Migration } from './migrations/migration.ts';
import { shopMigrations, shopVersion } from './migrations/shop-migrations.ts';
import { vehicleMigrations, vehicleVersion } from './migrations/vehicle-migrations.ts';

export type RecordKind<Data> = {
  readonly format: string;
  readonly version: number;
  readonly schema: z.ZodType<Data>;
  readonly migrations: readonly Migration[];
  /** What a person calls it: 'vehicle record'. */
  readonly what: string;
  /** The identity that its file name must repeat; null where the name is fixed. */
  readonly idOf: (data: Data) => string | null;
};

export type RecordKinds = { readonly vehicle: RecordKind<Vehicle>; readonly shop: RecordKind<Shop> };

export const recordKinds: RecordKinds = {
  vehicle: {
    format: 'lotwright-vehicle',
    version: vehicleVersion,
    schema: vehicleSchema,
    migrations: vehicleMigrations,
    what: 'vehicle record',
    idOf: (vehicle) => vehicle.id,
  },
  shop: {
    format: 'lotwright-shop',
    version: shopVersion,
    schema: shopSchema,
    migrations: shopMigrations,
    what: "shop's settings",
    idOf: () => null,
  },
};
