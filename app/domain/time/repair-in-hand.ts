// Since when a repair has everything it needs. Only about days; who owes what is in the gates.
import type { Fault } from '../diagnosis/fault.ts';
import { jobProgress } from '../programming/job-progress.ts';
import { type Day, laterDay } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** The last day on which something that belongs to the fault came in, or its decision; null while anything is missing or undecided. */
export function repairInHandOn(vehicle: Vehicle, fault: Fault): Day | null {
  const isOf = ({ faultId }: { readonly faultId: string | null }) => faultId === fault.id;
  const needed: (Day | null)[] = [
    fault.decision?.decidedOn ?? null,
    ...vehicle.parts.filter(isOf).map(({ receivedOn, returnedOn }) => receivedOn ?? returnedOn),
    ...vehicle.sublets.filter(isOf).map(({ backOn }) => backOn),
    ...vehicle.codeRequests.filter(isOf).map(({ answeredOn, closedOn }) => answeredOn ?? closedOn),
    ...vehicle.jobs.filter(isOf).map((job) => jobProgress(vehicle, job).closedOn),
  ];
  let latest: Day | null = null;
  for (const day of needed) {
    if (day === null) return null;
    latest = latest === null ? day : laterDay(latest, day);
  }
  return latest;
}
