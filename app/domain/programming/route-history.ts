// How often each route has worked in this shop for a kind of module, counted over the records of all vehicles. Nothing but counts leaves here.
import { z } from 'zod';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { ModuleKind } from './module-kind.ts';
import { partsOfStepId } from './plan-step-id.ts';
import { type ProgrammingRoute, programmingRouteSchema } from './programming-route.ts';

/** An attempt that a person stopped says nothing about the route and is not counted. */
export const routeTallySchema = z.strictObject({
  route: programmingRouteSchema,
  worked: z.int().min(0),
  /** Worked and failed together. */
  tried: z.int().min(0),
});
export type RouteTally = z.infer<typeof routeTallySchema>;

/**
 * The tallies of a kind of module, routes that were tried only, in a fixed order. Steps of a whole job belong to no kind; what is done by
 * hand is no route that competes with another.
 */
export function routeHistory(
  vehicles: Iterable<Pick<Vehicle, 'jobs' | 'attempts'>>,
  moduleKind: ModuleKind,
): readonly RouteTally[] {
  const tallies = new Map<ProgrammingRoute, { worked: number; tried: number }>();
  for (const { jobs, attempts } of vehicles)
    for (const { jobId, stepId, route, outcome } of attempts) {
      if (outcome === 'stopped' || route === 'by-hand') continue;
      const job = jobs.find(({ id }) => id === jobId);
      const step = job?.plan.steps.find(({ id }) => id === stepId);
      const { moduleId } = step ?? partsOfStepId(stepId);
      if (moduleId === null || job?.modules.find(({ id }) => id === moduleId)?.kind !== moduleKind) continue;
      const tally = tallies.get(route) ?? { worked: 0, tried: 0 };
      tally.tried += 1;
      if (outcome === 'worked') tally.worked += 1;
      tallies.set(route, tally);
    }
  return programmingRouteSchema.options.flatMap((route) => {
    const tally = tallies.get(route);
    return tally ? [{ route, ...tally }] : [];
  });
}
