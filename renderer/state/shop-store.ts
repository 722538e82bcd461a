// The shop's settings as read, and what has been typed over them. Drafts live here, not in the screen: leaving the screen loses nothing.

import type { ShopPart } from '../../app/contract/channels.ts';
import type { ShopView } from '../../app/contract/views.ts';
import type { ChangeProblem } from '../../app/domain/vehicle/change-problem.ts';
import { ask, on } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';
import { takeDesk } from './desk-store.ts';
import { schemaProblems } from './edit-draft.ts';
import {
  isPartTouched,
  noDrafts,
  partSchemas,
  problemsInside,
  type ShopDrafts,
  type ShopPartName,
  shopParts,
} from './shop-parts.ts';
import { createStore } from './store.ts';

export type ShopState = {
  /** Null until it is read, and for who may not read it. */
  readonly view: ShopView | null;
  /** Why it could not be read; empty otherwise. */
  readonly trouble: string;
  readonly drafts: ShopDrafts;
  readonly problems: Readonly<Partial<Record<ShopPartName, readonly ChangeProblem[]>>>;
  readonly saving: ShopPartName | null;
  /** Goes up when a draft is thrown away, so that fields forget what could not be read in them. */
  readonly discards: number;
};

export const shopStore = createStore<ShopState>({
  view: null,
  trouble: '',
  drafts: noDrafts,
  problems: {},
  saving: null,
  discards: 0,
});

export function hasShopDrafts({ view, drafts }: ShopState): boolean {
  return view !== null && shopParts.some((part) => isPartTouched(part, drafts, view.shop));
}

export async function readShop(): Promise<void> {
  const answer = await ask('shop:read', {});
  shopStore.update((state) =>
    answer.ok
      ? { ...state, view: answer.value, trouble: '' }
      : { ...state, view: null, trouble: errorSentence(answer.error) },
  );
}

/** Takes what was typed into a part. `field` is what was typed at: what was wrong there is taken back until it is judged again. */
export function typeIntoShop<Part extends ShopPartName>(part: Part, value: ShopDrafts[Part], field: string): void {
  shopStore.update((state) => ({
    ...state,
    drafts: { ...state.drafts, [part]: value },
    problems: {
      ...state.problems,
      [part]: (state.problems[part] ?? []).filter((problem) => problem.field !== field && problem.field !== ''),
    },
  }));
}

export function discardShopDraft(part: ShopPartName): void {
  shopStore.update((state) => ({
    ...state,
    drafts: { ...state.drafts, [part]: null },
    problems: { ...state.problems, [part]: [] },
    discards: state.discards + 1,
  }));
}

function setProblems(part: ShopPartName, problems: readonly ChangeProblem[]): void {
  shopStore.update((state) => ({ ...state, saving: null, problems: { ...state.problems, [part]: problems } }));
}

/** The part as the contract takes it, or what stands against it. */
function readPart(part: ShopPartName, value: unknown): { value: ShopPart } | { problems: readonly ChangeProblem[] } {
  const parsed = partSchemas[part].safeParse(value);
  if (!parsed.success) return { problems: schemaProblems(parsed.error) };
  return { value: { part, value: parsed.data } as ShopPart };
}

/** Saves one part. True when it is kept; otherwise the draft stays and the sentences stand at their fields. */
export async function saveShopPart(part: ShopPartName): Promise<boolean> {
  const { view, drafts, saving } = shopStore.read();
  if (view === null || saving !== null) return false;
  const draft = drafts[part] ?? view.shop[part];
  const read = readPart(part, draft);
  if ('problems' in read) {
    setProblems(part, read.problems);
    return false;
  }
  shopStore.update((state) => ({ ...state, saving: part }));
  const answer = await ask('shop:change', { baseRevision: view.revision, change: read.value });
  if (!answer.ok) {
    const { code, problems } = answer.error;
    const whole = { field: '', sentence: errorSentence(answer.error) };
    setProblems(
      part,
      code === 'refused' && problems.length > 0
        ? problemsInside(part, problems)
        : [whole, ...problemsInside(part, problems)],
    );
    if (code === 'stale-revision') await readShop();
    return false;
  }
  shopStore.update((state) => ({
    ...state,
    view: answer.value.view,
    saving: null,
    // What was typed while it was being written is a draft still.
    drafts: state.drafts[part] === drafts[part] ? { ...state.drafts, [part]: null } : state.drafts,
    problems: { ...state.problems, [part]: [] },
  }));
  takeDesk(answer.value.desk, new Date().toISOString());
  return true;
}

/** Reads the settings again, once they have been read, when the program says that everything may be different. */
export function followShop(): () => void {
  return on('lot:all-changed', () => {
    const { view, saving } = shopStore.read();
    if (view !== null && saving === null) void readShop();
  });
}
