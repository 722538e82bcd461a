// A single letter that is a command waits here for the moment in which a scanner's second key would come: no code that begins with N takes
// a vehicle in. A person feels nothing of it. Knows no keys and no commands.
import { slowestGapMs } from './scan-reader.ts';

/** Longer than the longest gap inside a scan, since keys may be handed on late; still short of what a person feels. */
export const heldMs = 2 * slowestGapMs + 10;

type Held = { readonly act: () => void; readonly timer: ReturnType<typeof setTimeout> };
let held: Held | null = null;

function wait(act: () => void): void {
  const beganAt = performance.now();
  const timer = setTimeout(() => {
    // A timer that comes late tells of a busy page: the scanner's next key may stand in line behind it, so that line goes first.
    if (performance.now() - beganAt > 2 * heldMs) {
      wait(act);
      return;
    }
    held = null;
    act();
  }, heldMs);
  held = { act, timer };
}

/** Does it, unless a scanner turns out to be what typed. */
export function holdKey(act: () => void): void {
  dropHeldKey();
  wait(act);
}

/** It was the first letter of a scan. */
export function dropHeldKey(): void {
  if (held !== null) clearTimeout(held.timer);
  held = null;
}

/** Another key came that no scanner sends: it was a person, and what they asked for first is done first. */
export function doHeldKey(): void {
  const act = held?.act;
  dropHeldKey();
  act?.();
}
