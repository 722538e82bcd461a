// Which programming routes were tried for a fault and how often each worked. Ranking routes for a step is in programming/routes.ts.
import type { ProgrammingRoute } from '../programming/programming-route.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** Attempts that a person stopped say nothing about the route and are not counted. */
export type RouteTally = { readonly route: ProgrammingRoute; readonly worked: number; readonly tried: number };

/** Attempts at all steps of the jobs that belong to this fault; what is done by hand is no route that competes with another. */
export function routeTally(vehicle: Vehicle, faultId: string): readonly RouteTally[] {
  const jobIds = new Set(vehicle.jobs.filter((job) => job.faultId === faultId).map(({ id }) => id));
  const tallies = new Map<ProgrammingRoute, RouteTally>();
  for (const { jobId, route, outcome } of vehicle.attempts) {
    if (!jobIds.has(jobId) || outcome === 'stopped' || route === 'by-hand') continue;
    const tally = tallies.get(route) ?? { route, worked: 0, tried: 0 };
    tallies.set(route, { route, worked: tally.worked + (outcome === 'worked' ? 1 : 0), tried: tally.tried + 1 });
  }
  return [...tallies.values()];
}
