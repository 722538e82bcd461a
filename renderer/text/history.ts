// Words of What changed on the vehicle page.
import { sayWholeDaysIn } from './say-day.ts';

export const historyText = {
  title: 'What changed',
  none: 'Nothing has been written down yet. From now on each change stands here, with who and when.',
  reading: 'Reading what changed…',
  older: 'Show older changes',
  noOlder: 'These are all.',
  notSaved: 'Not in the record: it could not be saved, or an older copy of the record was put back by hand.',
  shortened: 'More was changed than is told here.',
  reason: (reason: string) => `Why: ${reason}`,
  what: sayWholeDaysIn,
  change: (from: string, to: string) => `from ${sayWholeDaysIn(from)} to ${sayWholeDaysIn(to)}`,
};
