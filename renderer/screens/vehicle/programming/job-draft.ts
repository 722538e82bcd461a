// A programming job as its form holds it: modules that may still be blank, and the plan that follows from them. Pure.
import type { Fault } from '../../../../app/domain/diagnosis/fault.ts';
import type { Attempt } from '../../../../app/domain/programming/attempt.ts';
import { isPlanAsKept } from '../../../../app/domain/programming/job-rules.ts';
import type { KeptPlan } from '../../../../app/domain/programming/kept-plan.ts';
import type { MakerOrder } from '../../../../app/domain/programming/maker-order.ts';
import {
  type ModuleKind,
  moduleKindFromName,
  moduleKindTitles,
} from '../../../../app/domain/programming/module-kind.ts';
import type { JobModule, ProgrammingJobDraft } from '../../../../app/domain/programming/programming-job.ts';
import { type Remade, remakePlan } from '../../../../app/domain/programming/remake-plan.ts';
import type { RulePack } from '../../../../app/domain/programming/rule-pack.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';
import { fail, ok, type Result } from '../../../../app/domain/shared/result.ts';
import type { ChangeProblem } from '../../../../app/domain/vehicle/change-problem.ts';
import type { DriveKind } from '../../../../app/domain/vehicle/identity.ts';
import type { Vehicle } from '../../../../app/domain/vehicle/vehicle.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import { jobText } from '../../../text/programming.ts';

/** A job whose plan may not have been made yet. */
export type UnplannedJob = Omit<ProgrammingJobDraft, 'plan'> & { readonly plan: KeptPlan | null };

export type JobValue = Omit<Typed<UnplannedJob>, 'modules' | 'makerOrder'> & {
  readonly id: string;
  readonly modules: readonly JobModule[];
  readonly makerOrder: MakerOrder | null;
  /** The plan is made again even where its modules stay. */
  readonly isRemade: boolean;
};

export type Planning = {
  readonly pack: RulePack | null;
  readonly today: Day;
  readonly attempts: readonly Attempt[];
  /** The job as it is kept; null for a new one. */
  readonly before: ProgrammingJobDraft | null;
};

/** The next module id that this job has never used. */
export function nextModuleId(modules: readonly Pick<JobModule, 'id'>[]): string {
  const used = modules.map(({ id }) => Number(/^mod(\d+)$/.exec(id)?.[1] ?? 0));
  return `mod${Math.max(0, ...used) + 1}`;
}

export function blankModule(modules: readonly Pick<JobModule, 'id'>[]): JobModule {
  return { id: nextModuleId(modules), kind: 'other', name: '', origin: 'new', partId: null, codeRequestId: null };
}

/** The module with this name; its kind follows the name until a person has chosen another. */
export function renamed(module: JobModule, name: string): JobModule {
  const follows = module.kind === moduleKindFromName(module.name);
  return { ...module, name, kind: follows ? moduleKindFromName(name) : module.kind };
}

const shortNames: Readonly<Partial<Record<ModuleKind, string>>> = {
  body: 'Body',
  powertrain: 'Engine',
  keys: 'Keys',
  radio: 'Radio',
};

/** Modules that often belong to such a job and are not named: kept, unless a person says otherwise. */
export function offeredModules(
  modules: readonly JobModule[],
  drive: DriveKind,
): readonly { readonly kind: ModuleKind; readonly name: string }[] {
  const named = new Set(modules.filter(({ name }) => name.trim() !== '').map(({ kind }) => kind));
  const kinds: ModuleKind[] = drive === 'combustion' ? [] : ['high-voltage'];
  kinds.push('keys', 'body', 'powertrain', 'radio');
  return kinds
    .filter((kind) => !named.has(kind))
    .map((kind) => ({ kind, name: shortNames[kind] ?? moduleKindTitles[kind] }));
}

/** The code request that a module added to the job needs as well: that of the keys and the body module is the same. */
export function keptModule(kind: ModuleKind, name: string, modules: readonly JobModule[]): JobModule {
  const sharing: readonly ModuleKind[] = ['body', 'keys', 'powertrain', 'immobiliser-receiver'];
  const shared = sharing.includes(kind) ? modules.find((module) => sharing.includes(module.kind)) : undefined;
  const codeRequestId = kind === 'keys' ? (shared?.codeRequestId ?? null) : null;
  return { ...blankModule(modules), kind, name, origin: 'kept', codeRequestId };
}

/** The one entry of a list that is for this fault; null when there is none, or more than one to choose from. */
function onlyFor<Entry extends { readonly id: string; readonly faultId: string | null }>(
  entries: readonly Entry[],
  fault: Fault | null,
): Entry | null {
  const found = fault === null ? [] : entries.filter((entry) => entry.faultId === fault.id);
  return found.length === 1 ? (found[0] ?? null) : null;
}

/** A new job with what the record already tells: the module of the open fault, its part, its code request. */
export function freshJob(
  id: string,
  today: Day,
  vehicle: Pick<Vehicle, 'jobs' | 'parts' | 'codeRequests'>,
  fault: Fault | null,
): UnplannedJob {
  const isTaken = fault !== null && vehicle.jobs.some((job) => job.faultId === fault.id);
  const forFault = isTaken ? null : fault;
  const part = onlyFor(vehicle.parts, forFault);
  const request = onlyFor(vehicle.codeRequests, forFault);
  const name = forFault?.module ?? '';
  const module: JobModule = {
    ...blankModule([]),
    name,
    kind: moduleKindFromName(name),
    origin: part !== null && /\bused\b/i.test(part.what) ? 'used' : 'new',
    partId: part?.id ?? null,
    codeRequestId: request?.id ?? null,
  };
  return {
    id,
    openedOn: today,
    title: '',
    faultId: forFault?.id ?? null,
    modules: [module],
    plan: null,
    makerOrder: null,
    ticks: [],
    leftOut: [],
    formerSteps: [],
    note: '',
  };
}

/** Named modules, or the whole list where none is named yet. */
function namedModules(modules: readonly JobModule[]): readonly JobModule[] {
  return modules.filter(({ name }) => name.trim() !== '');
}

/** 'Body, Keys': what is exchanged; what is kept where nothing is. */
export function titleFor(modules: readonly JobModule[]): string {
  const exchanged = namedModules(modules).filter(({ origin }) => origin !== 'kept');
  const names = (exchanged.length > 0 ? exchanged : namedModules(modules)).map(({ name }) => name.trim());
  return names.join(', ').slice(0, 80);
}

/** The job with its plan: as kept where nothing that it follows from has changed, else made again. Null until a module is named. */
export function plannedJob(value: JobValue, { pack, today, attempts, before }: Planning): Remade | null {
  const { isRemade, ...typed } = value;
  const modules = namedModules(typed.modules).map((module) => ({ ...module, name: module.name.trim() }));
  const title = typed.title.trim() || titleFor(modules);
  const job = { ...typed, title, modules, openedOn: typed.openedOn ?? today } as UnplannedJob;
  if (before !== null && !isRemade && job.plan !== null) {
    const planned = { modules: [...modules], makerOrder: job.makerOrder, plan: job.plan };
    if (isPlanAsKept(before, planned))
      return { job: { ...job, plan: job.plan }, added: [], gone: [], losing: [], isReordered: false };
  }
  if (pack === null || modules.length === 0) return null;
  const emptyPlan: KeptPlan = {
    packId: pack.id,
    packVersion: pack.version,
    madeOn: today,
    steps: [],
    links: [],
    rules: [],
    contradictions: [],
    reminders: [],
  };
  return remakePlan({ ...job, plan: job.plan ?? emptyPlan }, attempts, pack, today);
}

/** The job to judge and save, or what stands against it. */
export function finishJob(value: JobValue, planning: Planning): Result<unknown, readonly ChangeProblem[]> {
  const unnamed = value.modules.findIndex(({ name }) => name.trim() === '');
  if (namedModules(value.modules).length === 0 || (unnamed >= 0 && value.modules.length > 1))
    return fail([{ field: `modules.${Math.max(0, unnamed)}.name`, sentence: jobText.nameFirst }]);
  if (value.makerOrder !== null && value.makerOrder.document.trim() === '')
    return fail([{ field: 'makerOrder.document', sentence: jobText.orderNeedsDocument }]);
  const planned = plannedJob(value, planning);
  if (planned === null) return fail([{ field: '', sentence: jobText.noRules }]);
  if (planned.job.plan.steps.length === 0) return fail([{ field: 'modules', sentence: jobText.noSteps }]);
  return ok({ ...planned.job, openedOn: value.openedOn });
}

export function jobValue(job: UnplannedJob, isRemade = false): JobValue {
  return { ...job, isRemade };
}
