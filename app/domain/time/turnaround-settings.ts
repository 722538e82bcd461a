// What the shop assumes where its own history is silent: days of waiting and minutes of work. Assumptions of this project to start from.
import { z } from 'zod';

/**
 * Everything that takes days. From outside: arrival, part, code, sublet, paper. The shop's own: inspect (arrived to scanned), unseen
 * (scanned to all work done, for what no scan has shown yet), decide, fault (decided to done with everything it needed), order, ask and
 * send (needed to ordered, asked, sent), programming and repair (everything in hand to done), verify, present.
 */
export const turnaroundKinds = [
  'arrival',
  'inspect',
  'unseen',
  'decide',
  'fault',
  'order',
  'part',
  'ask',
  'code',
  'send',
  'sublet',
  'programming',
  'repair',
  'verify',
  'present',
  'paper',
] as const;
export type TurnaroundKind = (typeof turnaroundKinds)[number];

/** The time that a kind is counted in: the shop's own turns in days on which it works, all else in calendar days. */
export const timeOfKind: Readonly<Record<TurnaroundKind, 'calendar' | 'turn'>> = {
  arrival: 'calendar',
  inspect: 'turn',
  unseen: 'calendar',
  decide: 'turn',
  fault: 'calendar',
  order: 'turn',
  part: 'calendar',
  ask: 'turn',
  code: 'calendar',
  send: 'turn',
  sublet: 'calendar',
  programming: 'turn',
  repair: 'turn',
  verify: 'turn',
  present: 'turn',
  paper: 'calendar',
};

const dayCountSchema = z.int().min(0).max(365);
const minuteSchema = z.int().min(0).max(6000);

export const turnaroundSettingsSchema = z.strictObject({
  /** A group of earlier cases counts from this many on; with fewer the wider group is asked. */
  fewestCases: z.int().min(1).max(100),
  /** Days for each kind, in its own time, where no group has enough cases. */
  days: z.record(z.enum(turnaroundKinds), dayCountSchema),
  /** Minutes of work where nobody has estimated any. */
  minutes: z.strictObject({
    inspect: minuteSchema,
    repair: minuteSchema,
    step: minuteSchema,
    fit: minuteSchema,
    verify: minuteSchema,
    present: minuteSchema,
  }),
});
export type TurnaroundSettings = z.infer<typeof turnaroundSettingsSchema>;

/** To start from, until the shop sets its own ("common practice, no source"). */
export const firstTurnaroundSettings: TurnaroundSettings = {
  fewestCases: 5,
  days: {
    arrival: 4,
    inspect: 1,
    unseen: 14,
    decide: 2,
    fault: 7,
    order: 1,
    part: 5,
    ask: 1,
    code: 4,
    send: 2,
    sublet: 5,
    programming: 1,
    repair: 2,
    verify: 1,
    present: 2,
    paper: 14,
  },
  minutes: { inspect: 45, repair: 90, step: 20, fit: 30, verify: 45, present: 90 },
};
