// Decides which constraints of a job can hold together, and names the rules of every conflict. Sets nothing aside in silence.
import type { AcceptedContradiction } from './maker-order.ts';
import type { Constraint } from './plan-constraints.ts';

/** A circle of constraints, first to last, of which `setAside` is the one that the shown order does not keep. */
export type Conflict = {
  readonly kind: 'cycle' | 'pack-against-maker';
  readonly circle: readonly Constraint[];
  /** Null for a circle in the pack that the maker's order happens to break. */
  readonly setAside: Constraint | null;
  readonly accepted: AcceptedContradiction | null;
};

class Graph {
  private readonly leaving = new Map<string, Constraint[]>();

  add(constraint: Constraint): void {
    const list = this.leaving.get(constraint.before);
    if (list) list.push(constraint);
    else this.leaving.set(constraint.before, [constraint]);
  }

  /** The shortest way from one step to another, the first found among equals; null when there is none. */
  wayBetween(from: string, to: string): readonly Constraint[] | null {
    if (from === to) return [];
    const reachedBy = new Map<string, Constraint>();
    const queue = [from];
    for (let at = queue.shift(); at !== undefined; at = queue.shift())
      for (const constraint of this.leaving.get(at) ?? []) {
        if (constraint.after === from || reachedBy.has(constraint.after)) continue;
        reachedBy.set(constraint.after, constraint);
        if (constraint.after === to) return this.traceBack(reachedBy, from, to);
        queue.push(constraint.after);
      }
    return null;
  }

  private traceBack(reachedBy: ReadonlyMap<string, Constraint>, from: string, to: string): readonly Constraint[] {
    const way: Constraint[] = [];
    for (let at = to; at !== from; ) {
      const step = reachedBy.get(at);
      if (!step) break;
      way.unshift(step);
      at = step.before;
    }
    return way;
  }
}

/** Takes constraints one after the other; one that would close a circle is reported with that circle and left out. */
function takeInTurn(graph: Graph, constraints: readonly Constraint[]) {
  const kept: Constraint[] = [];
  const circles: { readonly setAside: Constraint; readonly circle: readonly Constraint[] }[] = [];
  for (const constraint of constraints) {
    const wayBack = graph.wayBetween(constraint.after, constraint.before);
    if (wayBack) {
      circles.push({ setAside: constraint, circle: [constraint, ...wayBack] });
    } else {
      graph.add(constraint);
      kept.push(constraint);
    }
  }
  return { kept, circles };
}

/**
 * The maker's constraints come first, so a rule of the pack that does not agree with them gives way; within each, an earlier one goes
 * before a later one. What is kept has no circle, and everything that is not kept is in a conflict.
 */
export function settleConstraints(
  maker: readonly Constraint[],
  pack: readonly Constraint[],
  accepted: readonly AcceptedContradiction[],
): { readonly kept: readonly Constraint[]; readonly conflicts: readonly Conflict[] } {
  const graph = new Graph();
  const fromMaker = takeInTurn(graph, maker);
  const fromPack = takeInTurn(graph, pack);
  // The pack by itself as well: a fault of its own must not go unseen because the maker's order happens to break the circle.
  const packAlone = takeInTurn(new Graph(), pack);
  const acceptanceOf = (one: Constraint) =>
    accepted.find(({ ruleId, before, after }) => ruleId === one.ruleId && before === one.before && after === one.after);
  const ofPack = fromPack.circles.map(
    (one): Conflict =>
      one.circle.every(({ from }) => from === 'pack')
        ? { kind: 'cycle', ...one, accepted: null }
        : { kind: 'pack-against-maker', ...one, accepted: acceptanceOf(one.setAside) ?? null },
  );
  const named = new Set(ofPack.filter(({ kind }) => kind === 'cycle').map(({ setAside }) => setAside));
  const setAsideTogether = new Set(ofPack.map(({ setAside }) => setAside));
  return {
    kept: [...fromMaker.kept, ...fromPack.kept],
    conflicts: [
      ...fromMaker.circles.map((one): Conflict => ({ kind: 'cycle', ...one, accepted: null })),
      ...packAlone.circles
        .filter(({ setAside }) => !named.has(setAside))
        .map(({ setAside, circle }): Conflict => {
          return { kind: 'cycle', circle, setAside: setAsideTogether.has(setAside) ? setAside : null, accepted: null };
        }),
      ...ofPack,
    ],
  };
}
