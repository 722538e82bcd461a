// The next thing to do on a vehicle: one item of one gate. Who acts on it and how it is said to a person is decided by the caller.
import { type Gate, type GateItem, isHolding } from './gate.ts';
import type { Readiness } from './gates.ts';

/** The first gate of the proof: everything before it is the work itself. */
const firstProofGate = 'post-scan';

function itemsOf(gates: readonly Gate[]): readonly GateItem[] {
  return gates.filter(isHolding).flatMap((gate) => gate.items);
}

/**
 * While work is open: the arrival; then the first item along the way that the shop itself can do, else the first that somebody outside
 * owes. A scan or a signature that proves the work is nobody's next move before the work is done. After it: the first item along the way,
 * the paper last. Null when nothing holds. Own definition ("common practice, no source").
 */
export function nextItem(readiness: Pick<Readiness, 'gates' | 'workFinishedOn'>): GateItem | null {
  const { gates, workFinishedOn } = readiness;
  if (workFinishedOn !== null) return itemsOf(gates)[0] ?? null;
  const proof = gates.findIndex((gate) => gate.key === firstProofGate);
  const items = itemsOf(proof < 0 ? gates : gates.slice(0, proof));
  const arrival = itemsOf(gates.filter((gate) => gate.key === 'arrived'))[0];
  return arrival ?? items.find((item) => item.who !== 'outside') ?? items[0] ?? null;
}
