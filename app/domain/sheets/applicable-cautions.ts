// Which cautions apply to this vehicle now, and why. The wording of each is in work/cautions.ts; the maker's information comes first.
import { codeName, type NamedKinds } from '../codes/code-name.ts';
import type { CodeRequest } from '../codes/code-request.ts';
import type { Fault } from '../diagnosis/fault.ts';
import { type JobProgress, jobProgress } from '../programming/job-progress.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { CautionKey } from '../work/cautions.ts';

export type ApplicableCaution = { readonly key: CautionKey; readonly concerns: string };

/** In the order in which they are printed: what can kill first. */
export const cautionOrder: readonly CautionKey[] = [
  'high-voltage',
  'airbag-battery',
  'moving-vehicle',
  'supply-voltage',
  'never-interrupt',
  'vin-permanent',
  'keep-old-module',
  'anti-theft-code',
];

/**
 * True for names like 'Body control module', 'BCM', 'Body computer', 'Steering lock'. Names are the shop's own words, so this only
 * catches the usual English ones (common practice, no source); any step can carry the caution itself.
 */
export function isBodyModule(name: string): boolean {
  return (
    /\bbcm\b/i.test(name) ||
    /\bbody\b.*\b(module|controller|control|computer|unit|electronics)\b/i.test(name) ||
    /\bsteering(?:[ -]column)?[ -]lock\b/i.test(name)
  );
}

function hasOpenWork(fault: Fault): boolean {
  return fault.doneOn === null && fault.decision?.kind !== 'leave';
}

/** Repaired faults drive as they should; faults that are open, undecided or left do not. */
function isStillFaulty(fault: Fault): boolean {
  return fault.doneOn === null;
}

function latestScanModules(vehicle: Vehicle): readonly { readonly name: string; readonly answered: boolean }[] {
  const latest = [...vehicle.scans].sort((a, b) =>
    a.takenOn === b.takenOn ? (a.entered.at < b.entered.at ? -1 : 1) : a.takenOn < b.takenOn ? -1 : 1,
  );
  return latest[latest.length - 1]?.modules ?? [];
}

/** A request whose code is still to be had or still to be used. */
export function isCodeStillNeeded(request: CodeRequest, jobs: readonly JobProgress[]): boolean {
  if (request.outcome === 'refused' || request.closedOn !== null) return false;
  const waiting = jobs.map(({ job, steps }) => {
    const modules = job.modules.filter(({ codeRequestId }) => codeRequestId === request.id).map(({ id }) => id);
    const asking = steps.filter(
      ({ step }) => step.gates.includes('code-in-hand') && step.moduleId !== null && modules.includes(step.moduleId),
    );
    // Where no step asks for it by name, it is needed as long as the job is open.
    const waiting = asking.length > 0 ? asking : steps;
    const isOpen = waiting.some(({ state }) => state !== 'done' && state !== 'left-out');
    return { isLinked: modules.length > 0, isOpen: modules.length > 0 && isOpen };
  });
  return !waiting.some(({ isLinked }) => isLinked) || waiting.some(({ isOpen }) => isOpen);
}

function highVoltage(vehicle: Vehicle): string[] {
  const drive = vehicle.identity.drive === 'combustion' ? [] : [`${vehicle.identity.drive} drive`];
  return [
    ...drive,
    ...vehicle.faults.filter((fault) => hasOpenWork(fault) && fault.area === 'high-voltage').map((fault) => fault.what),
  ];
}

function airbags(vehicle: Vehicle): string[] {
  const faults = vehicle.faults.filter((fault) => hasOpenWork(fault) && fault.area === 'airbag');
  const sublets = vehicle.sublets.filter((sublet) => sublet.area === 'airbag' && sublet.backOn === null);
  return [...faults.map((fault) => fault.what), ...sublets.map((sublet) => sublet.what)];
}

function moving(vehicle: Vehicle, open: readonly JobProgress[]): string[] {
  const faults = vehicle.faults.filter(
    (fault) => isStillFaulty(fault) && (isBodyModule(fault.module) || isBodyModule(fault.what)),
  );
  const silent = latestScanModules(vehicle).filter((module) => !module.answered && isBodyModule(module.name));
  if (faults.length > 0) return faults.map((fault) => fault.what);
  // The same module again in other words would only make the caution longer.
  if (silent.length > 0) return silent.map((module) => `${module.name} does not answer`);
  return open
    .filter(
      ({ job }) =>
        job.modules.some(({ kind, origin }) => kind === 'body' && origin !== 'kept') || isBodyModule(job.title),
    )
    .map(({ job }) => `programming ${job.title}`);
}

function programming(open: readonly JobProgress[]): string[] {
  return open.map(({ job }) => `programming ${job.title}`);
}

function codes(vehicle: Vehicle, jobs: readonly JobProgress[], kinds?: NamedKinds): string[] {
  return vehicle.codeRequests
    .filter((request) => isCodeStillNeeded(request, jobs))
    .map((request) => codeName(request, kinds));
}

/** Cautions that steps still to be done carry themselves. */
function carriedBySteps(open: readonly JobProgress[], key: CautionKey): string[] {
  return open.flatMap((job) =>
    job.steps
      .filter((step) => step.state !== 'done' && step.state !== 'left-out' && step.step.cautions.includes(key))
      .map((step) => step.step.title),
  );
}

/** The cautions for this vehicle with what each concerns, most dangerous first. Empty where nothing calls for one. */
export function applicableCautions(vehicle: Vehicle, kinds?: NamedKinds): readonly ApplicableCaution[] {
  const jobs = vehicle.jobs.map((job) => jobProgress(vehicle, job, kinds));
  const open = jobs.filter((job) => !job.isClosed);
  // A unit that stays in the vehicle is never taken out, so there is no old one to read and keep.
  const replacing = open.filter(({ job }) => job.modules.some(({ origin }) => origin !== 'kept'));
  const reasons: Readonly<Record<CautionKey, readonly string[]>> = {
    'high-voltage': highVoltage(vehicle),
    'airbag-battery': airbags(vehicle),
    'moving-vehicle': moving(vehicle, open),
    'supply-voltage': programming(open),
    'never-interrupt': programming(open),
    'vin-permanent': programming(open),
    'keep-old-module': programming(replacing),
    'anti-theft-code': codes(vehicle, jobs, kinds),
  };
  const applying = cautionOrder.flatMap((key) => {
    const all = [...new Set([...reasons[key], ...(reasons[key].length > 0 ? [] : carriedBySteps(open, key))])];
    if (all.length === 0) return [];
    const shown = all.slice(0, 3).join('; ');
    return [{ key, concerns: all.length > 3 ? `${shown}; and ${all.length - 3} more` : shown }];
  });
  // Four cautions in a row about the same job say so once.
  return applying.map((caution, index) =>
    caution.concerns === applying[index - 1]?.concerns ? { ...caution, concerns: '' } : caution,
  );
}
