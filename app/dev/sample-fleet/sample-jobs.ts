// The modules that the invented shop names when it opens a programming job, by what is exchanged.
import type { ModuleOrigin } from '../../domain/programming/module-origin.ts';
import type { ToldModule } from './programming-story.ts';

type Links = { readonly part?: string; readonly code?: string };

/** A body control module and the keys that stay; both need the code of the vehicle. */
export function bodyAndKeys(origin: ModuleOrigin, { part, code }: Links): readonly ToldModule[] {
  const coded = code === undefined ? {} : { code };
  return [
    ['body', 'Body', origin, { ...(part === undefined ? {} : { part }), ...coded }],
    ['keys', 'Keys', 'kept', coded],
  ];
}

export function engineModule(origin: ModuleOrigin, part: string): readonly ToldModule[] {
  return [['powertrain', 'Engine', origin, { part }]];
}

export function clusterModule(origin: ModuleOrigin, part: string): readonly ToldModule[] {
  return [['instrument-cluster', 'Cluster', origin, { part }]];
}

/** Keys new to the vehicle; the shop has them in a drawer. */
export function newKeys(code: string): readonly ToldModule[] {
  return [['keys', 'Keys', 'new', { code }]];
}

export function keptGateway(code: string): readonly ToldModule[] {
  return [['gateway', 'Gateway', 'kept', { code }]];
}

export function airbagModule(part: string): readonly ToldModule[] {
  return [['airbag', 'Airbag', 'new', { part }]];
}
