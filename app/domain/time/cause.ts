// The causes a day can be charged to, in the fixed order that settles ties. Looks (colour, hatch) are in cause-look.ts.
import { z } from 'zod';

/**
 * Waits come first, in the order in which they win a tie: what depends on somebody outside the shop before what the shop can do itself.
 * The order is this project's own (no source); it only matters when two waits end on the same day.
 */
export const waitCauses = [
  'code',
  'part',
  'sublet',
  'programming',
  'decide',
  'inspect',
  'verify',
  'present',
  'paper',
] as const;
export type WaitCause = (typeof waitCauses)[number];

export const causeSchema = z.enum(['transit', ...waitCauses, 'work', 'idle', 'ready']);
/** What one day of holding a vehicle was spent on. */
export type Cause = z.infer<typeof causeSchema>;

/** In the order in which they are listed to a person: along the way from purchase to sale, idle and ready last. */
export const causesInOrder: readonly Cause[] = [
  'transit',
  'inspect',
  'decide',
  'part',
  'code',
  'programming',
  'sublet',
  'work',
  'verify',
  'present',
  'paper',
  'idle',
  'ready',
];

/** What a vehicle stands at today: a cause, or sold. */
export const standingSchema = z.enum([...causeSchema.options, 'sold']);
export type Standing = z.infer<typeof standingSchema>;

export const standingNames: Readonly<Record<Standing, string>> = {
  transit: 'in transit',
  inspect: 'to inspect',
  decide: 'to decide',
  part: 'part',
  code: 'code',
  programming: 'programming',
  sublet: 'sublet',
  work: 'in work',
  verify: 'to verify',
  present: 'to present',
  paper: 'paper',
  idle: 'idle',
  ready: 'ready',
  sold: 'sold',
};

/** What each standing means, in a sentence for help and legends. */
export const standingMeanings: Readonly<Record<Standing, string>> = {
  transit: 'Bought and not arrived yet.',
  inspect: 'Here, and not scanned yet.',
  decide: 'A fault was found and nobody has decided what to do about it.',
  part: 'A part is ordered and not here.',
  code: 'An unlock code was asked for and has not been answered.',
  programming: 'Everything for a programming job is in hand and it is not finished.',
  sublet: 'The vehicle or a unit of it is with somebody else.',
  work: 'Work, a scan or a programming attempt was booked on that day.',
  verify: 'The work is done; the post-repair scan or a check has not proved it yet.',
  present: 'Proven; cleaning, photographs or the price are missing.',
  paper: 'Title or registration paper has not come.',
  idle: 'Nobody had anything to wait for and nothing happened. These days can be won back.',
  ready: 'Nothing stands between this vehicle and its sale.',
  sold: 'Sold.',
};
