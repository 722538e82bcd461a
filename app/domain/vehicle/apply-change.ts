// Applies one change to a vehicle record, or says why not. Pure: today, who and when are passed in; the old record is never altered.
import type { Day } from '../shared/day.ts';
import type { Stamp } from '../shared/fact.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import type { FactList, PutChange, RemoveChange, VehicleChange } from './change.ts';
import type { ChangeProblem } from './change-problem.ts';
import { factProblems } from './fact-rules.ts';
import type { Market } from './market.ts';
import { sectionProblems } from './section-rules.ts';
import type { Vehicle } from './vehicle.ts';

export type ChangeContext = { readonly today: Day; readonly market: Market; readonly stamp: Stamp };

/** A fact keeps the stamp of the person who entered it first; a correction does not make it somebody else's. */
function putFact(vehicle: Vehicle, change: PutChange, stamp: Stamp): Vehicle {
  const list: readonly { id: string; entered: Stamp }[] = vehicle[change.list];
  const index = list.findIndex((fact) => fact.id === change.item.id);
  const kept = { ...change.item, entered: list[index]?.entered ?? stamp };
  const next = index < 0 ? [...list, kept] : list.map((fact, at) => (at === index ? kept : fact));
  return { ...vehicle, [change.list]: next };
}

const referringFields = ['faultId', 'partId', 'codeRequestId', 'jobId'] as const;

/** Facts that point at this one, by the list they are in. A referred fact is not removed: that would lose what the others say. */
function factsPointingAt(vehicle: Vehicle, id: string): readonly FactList[] {
  const lists = ['jobs', 'attempts', 'parts', 'codeRequests', 'labour', 'sublets'] as const;
  return lists.filter((list) =>
    vehicle[list].some((fact) => referringFields.some((field) => field in fact && Reflect.get(fact, field) === id)),
  );
}

const listNames: Readonly<Record<FactList, string>> = {
  scans: 'a scan',
  batteryReadings: 'a battery reading',
  faults: 'a fault',
  jobs: 'a programming job',
  attempts: 'a programming attempt',
  parts: 'a part',
  codeRequests: 'a code request',
  labour: 'booked work',
  sublets: 'sublet work',
  otherCosts: 'a cost',
  signOffs: 'a sign-off',
  notes: 'a note',
};

function removeFact(vehicle: Vehicle, change: RemoveChange): Result<Vehicle, readonly ChangeProblem[]> {
  const list: readonly { id: string }[] = vehicle[change.list];
  if (!list.some((fact) => fact.id === change.id))
    return fail([{ field: '', sentence: 'This entry is no longer there; somebody removed it already.' }]);
  const pointing = factsPointingAt(vehicle, change.id);
  if (pointing.length > 0)
    return fail([
      {
        field: '',
        sentence: `Something still refers to this entry: ${pointing.map((name) => listNames[name]).join(', ')}. Remove or unlink that first.`,
      },
    ]);
  return ok({ ...vehicle, [change.list]: list.filter((fact) => fact.id !== change.id) });
}

function missingReference(vehicle: Vehicle, change: PutChange): readonly ChangeProblem[] {
  const targets = { faultId: 'faults', partId: 'parts', codeRequestId: 'codeRequests', jobId: 'jobs' } as const;
  return referringFields.flatMap((field) => {
    if (!(field in change.item)) return [];
    const id: unknown = Reflect.get(change.item, field);
    if (id === null || vehicle[targets[field]].some((fact) => fact.id === id)) return [];
    return [
      {
        field,
        sentence: `The ${listNames[targets[field]].replace(/^a /, '')} it refers to is not in this record. Choose another, or none.`,
      },
    ];
  });
}

/** An attempt belongs to a step of its job, and a step that was attempted stays in its job: else what happened would hang in the air. */
function stepProblems(vehicle: Vehicle, change: PutChange): readonly ChangeProblem[] {
  if (change.list === 'attempts') {
    const { jobId, stepId } = change.item;
    const job = vehicle.jobs.find((candidate) => candidate.id === jobId);
    if (!job || job.steps.some((step) => step.id === stepId)) return [];
    return [{ field: 'stepId', sentence: `The job on ${job.module} has no such step. Choose one of its steps.` }];
  }
  if (change.list !== 'jobs') return [];
  const { id, steps } = change.item;
  const kept = vehicle.jobs.find((job) => job.id === id);
  const lost = (kept?.steps ?? []).filter(
    (step) =>
      !steps.some((other) => other.id === step.id) &&
      vehicle.attempts.some((attempt) => attempt.jobId === id && attempt.stepId === step.id),
  );
  return lost.map((step) => ({
    field: 'steps',
    sentence: `“${step.title}” was attempted already and stays in the job. Say why it is not needed instead of taking it out.`,
  }));
}

/** The record after the change, or what stands against it with the field named. */
export function applyChange(
  vehicle: Vehicle,
  change: VehicleChange,
  context: ChangeContext,
): Result<Vehicle, readonly ChangeProblem[]> {
  switch (change.kind) {
    case 'set': {
      const problems = sectionProblems(change, vehicle, context);
      return problems.length > 0 ? fail(problems) : ok({ ...vehicle, [change.section]: change.value });
    }
    case 'put': {
      const problems = [
        ...factProblems(change, context.today),
        ...missingReference(vehicle, change),
        ...stepProblems(vehicle, change),
      ];
      return problems.length > 0 ? fail(problems) : ok(putFact(vehicle, change, context.stamp));
    }
    case 'remove':
      return removeFact(vehicle, change);
  }
}

const sectionNames = {
  identity: 'vehicle details',
  purchase: 'purchase',
  arrival: 'arrival',
  targets: 'targets',
  sale: 'sale',
} as const;

/** The change in a few words, for undo and for the history: 'a part added', 'purchase changed'. */
export function describeChange(vehicle: Vehicle, change: VehicleChange): string {
  switch (change.kind) {
    case 'set':
      return `${sectionNames[change.section]} changed`;
    case 'put': {
      const list: readonly { id: string }[] = vehicle[change.list];
      const isKnown = list.some((fact) => fact.id === change.item.id);
      return `${listNames[change.list]} ${isKnown ? 'changed' : 'added'}`;
    }
    case 'remove':
      return `${listNames[change.list]} removed`;
  }
}
