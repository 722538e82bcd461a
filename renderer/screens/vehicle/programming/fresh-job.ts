// A new programming job with what the record already tells: the module of the open fault, its part, its code request. Pure.
import type { Fault } from '../../../../app/domain/diagnosis/fault.ts';
import type { ProgrammingJobDraft } from '../../../../app/domain/programming/programming-job.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';
import type { Vehicle } from '../../../../app/domain/vehicle/vehicle.ts';

/** The one entry of a list that is for this fault; null when there is none, or more than one to choose from. */
function onlyFor<Entry extends { readonly id: string; readonly faultId: string | null }>(
  entries: readonly Entry[],
  fault: Fault | null,
): string | null {
  const found = fault === null ? [] : entries.filter((entry) => entry.faultId === fault.id);
  return found.length === 1 ? (found[0]?.id ?? null) : null;
}

export function freshJob(
  id: string,
  today: Day,
  vehicle: Pick<Vehicle, 'jobs' | 'parts' | 'codeRequests'>,
  fault: Fault | null,
): ProgrammingJobDraft {
  const isTaken = fault !== null && vehicle.jobs.some((job) => job.faultId === fault.id);
  const forFault = isTaken ? null : fault;
  return {
    id,
    openedOn: today,
    module: forFault?.module ?? '',
    origin: 'new',
    faultId: forFault?.id ?? null,
    partId: onlyFor(vehicle.parts, forFault),
    codeRequestId: onlyFor(vehicle.codeRequests, forFault),
    steps: [],
    note: '',
  };
}
