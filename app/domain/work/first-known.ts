// The day from which something needed was known to the shop. Only about days; what was needed is the caller's business.
import type { Day } from '../shared/day.ts';

/** The day it was noted, or the earlier day on which somebody acted on it before anybody noted it. */
export function firstKnown(notedOn: Day, actedOn: Day | null): Day {
  return actedOn !== null && actedOn < notedOn ? actedOn : notedOn;
}
