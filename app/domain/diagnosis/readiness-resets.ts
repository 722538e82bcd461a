// Why inspection monitors are incomplete: what in the record set them back before a scan. Says what is written, nothing more.
import type { Day } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Scan } from './scan.ts';

export type ReadinessReset = { readonly on: Day; readonly what: string };

/** A training school's page on readiness flags, and trade advice on how far it takes. */
export const resetWords =
  'Clearing codes, taking the battery’s power away and programming the engine module set all monitors to incomplete; ordinary driving, some 200 to 300 miles over a few days, usually completes them.';

/**
 * What in the record set the monitors back before `scan`: codes cleared before it, and attempts at programming an engine module on or before
 * its day. Whether the battery was off is nowhere written as such and not guessed.
 */
export function readinessResets(vehicle: Pick<Vehicle, 'jobs' | 'attempts'>, scan: Scan): readonly ReadinessReset[] {
  const cleared = scan.clearedBefore ? [{ on: scan.takenOn, what: 'codes cleared before this scan' }] : [];
  const days = new Set(
    vehicle.attempts.flatMap((attempt) => {
      const job = vehicle.jobs.find((candidate) => candidate.id === attempt.jobId);
      const step = job?.plan.steps.find(({ id }) => id === attempt.stepId);
      const module = job?.modules.find(({ id }) => id === step?.moduleId) ?? job?.modules[0];
      return module?.kind === 'powertrain' && attempt.on <= scan.takenOn ? [attempt.on] : [];
    }),
  );
  return [...[...days].sort().map((on) => ({ on, what: 'programming of the engine module' })), ...cleared];
}
