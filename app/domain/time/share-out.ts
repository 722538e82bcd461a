// Who takes which vehicle of Next jobs when several technicians are there, and after how much other work. The rule is in list-schedule.ts.
import type { Person } from '../fleet/shop.ts';
import type { Identifier } from '../shared/identifier.ts';
import { listSchedule } from './list-schedule.ts';
import type { NextVehicle } from './next-jobs.ts';

export type Share = {
  readonly name: string;
  /** Minutes of that person's work on vehicles before this one. */
  readonly startsInMinutes: number;
};

/**
 * The vehicles in their order, each with all its work to the technician who is free first. Everybody is taken to be free now and able to
 * do everything: the settings say nothing else. Empty with fewer than two active technicians.
 */
export function shareOut(
  order: readonly Pick<NextVehicle, 'vehicle' | 'minutesLeft' | 'lossCentsPerDay'>[],
  people: readonly Person[],
): ReadonlyMap<Identifier, Share> {
  const technicians = people.filter(({ role, isActive }) => role === 'technician' && isActive);
  if (technicians.length < 2) return new Map();
  const jobs = order.map(({ vehicle, minutesLeft, lossCentsPerDay }) => ({
    id: vehicle.id,
    minutesLeft,
    lossCentsPerDay,
    people: null,
  }));
  const { assignments } = listSchedule(
    jobs,
    technicians.map(({ id }) => ({ id, freeInMinutes: 0 })),
  );
  const nameOf = new Map(technicians.map(({ id, name }) => [id, name]));
  return new Map(
    assignments.map(({ jobId, personId, startsIn }) => [
      jobId,
      { name: nameOf.get(personId) ?? personId, startsInMinutes: startsIn },
    ]),
  );
}
