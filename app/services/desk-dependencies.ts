// What the desk is given from outside: clock, day, settings of this desk, where the sample lies, and the ways out. Types only.
import type { EventName, EventPayload } from '../contract/events.ts';
import type { Day } from '../domain/shared/day.ts';
import type { DeskSettingsStore } from '../storage/desk-settings.ts';
import type { KeyMaking } from '../storage/vault/key-holder.ts';
import type { ScryptCost } from '../storage/vault/scrypt-key.ts';
import type { Outside } from './outside.ts';

export type SamplePlaces = {
  /** The sample as it was shipped; null where there is none. */
  readonly shipped: string | null;
  /** The copy of it that people work on. */
  readonly copy: string;
};

export type DeskDependencies = {
  /** The present instant as ISO 8601 in UTC. */
  readonly clock: () => string;
  /** The present calendar day at the desk. A sample fleet's own day goes before it. */
  readonly today: () => Day;
  readonly newIdentifier: () => string;
  readonly owner: { readonly user: string; readonly host: string; readonly processId: number };
  readonly deskSettings: DeskSettingsStore;
  readonly sample: SamplePlaces;
  /** What a pass phrase or PIN costs to try; smaller in tests only. */
  readonly keyCost?: ScryptCost;
  /** How hard the keys of the vault are made; smaller in tests only. */
  readonly vaultMaking?: KeyMaking;
  readonly fontsFolder: string;
  readonly appVersion: string;
  readonly outside: Outside;
  readonly emit: <Name extends EventName>(name: Name, payload: EventPayload<Name>) => void;
};
