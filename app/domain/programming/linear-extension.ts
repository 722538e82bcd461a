// One order that keeps a set of constraints, and the layers and links for a small picture of them. Wants constraints without a circle.

export type Link = { readonly before: string; readonly after: string };

type Rank = readonly number[];

function compareRanks(a: Rank, b: Rank): number {
  const at = a.findIndex((part, place) => part !== b[place]);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}

function followersOf(links: readonly Link[]): ReadonlyMap<string, readonly string[]> {
  const followers = new Map<string, string[]>();
  for (const { before, after } of links) {
    const list = followers.get(before);
    if (!list) followers.set(before, [after]);
    else if (!list.includes(after)) list.push(after);
  }
  return followers;
}

/**
 * The ids in an order that keeps every link; among those that may come next, the one with the lowest rank, then the one listed first.
 * The same input always gives the same order.
 * @throws when the links form a circle: settle them first.
 */
export function linearExtension(
  items: readonly { readonly id: string; readonly rank: Rank }[],
  links: readonly Link[],
): readonly string[] {
  const followers = followersOf(links);
  const openBefore = new Map(items.map(({ id }) => [id, 0]));
  for (const list of followers.values()) for (const id of list) openBefore.set(id, (openBefore.get(id) ?? 0) + 1);
  const waiting = [...items].sort((a, b) => compareRanks(a.rank, b.rank));
  const order: string[] = [];
  while (waiting.length > 0) {
    const at = waiting.findIndex(({ id }) => openBefore.get(id) === 0);
    const [next] = at < 0 ? [] : waiting.splice(at, 1);
    if (!next) throw new Error(`The order goes round in a circle: ${waiting.map(({ id }) => id).join(', ')}`);
    order.push(next.id);
    for (const id of followers.get(next.id) ?? []) openBefore.set(id, (openBefore.get(id) ?? 0) - 1);
  }
  return order;
}

/** The layer of each step: 0 when nothing comes before it, else one more than the highest layer among what does (longest path). */
export function layersOf(order: readonly string[], links: readonly Link[]): ReadonlyMap<string, number> {
  const layers = new Map(order.map((id) => [id, 0]));
  const followers = followersOf(links);
  for (const id of order)
    for (const after of followers.get(id) ?? [])
      layers.set(after, Math.max(layers.get(after) ?? 0, (layers.get(id) ?? 0) + 1));
  return layers;
}

/** The links that a picture needs: those which no chain of other links already implies (the transitive reduction). */
export function neededLinks(order: readonly string[], links: readonly Link[]): readonly Link[] {
  const followers = followersOf(links);
  const reachable = new Map<string, ReadonlySet<string>>();
  const needed: Link[] = [];
  for (const before of [...order].reverse()) {
    const direct = [...(followers.get(before) ?? [])].sort((a, b) => order.indexOf(a) - order.indexOf(b));
    const reached = new Set<string>();
    for (const after of direct) {
      if (!reached.has(after)) needed.unshift({ before, after });
      reached.add(after);
      for (const further of reachable.get(after) ?? []) reached.add(further);
    }
    reachable.set(before, reached);
  }
  return needed;
}
