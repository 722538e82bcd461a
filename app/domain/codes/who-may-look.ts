// Who may see the code kept for a request, and for which step. Pure; knows no code and no vault. Asked by the main process before each look.
import type { Role } from '../fleet/shop.ts';
import { jobProgress } from '../programming/job-progress.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

export type StepForCode = {
  readonly jobId: string;
  readonly stepId: string;
  /** Place in the plan of its job, from 1. */
  readonly number: number;
  readonly title: string;
};

/**
 * The open steps of programming that need the code of this request: those that ask for the code of a module it is linked to; where no
 * step of that job asks for it by name, all open steps of the job.
 */
export function stepsNeedingCode(vehicle: Vehicle, requestId: string): readonly StepForCode[] {
  return vehicle.jobs.flatMap((job) => {
    const modules = job.modules.filter(({ codeRequestId }) => codeRequestId === requestId).map(({ id }) => id);
    if (modules.length === 0) return [];
    const { steps } = jobProgress(vehicle, job);
    const asking = steps.filter(
      ({ step }) => step.gates.includes('code-in-hand') && step.moduleId !== null && modules.includes(step.moduleId),
    );
    return (asking.length > 0 ? asking : steps)
      .filter(({ state }) => state !== 'done' && state !== 'left-out')
      .map(({ step, number }) => ({ jobId: job.id, stepId: step.id, number, title: step.title }));
  });
}

/**
 * Why this role may not see the code of this request now, in a sentence; null when it may. Own rule: only while the vehicle is in stock;
 * a technician only for a step that needs it; sales never.
 */
export function whyNoLook(role: Role, vehicle: Vehicle, requestId: string): string | null {
  if (role === 'sales') return 'Sales sees no codes. Ask the workshop or the manager.';
  if (vehicle.sale !== null)
    return `The vehicle was sold on ${vehicle.sale.soldOn}. Codes are seen only while it is in stock; the manager hands them to the buyer.`;
  if (role === 'technician' && stepsNeedingCode(vehicle, requestId).length === 0)
    return 'No open programming step of this vehicle needs this code. Link the request to the module in the programming job, or ask the manager.';
  return null;
}

/** Why this role may not keep a code for a request of this vehicle, in a sentence; null when it may. */
export function whyNoKeeping(role: Role, vehicle: Vehicle): string | null {
  if (role === 'sales') return 'Sales keeps no codes. Ask the workshop or the manager.';
  return vehicle.sale === null
    ? null
    : `The vehicle was sold on ${vehicle.sale.soldOn}. Codes are kept only for vehicles in stock.`;
}

/** Why the code cannot be handed to the buyer now; null when it can. */
export function whyNoHandOver(role: Role, vehicle: Vehicle): string | null {
  if (role !== 'manager') return 'Codes are handed to the buyer by the manager.';
  return vehicle.sale === null ? 'Nobody has bought this vehicle yet. Record the sale first.' : null;
}
