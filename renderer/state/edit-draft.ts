// What a person has typed over a fact and not saved yet, as a value: only the fields that were touched, so that a record read again
// underneath keeps both. Pure; the hook that holds it is use-edit-draft.ts.
import type { z } from 'zod';
import type { ChangeProblem } from '../../app/domain/vehicle/change-problem.ts';

export type EditDraft<Value> = {
  readonly edits: Partial<Value>;
  readonly problems: readonly ChangeProblem[];
};

/** A fact as a form holds it: days and numbers may be blank while it is being typed. */
export type Typed<Fact> = {
  [Field in keyof Fact]: Field extends `${string}On` | 'on'
    ? Fact[Field] | null
    : Fact[Field] extends number
      ? Fact[Field] | null
      : Fact[Field];
};

export const emptyDraft: EditDraft<object> = { edits: {}, problems: [] };

/** The fact as the person sees it: what is kept, with what was typed over it. */
export function draftValue<Value extends object>(base: Value, draft: EditDraft<Value>): Value {
  return { ...base, ...draft.edits };
}

/** True when `problem` stands at `field` or inside it. */
function standsAt(problem: ChangeProblem, field: string): boolean {
  return problem.field === field || problem.field.startsWith(`${field}.`);
}

/** The draft after one field was typed in. What was wrong with that field is taken back until it is judged again. */
export function typeInto<Value extends object>(draft: EditDraft<Value>, edits: Partial<Value>): EditDraft<Value> {
  const touched = Object.keys(edits);
  return {
    edits: { ...draft.edits, ...edits },
    problems: draft.problems.filter((problem) => !touched.some((field) => standsAt(problem, field))),
  };
}

function isSame(a: unknown, b: unknown): boolean {
  return Object.is(a, b) || JSON.stringify(a) === JSON.stringify(b);
}

/** True when something typed differs from what is kept. */
export function isTouched<Value extends object>(base: Value, draft: EditDraft<Value>): boolean {
  const edits = Object.entries(draft.edits);
  return edits.some(([field, value]) => !isSame(value, Reflect.get(base, field)));
}

/** The sentence that stands at a field (or at a field inside it); null when nothing does. */
export function sentenceAt(problems: readonly ChangeProblem[], field: string): string | null {
  return problems.find((problem) => standsAt(problem, field))?.sentence ?? null;
}

/** Sentences that belong to no field of the fact: said for the form as a whole, so that none is lost. */
export function sentencesForWhole(problems: readonly ChangeProblem[], value: object): readonly string[] {
  return problems
    .filter((problem) => problem.field === '' || !((problem.field.split('.')[0] ?? '') in value))
    .map((problem) => problem.sentence);
}

/** The schema's own sentence where it has one; a plain one where the library would speak to programmers. */
function sentenceOf(issue: z.core.$ZodIssue): string {
  const isOwnSentence = !/^(Invalid|Too small|Too big|Unrecognized)/.test(issue.message);
  if (isOwnSentence) return issue.message;
  if (issue.code === 'too_small') return `At least ${String(issue.minimum)}.`;
  if (issue.code === 'too_big') return `At most ${String(issue.maximum)}.`;
  return 'Fill this in.';
}

/** What the schema of a fact has against a draft, as sentences at its fields. */
export function schemaProblems({ issues }: z.ZodError): readonly ChangeProblem[] {
  return issues.map((issue) => ({ field: issue.path.join('.'), sentence: sentenceOf(issue) }));
}
