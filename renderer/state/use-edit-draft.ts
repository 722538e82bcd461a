// Holds what is typed over a fact until it is saved or put back. Drafts outlive the screen: going to the Lot and back loses nothing.
import { useCallback, useRef, useState } from 'react';
import type { z } from 'zod';
import type { AppError } from '../../app/contract/app-error.ts';
import type { Result } from '../../app/domain/shared/result.ts';
import type { ChangeProblem } from '../../app/domain/vehicle/change-problem.ts';
import { errorSentence } from '../text/errors.ts';
import { sayWholeDaysIn } from '../text/say-day.ts';
import {
  draftValue,
  type EditDraft,
  emptyDraft,
  isTouched,
  schemaProblems,
  sentenceAt,
  sentencesForWhole,
  type Typed,
  typeInto,
} from './edit-draft.ts';
import { createStore, useStore } from './store.ts';

/** All drafts of the session by key, '<vehicle>/<list>/<fact>'. */
const drafts = createStore<ReadonlyMap<string, EditDraft<object>>>(new Map());
/** The keys alone, changed only when there is one more or one less: marks on rows need not follow each letter typed. */
const draftKeys = createStore<ReadonlySet<string>>(new Set());

function setDraft(key: string, draft: EditDraft<object>): void {
  drafts.update((all) => new Map(all).set(key, draft));
  draftKeys.update((keys) => (keys.has(key) ? keys : new Set(keys).add(key)));
}

export function dropDraft(key: string): void {
  const rest = new Map(drafts.read());
  if (!rest.delete(key)) return;
  drafts.set(rest);
  draftKeys.set(new Set(rest.keys()));
}

/** Keys of facts with something typed and not saved. */
export function useDraftKeys(): ReadonlySet<string> {
  return useStore(draftKeys);
}

/** Lays values over a fact as if they had been typed, with what stands against them: a refused one-press button becomes a draft. */
export function seedDraft(key: string, edits: object, error: AppError | null = null): void {
  setDraft(key, { edits, problems: error === null ? [] : problemsOf(error) });
}

type FieldOf<Value, Key extends keyof Value> = {
  readonly value: Value[Key];
  readonly onChange: (value: Value[Key]) => void;
  readonly problem: string | undefined;
};
type CentsFieldOf<Value, Key extends keyof Value> = {
  readonly valueCents: Value[Key];
  readonly onChange: (value: Value[Key]) => void;
  readonly problem: string | undefined;
};

export type Editing<Value> = {
  readonly value: Value;
  readonly set: (edits: Partial<Value>) => void;
  /** What a field of the kit needs: its value, what to do when it changes, what stands against it. */
  readonly at: <Key extends keyof Value & string>(key: Key) => FieldOf<Value, Key>;
  readonly centsAt: <Key extends keyof Value & string>(key: Key) => CentsFieldOf<Value, Key>;
  readonly problemAt: (field: string) => string | undefined;
  readonly wholeProblems: readonly string[];
  readonly isTouched: boolean;
  readonly isSaving: boolean;
  /** True when it was saved; then the draft is gone. */
  readonly save: () => Promise<boolean>;
  readonly putBack: () => void;
};

export type Saving<Fact, Value = Typed<Fact>> = {
  /** Judged before anything is asked; the draft may hold blanks that the fact may not. */
  readonly schema: z.ZodType<Fact>;
  readonly save: (fact: Fact) => Promise<Result<unknown, AppError>>;
  /** What the form turns its draft into before it is judged and saved: codes from text, an empty proof to none. */
  readonly finish?: (value: Value) => Result<unknown, readonly ChangeProblem[]>;
  /** Which field of the draft a path of the fact stands for, where the two differ. */
  readonly fieldOf?: (path: string) => string;
};

/** The path of a field as the fact knows it, from the path inside a whole change or take-in. */
function fieldInFact(field: string): string {
  return field.replace(/^(change\.)?(item|value)\./, '');
}

function problemsOf(error: AppError): readonly ChangeProblem[] {
  const atFields = error.problems.map(({ field, sentence }) => ({ field: fieldInFact(field), sentence }));
  // A refusal that names its fields needs no general sentence beside them.
  return atFields.length > 0 ? atFields : [{ field: '', sentence: errorSentence(error) }];
}

export function useEditDraft<Fact extends object, Value extends object = Typed<Fact>>(
  key: string,
  base: Value,
  saving: Saving<Fact, Value>,
): Editing<Value> {
  const draft = (useStore(drafts).get(key) ?? emptyDraft) as EditDraft<Value>;
  const [isSaving, setIsSaving] = useState(false);
  const value = draftValue(base, draft);
  const latest = useRef({ base, saving });
  latest.current = { base, saving };
  const update = useCallback(
    (next: (draft: EditDraft<Value>) => EditDraft<Value>) => {
      setDraft(key, next((drafts.read().get(key) ?? emptyDraft) as EditDraft<Value>));
    },
    [key],
  );
  const set = useCallback((edits: Partial<Value>) => update((before) => typeInto(before, edits)), [update]);
  const refuse = (problems: readonly ChangeProblem[]): false => {
    update((before) => ({ ...before, problems }));
    return false;
  };
  const save = async (): Promise<boolean> => {
    if (isSaving) return false;
    const { saving: now } = latest.current;
    const typed = (drafts.read().get(key) ?? emptyDraft) as EditDraft<Value>;
    const whole = draftValue(latest.current.base, typed);
    const finished = now.finish ? now.finish(whole) : { ok: true as const, value: whole };
    if (!finished.ok) return refuse(finished.error);
    const judged = now.schema.safeParse(finished.value);
    if (!judged.success) {
      const { fieldOf } = now;
      const problems = schemaProblems(judged.error);
      return refuse(fieldOf ? problems.map((problem) => ({ ...problem, field: fieldOf(problem.field) })) : problems);
    }
    setIsSaving(true);
    const answer = await now.save(judged.data);
    setIsSaving(false);
    if (!answer.ok) return refuse(problemsOf(answer.error));
    dropDraft(key);
    return true;
  };
  const problemAt = (field: string) => {
    const sentence = sentenceAt(draft.problems, field);
    return sentence === null ? undefined : sayWholeDaysIn(sentence);
  };
  return {
    value,
    set,
    at: (field) => ({
      value: value[field],
      onChange: (next) => set({ [field]: next } as unknown as Partial<Value>),
      problem: problemAt(field),
    }),
    centsAt: (field) => ({
      valueCents: value[field],
      onChange: (next) => set({ [field]: next } as unknown as Partial<Value>),
      problem: problemAt(field),
    }),
    problemAt,
    wholeProblems: sentencesForWhole(draft.problems, value).map(sayWholeDaysIn),
    isTouched: isTouched(base, draft),
    isSaving,
    save,
    putBack: () => dropDraft(key),
  };
}
