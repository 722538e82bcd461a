// Turns the templates of a rule pack, and the maker's own steps, into the steps of one job. Puts them into no order.
import type { CautionKey } from '../work/cautions.ts';
import type { GateKind } from './gate-kind.ts';
import { holdsFor, moduleFits, type PlanModule } from './job-condition.ts';
import type { MakerOrder, MakerStep } from './maker-order.ts';
import { planStepId } from './plan-step-id.ts';
import type { ProgrammingRoute } from './programming-route.ts';
import type { RulePack, Stage, StepTemplate } from './rule-pack.ts';
import { stageSchema } from './rule-pack.ts';

/** A step of one job, before its place in the order is known. */
export type DraftStep = {
  /** The template's id, joined to the module's id where the step is done for one module. Stable while the job's modules stay. */
  readonly id: string;
  /** Null for a step that only the maker's document has. */
  readonly templateId: string | null;
  readonly moduleId: string | null;
  readonly stage: Stage;
  readonly title: string;
  readonly detail: string;
  readonly cautions: readonly CautionKey[];
  readonly cannotBeUndone: boolean;
  readonly gates: readonly GateKind[];
  readonly meets: readonly GateKind[];
  readonly ends: readonly GateKind[];
  readonly routes: readonly ProgrammingRoute[];
  readonly typicalMinutes: number | null;
  readonly reason: string;
  readonly source: string;
  /** Settles what comes first where no rule does: by stage, then by module in the order named, then as the pack lists it. */
  readonly preference: readonly [stage: number, module: number, listed: number];
};

function stepOfTemplate(template: StepTemplate, listed: number, module: PlanModule | null, place: number): DraftStep {
  const fill = (text: string) => (module ? text.replaceAll('{module}', () => module.name) : text);
  return {
    id: planStepId(template.id, module?.id ?? null),
    templateId: template.id,
    moduleId: module?.id ?? null,
    stage: template.stage,
    title: fill(template.title),
    detail: fill(template.detail),
    cautions: template.cautions,
    cannotBeUndone: template.cannotBeUndone,
    gates: template.gates,
    meets: template.meets,
    ends: template.ends,
    routes: template.routes,
    typicalMinutes: template.typicalMinutes,
    reason: template.reason,
    source: template.source,
    preference: [stageSchema.options.indexOf(template.stage), place, listed],
  };
}

/** The steps that the pack has for these modules, each once. A template whose condition does not hold gives none. */
export function stepsFromPack(pack: RulePack, modules: readonly PlanModule[]): DraftStep[] {
  return pack.steps.flatMap((template, listed) => {
    if (!holdsFor(template.when, modules)) return [];
    const fitting = modules.flatMap((module, place) => (moduleFits(module, template.fits) ? [{ module, place }] : []));
    if (fitting.length === 0) return [];
    if (template.scope === 'job') return [stepOfTemplate(template, listed, null, -1)];
    return fitting.map(({ module, place }) => stepOfTemplate(template, listed, module, place));
  });
}

/** A step that only the maker's document has. Within its stage and module it comes after the pack's, unless the document says otherwise. */
export function stepFromMaker(
  own: MakerStep,
  listed: number,
  maker: MakerOrder,
  modules: readonly PlanModule[],
): DraftStep {
  const { id, ...shown } = own;
  const place = own.moduleId === null ? -1 : modules.findIndex((module) => module.id === own.moduleId);
  return {
    ...shown,
    id,
    templateId: null,
    meets: [],
    ends: [],
    reason: `The maker’s document “${maker.document}” asks for it.`,
    source: `${maker.document}, read on ${maker.readOn}`,
    preference: [stageSchema.options.indexOf(own.stage), place, 1000 + listed],
  };
}
