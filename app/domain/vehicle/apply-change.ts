// Applies one change to a vehicle record, or says why not. Pure: today, who and when are passed in; the old record is never altered.
import { requestChangeProblems } from '../codes/change-rules.ts';
import type { CodeKindFacts } from '../codes/code-kinds.ts';
import { attemptProblems } from '../programming/attempt-rules.ts';
import { jobProblems } from '../programming/job-rules.ts';
import type { RulePack } from '../programming/rule-pack.ts';
import type { Day } from '../shared/day.ts';
import type { Stamp } from '../shared/fact.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import { attachmentChangeProblems } from './attachment-rules.ts';
import type { FactList, PutChange, RemoveChange, VehicleChange } from './change.ts';
import type { ChangeProblem } from './change-problem.ts';
import { withDatedPrice } from './dated-price.ts';
import { factProblems } from './fact-rules.ts';
import type { Market } from './market.ts';
import { sectionProblems } from './section-rules.ts';
import type { Vehicle } from './vehicle.ts';

export type ChangeContext = {
  readonly today: Day;
  readonly market: Market;
  readonly stamp: Stamp;
  /** The rules by which the shop plans programming jobs now. */
  readonly rulePack: RulePack;
  /** The kinds of unlock code as the shop knows them now. */
  readonly codeKinds: readonly CodeKindFacts[];
};

/** A fact keeps the stamp of the person who entered it first; a correction does not make it somebody else's. */
function putFact(vehicle: Vehicle, change: PutChange, stamp: Stamp): Vehicle {
  const list: readonly { id: string; entered: Stamp }[] = vehicle[change.list];
  const index = list.findIndex((fact) => fact.id === change.item.id);
  const kept = { ...change.item, entered: list[index]?.entered ?? stamp };
  const next = index < 0 ? [...list, kept] : list.map((fact, at) => (at === index ? kept : fact));
  return { ...vehicle, [change.list]: next };
}

const referringFields = ['faultId', 'partId', 'codeRequestId', 'jobId'] as const;

/** A fact, and the modules of a job, which point at parts and code requests by themselves; each with the path to its fields. */
function placesThatRefer(fact: object): readonly (readonly [path: string, place: object])[] {
  const modules: unknown = 'modules' in fact && 'plan' in fact ? fact.modules : [];
  const inside = Array.isArray(modules) ? modules : [];
  return [['', fact], ...inside.map((module, at): [string, object] => [`modules.${at}.`, module])];
}

/** Facts that point at this one, by the list they are in. A referred fact is not removed: that would lose what the others say. */
function factsPointingAt(vehicle: Vehicle, id: string): readonly FactList[] {
  const lists = ['jobs', 'attempts', 'parts', 'codeRequests', 'labour', 'sublets'] as const;
  return lists.filter((list) =>
    vehicle[list].some((fact) =>
      placesThatRefer(fact).some(([, place]) => referringFields.some((field) => Reflect.get(place, field) === id)),
    ),
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
  attachments: 'a photograph or document',
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
  return placesThatRefer(change.item).flatMap(([path, place]) =>
    referringFields.flatMap((field) => {
      if (!(field in place)) return [];
      const id: unknown = Reflect.get(place, field);
      if (id === null || vehicle[targets[field]].some((fact) => fact.id === id)) return [];
      return [
        {
          field: `${path}${field}`,
          sentence: `The ${listNames[targets[field]].replace(/^a /, '')} it refers to is not in this record. Choose another, or none.`,
        },
      ];
    }),
  );
}

/** Jobs keep plans that hold, and a step is only begun where its plan lets it be. */
function programmingProblems(vehicle: Vehicle, change: PutChange, context: ChangeContext): readonly ChangeProblem[] {
  if (change.list === 'jobs') return jobProblems(vehicle, change.item, context.rulePack);
  return change.list === 'attempts' ? attemptProblems(vehicle, change.item, context.today) : [];
}

/** Proof of ownership first, and whatever else the shop's kind of code asks for, when a request is marked asked. */
function codeProblems(vehicle: Vehicle, change: PutChange, { codeKinds }: ChangeContext): readonly ChangeProblem[] {
  if (change.list !== 'codeRequests') return [];
  const before = vehicle.codeRequests.find((request) => request.id === change.item.id) ?? null;
  const { vin, modelYear } = vehicle.identity;
  return requestChangeProblems(before, change.item, { vin, modelYear, codeKinds });
}

function attachmentProblems(vehicle: Vehicle, change: PutChange): readonly ChangeProblem[] {
  if (change.list !== 'attachments') return [];
  return attachmentChangeProblems(vehicle.attachments.find(({ id }) => id === change.item.id) ?? null, change.item);
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
      if (problems.length > 0) return fail(problems);
      return change.section === 'targets'
        ? ok({ ...vehicle, targets: withDatedPrice(vehicle.targets, change.value, context.today) })
        : ok({ ...vehicle, [change.section]: change.value });
    }
    case 'put': {
      const problems = [
        ...factProblems(change, context.today),
        ...missingReference(vehicle, change),
        ...codeProblems(vehicle, change, context),
        ...programmingProblems(vehicle, change, context),
        ...attachmentProblems(vehicle, change),
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

function chasesOf(fact: object): number {
  return 'chases' in fact && Array.isArray(fact.chases) ? fact.chases.length : 0;
}

/** The change in a few words, for undo and for the history: 'a part added', 'purchase changed'. */
export function describeChange(vehicle: Vehicle, change: VehicleChange): string {
  switch (change.kind) {
    case 'set':
      return `${sectionNames[change.section]} changed`;
    case 'put': {
      const list: readonly { id: string }[] = vehicle[change.list];
      const known = list.find((fact) => fact.id === change.item.id);
      if (!known) return `${listNames[change.list]} added`;
      return `${listNames[change.list]} ${chasesOf(change.item) > chasesOf(known) ? 'chased' : 'changed'}`;
    }
    case 'remove':
      return `${listNames[change.list]} removed`;
  }
}
