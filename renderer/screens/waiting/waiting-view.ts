// How the person looks at Waiting: by cost or by provider, and which line the cursor is on. Kept while another screen is shown. Pure in
// the grouping.
import type { WaitingLineView } from '../../../app/contract/waiting-view.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { createStore } from '../../state/store.ts';

export type WaitingLook = { readonly by: 'cost' | 'provider'; readonly cursorKey: string | null };

export const waitingLookStore = createStore<WaitingLook>({ by: 'cost', cursorKey: null });

export function changeWaitingLook(change: Partial<WaitingLook>): void {
  waitingLookStore.update((look) => ({ ...look, ...change }));
}

export function keyOf({ vehicleId, factId }: Pick<WaitingLineView, 'vehicleId' | 'factId'>): string {
  return `${vehicleId}/${factId}`;
}

export type ProviderGroup = {
  /** The same for one provider however it was typed; empty for lines without one. */
  readonly key: string;
  readonly provider: string;
  readonly lines: readonly WaitingLineView[];
  readonly vehicles: number;
  readonly chaseOn: Day | null;
  readonly shareCents: number | null;
};

/** One group a provider, in the order in which their dearest lines come; a call to one covers all of its lines. */
export function byProvider(lines: readonly WaitingLineView[]): readonly ProviderGroup[] {
  const groups = new Map<string, WaitingLineView[]>();
  for (const line of lines) {
    const key = line.provider.trim().replace(/\s+/g, ' ').toLowerCase();
    const found = groups.get(key);
    if (found) found.push(line);
    else groups.set(key, [line]);
  }
  const made = [...groups].map(([key, of]): ProviderGroup => {
    const shares = of.map(({ shareCents }) => shareCents);
    return {
      key,
      provider: of[0]?.provider ?? '',
      lines: of,
      vehicles: new Set(of.map(({ vehicleId }) => vehicleId)).size,
      chaseOn: of.map(({ chaseOn }) => chaseOn).sort()[0] ?? null,
      shareCents: shares.includes(null) ? null : shares.reduce<number>((sum, cents) => sum + (cents ?? 0), 0),
    };
  });
  // A stable sort: where no money is seen the groups stay in the order of the list.
  return made.sort((a, b) => (b.shareCents ?? 0) - (a.shareCents ?? 0));
}
