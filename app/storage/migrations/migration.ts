// How a record of an older format becomes one of today's: a chain of pure steps, one file each, named NNN-what.ts. No reading or writing.

export type Migration = {
  /** The version it takes; it gives the next one. */
  readonly from: number;
  /** What it does, in a sentence for the list of changes. */
  readonly what: string;
  /** Pure. May throw on data that cannot have been written by that version; the file then goes to quarantine. */
  readonly migrate: (data: unknown) => unknown;
};

/**
 * Takes data of version `from` up to version `to`.
 * @throws when a step is missing: the list of migrations is wrong, not the file.
 */
export function migrateData(data: unknown, from: number, to: number, migrations: readonly Migration[]): unknown {
  let migrated = data;
  for (let version = from; version < to; version++) {
    const step = migrations.find((migration) => migration.from === version);
    if (!step) throw new Error(`There is no migration from version ${version}.`);
    migrated = step.migrate(migrated);
  }
  return migrated;
}
