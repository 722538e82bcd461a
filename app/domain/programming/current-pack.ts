// The rule pack by which this shop plans: its own edited copy, or the one that the program comes with.
import { generalPack } from './general-pack.ts';
import type { RulePack } from './rule-pack.ts';

/** `rulePacks` holds the packs that the shop has edited, each instead of the shipped one of the same id. */
export function currentPack({ rulePacks }: { readonly rulePacks: readonly RulePack[] }): RulePack {
  return rulePacks.find(({ id }) => id === generalPack.id) ?? generalPack;
}
