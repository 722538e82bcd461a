// Numbers that look random and are the same for the same seed, so that a forecast does not flicker. Never for secrets or identities.

/** From 0 up to, and without, 1. */
export type Random = () => number;

/**
 * A generator with 32 bits of state, mixed by the finaliser of MurmurHash3 (Austin Appleby, public domain; constants from memory) over a
 * counter that steps by the golden ratio. Enough for thousands of draws in a forecast.
 */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 4_294_967_296;
  };
}

/** A seed from a text, such as the identity of a vehicle: FNV-1a (Fowler, Noll, Vo), 32 bits. */
export function seedOf(text: string): number {
  let seed = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) seed = Math.imul(seed ^ text.charCodeAt(at), 0x01000193);
  return seed >>> 0;
}
