// For each open code request of a vehicle: how long such a code usually takes, and the next day to chase it. By the same history and the
// same rule as Waiting; asks nothing of its own.
import type { Day } from '../shared/day.ts';
import { type NextChase, nextChase } from '../time/next-chase.ts';
import type { TurnaroundHistory } from '../time/turnaround.ts';
import { codeGroups } from '../time/turnaround-cases.ts';
import { type Usual, usualTurnaround } from '../time/usual-turnaround.ts';
import type { WorkingCalendar } from '../time/working-calendar.ts';
import type { CodeRequest } from './code-request.ts';

export type RequestUsual = {
  readonly requestId: string;
  /** Null where too few such requests were ever answered. */
  readonly usual: Usual | null;
  /** Null while it is not asked. */
  readonly chase: NextChase | null;
};

export type UsualContext = {
  readonly history: TurnaroundHistory;
  readonly calendar: WorkingCalendar;
  readonly fewestCases: number;
  readonly today: Day;
};

/** Requests that are neither answered nor closed; of one that is not asked yet only how long such codes take. */
export function codesUsual(requests: readonly CodeRequest[], context: UsualContext): readonly RequestUsual[] {
  const { history, calendar, fewestCases, today } = context;
  return requests
    .filter(({ answeredOn, closedOn }) => answeredOn === null && closedOn === null)
    .map(({ id, kind, askedOf, askedOn, expectedOn, chases }) => {
      const asking = { kind: 'code', groups: codeGroups(askedOf, kind) } as const;
      const usual = usualTurnaround(history, asking, { asOf: today, fewestCases });
      const chase = askedOn === null ? null : nextChase({ askedOn, expectedOn, chases }, usual, { today, calendar });
      return { requestId: id, usual, chase };
    });
}
