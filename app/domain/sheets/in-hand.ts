// What must be in hand before the work starts: parts, codes, supply, keys, and what is out of the house. As boxes to tick.

import { codeName, type NamedKinds } from '../codes/code-name.ts';
import type { CodeRequest } from '../codes/code-request.ts';
import { failsSince, promisedFor } from '../codes/request-life.ts';
import type { Part } from '../parts/part.ts';
import { jobProgress } from '../programming/job-progress.ts';
import { type DayForm, showDay } from '../shared/show-day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Sublet } from '../work/sublet.ts';
import { isCodeStillNeeded } from './applicable-cautions.ts';
import type { SheetStep } from './sheet.ts';
import { capitalised, joined, openStep, strong } from './sheet-words.ts';

/** Where a part is now, in a few words. Never a price. */
export function whereIsPart(part: Part, dayForm: DayForm): string {
  if (part.fittedOn !== null) return `fitted ${showDay(part.fittedOn, dayForm)}`;
  if (part.returnedOn !== null) return `sent back ${showDay(part.returnedOn, dayForm)}`;
  if (part.receivedOn !== null) return `here since ${showDay(part.receivedOn, dayForm)}`;
  if (part.orderedOn === null) return 'to order';
  const promisedOn = promisedFor(part);
  const due = promisedOn === null ? 'no day promised' : `expected ${showDay(promisedOn, dayForm)}`;
  return `ordered ${showDay(part.orderedOn, dayForm)}, ${due}`;
}

/** How a code request stands, in a few words. The record holds no code, and no sheet could print one. */
export function howCodeStands(request: CodeRequest, dayForm: DayForm): string {
  if (failsSince(request) !== null) return 'does not work';
  if (request.outcome === 'given')
    return request.keptWhere === '' ? 'given; where it is kept is not recorded' : `given; kept: ${request.keptWhere}`;
  if (request.outcome === 'refused')
    return `refused${request.answeredOn === null ? '' : ` ${showDay(request.answeredOn, dayForm)}`}`;
  if (request.closedOn !== null) return `closed ${showDay(request.closedOn, dayForm)}`;
  if (request.askedOn !== null) {
    const expectedOn = promisedFor(request);
    const due = expectedOn === null ? 'no day promised' : `expected ${showDay(expectedOn, dayForm)}`;
    return `asked ${showDay(request.askedOn, dayForm)}, ${due}`;
  }
  return request.proof === null ? 'not asked for: proof of ownership is not recorded' : 'not asked for yet';
}

function partItem(part: Part, dayForm: DayForm): SheetStep {
  const isHere = part.receivedOn !== null;
  const amount = part.quantity === 1 ? '' : ` × ${part.quantity}`;
  const where = whereIsPart(part, dayForm);
  return openStep(`${part.what}${amount}`, {
    detail: joined([part.partNumber, isHere ? where : '', part.note]),
    marks: isHere ? [] : [strong(`Not here: ${where}`)],
  });
}

function codeItem(request: CodeRequest, dayForm: DayForm, kinds?: NamedKinds): SheetStep {
  const isGiven = request.outcome === 'given' && failsSince(request) === null;
  const stands = howCodeStands(request, dayForm);
  return openStep(capitalised(codeName(request, kinds)), {
    detail: isGiven ? capitalised(stands) : '',
    marks: isGiven ? [] : [strong(`Not in hand: ${stands}`)],
  });
}

function subletItem(sublet: Sublet, dayForm: DayForm): SheetStep {
  const promisedOn = promisedFor(sublet);
  const due = promisedOn === null ? 'no day promised' : `expected back ${showDay(promisedOn, dayForm)}`;
  const stands = sublet.sentOn === null ? 'to send out' : `out since ${showDay(sublet.sentOn, dayForm)}, ${due}`;
  return openStep(sublet.what, {
    detail: sublet.supplier,
    marks: [strong(`Not in the house: ${stands}`)],
  });
}

function keyItem(vehicle: Vehicle): SheetStep {
  const { keysReceived } = vehicle.purchase;
  const touchesKeys =
    vehicle.faults.some((fault) => fault.area === 'immobiliser-keys' && fault.doneOn === null) ||
    vehicle.codeRequests.some((request) => request.kind === 'immobiliser' && request.outcome !== 'refused');
  const tag = vehicle.identity.keyTag === '' ? 'no key tag recorded' : `key tag ${vehicle.identity.keyTag}`;
  if (!touchesKeys) return openStep('Key', { detail: tag });
  const count = keysReceived === null ? 'number not recorded' : `${keysReceived} received`;
  return openStep('Every key of the vehicle', { detail: joined([count, tag]) });
}

/** Items for the work that is still open; empty when no work is. */
export function inHandItems(vehicle: Vehicle, dayForm: DayForm, kinds?: NamedKinds): readonly SheetStep[] {
  const jobs = vehicle.jobs.map((job) => jobProgress(vehicle, job, kinds));
  const isProgramming = jobs.some((job) => !job.isClosed);
  const parts = vehicle.parts.filter((part) => part.fittedOn === null && part.returnedOn === null);
  const codes = vehicle.codeRequests.filter((request) => isCodeStillNeeded(request, jobs));
  const sublets = vehicle.sublets.filter((sublet) => sublet.backOn === null);
  const openFaults = vehicle.faults.filter((fault) => fault.doneOn === null && fault.decision?.kind !== 'leave');
  if (!isProgramming && parts.length + codes.length + sublets.length + openFaults.length === 0) return [];
  const supply = openStep('Stabilised supply, set as the maker says', { blanks: ['volts set'] });
  return [
    ...parts.map((part) => partItem(part, dayForm)),
    ...codes.map((request) => codeItem(request, dayForm, kinds)),
    ...sublets.map((sublet) => subletItem(sublet, dayForm)),
    ...(isProgramming ? [supply] : []),
    keyItem(vehicle),
  ];
}
