// The id of a step of a plan: a template's id, joined to the module's where the step is done for one module.
import { z } from 'zod';

/** 'scan-before', or 'write-vin--' and the module's id. */
export const planStepIdSchema = z
  .string()
  .max(100)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*(--[a-z0-9-]+)?$/, 'Not the id of a step.');

/** The id that a plan gives to a template's step for a module, or for the whole job. */
export function planStepId(templateId: string, moduleId: string | null): string {
  return moduleId === null ? templateId : `${templateId}--${moduleId}`;
}

/** What the id says by itself, also of a step that the plan no longer has. */
export function partsOfStepId(stepId: string): { readonly templateId: string; readonly moduleId: string | null } {
  const at = stepId.indexOf('--');
  return at < 0
    ? { templateId: stepId, moduleId: null }
    : { templateId: stepId.slice(0, at), moduleId: stepId.slice(at + 2) };
}
