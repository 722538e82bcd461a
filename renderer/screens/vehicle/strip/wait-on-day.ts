// The ordered part, asked-for code or sent-out work that a day of the strip waited for, from the record. Pure; the words are in renderer/text.

import { codeName, type NamedKinds } from '../../../../app/domain/codes/code-name.ts';
import { promisedFor } from '../../../../app/domain/codes/request-life.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';
import type { Vehicle } from '../../../../app/domain/vehicle/vehicle.ts';

export type WaitOnDay = {
  readonly kind: 'part' | 'code' | 'sublet';
  readonly begunOn: Day;
  readonly from: string;
  readonly promisedFor: Day | null;
  readonly endedOn: Day | null;
};

/** What `what` of a stretch names and what was under way on `day`; null when nothing of the kind was. */
export function waitOnDay(
  { parts, codeRequests, sublets }: Pick<Vehicle, 'parts' | 'codeRequests' | 'sublets'>,
  what: string,
  day: Day,
  kinds?: NamedKinds,
): WaitOnDay | null {
  const waits: (Omit<WaitOnDay, 'begunOn'> & { readonly name: string; readonly begunOn: Day | null })[] = [
    ...parts.map((part) => ({
      kind: 'part' as const,
      name: part.what,
      begunOn: part.orderedOn,
      from: part.supplier,
      promisedFor: promisedFor(part),
      endedOn: part.receivedOn,
    })),
    ...codeRequests.map((request) => ({
      kind: 'code' as const,
      name: codeName(request, kinds),
      begunOn: request.askedOn,
      from: request.askedOf,
      promisedFor: promisedFor(request),
      endedOn: request.answeredOn ?? request.closedOn,
    })),
    ...sublets.map((sublet) => ({
      kind: 'sublet' as const,
      name: sublet.what,
      begunOn: sublet.sentOn,
      from: sublet.supplier,
      promisedFor: promisedFor(sublet),
      endedOn: sublet.backOn,
    })),
  ];
  for (const { name, begunOn, ...wait } of waits)
    if (begunOn !== null && begunOn <= day && (wait.endedOn ?? day) >= day && name !== '' && what.includes(name))
      return { ...wait, begunOn };
  return null;
}
