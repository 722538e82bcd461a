// What is being tried out on a vehicle, as the changes that keeping it would make. Pure; asks and keeps nothing itself.
import { codeName, type NamedKinds } from '../../../../app/domain/codes/code-name.ts';
import type { DecisionKind } from '../../../../app/domain/diagnosis/fault.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';
import type { VehicleChange } from '../../../../app/domain/vehicle/change.ts';
import type { Vehicle } from '../../../../app/domain/vehicle/vehicle.ts';

export type Tried = {
  /** Null: as it is. */
  readonly askingCents: number | null;
  readonly extraCents: number | null;
  readonly extraWhat: string;
  /** Key of an open wait and the day it is now expected to end; both are needed. */
  readonly waitKey: string;
  readonly expectedOn: Day | null;
  readonly faultId: string;
  readonly decision: DecisionKind | '';
  /** Needed to leave a fault as it is. */
  readonly reason: string;
};

export const nothingTried: Tried = {
  askingCents: null,
  extraCents: null,
  extraWhat: '',
  waitKey: '',
  expectedOn: null,
  faultId: '',
  decision: '',
  reason: '',
};

export type OpenWait = {
  readonly key: string;
  readonly what: string;
  readonly withDay: (expectedOn: Day) => VehicleChange;
};

/** The stamp is the program's; a draft goes without it. */
function draftOf<Fact extends { readonly entered: unknown }>({
  entered: _kept,
  ...draft
}: Fact): Omit<Fact, 'entered'> {
  return draft;
}

/** The fact with this day as the only promise: one made at a chase would go before it. */
function promisedAnew<Fact extends { readonly expectedOn: Day | null; readonly entered: unknown }>(
  fact: Fact,
  expectedOn: Day,
) {
  return { ...draftOf(fact), expectedOn, chases: [] };
}

/** Everything under way whose end can be promised for another day. */
export function openWaitsOf(vehicle: Vehicle, kinds?: NamedKinds): readonly OpenWait[] {
  const { arrival, purchase, parts, codeRequests, sublets } = vehicle;
  const waits: OpenWait[] = [];
  if (arrival.arrivedOn === null)
    waits.push({
      key: 'arrival',
      what: 'Arrival',
      withDay: (expectedOn) => ({ kind: 'set', section: 'arrival', value: { ...arrival, expectedOn } }),
    });
  for (const part of parts)
    if (part.orderedOn !== null && part.receivedOn === null && part.returnedOn === null)
      waits.push({
        key: part.id,
        what: part.what,
        withDay: (expectedOn) => ({ kind: 'put', list: 'parts', item: promisedAnew(part, expectedOn) }),
      });
  for (const request of codeRequests)
    if (request.askedOn !== null && request.answeredOn === null && request.closedOn === null)
      waits.push({
        key: request.id,
        what: codeName(request, kinds),
        withDay: (expectedOn) => ({ kind: 'put', list: 'codeRequests', item: promisedAnew(request, expectedOn) }),
      });
  for (const sublet of sublets)
    if (sublet.sentOn !== null && sublet.backOn === null)
      waits.push({
        key: sublet.id,
        what: sublet.what,
        withDay: (expectedOn) => ({ kind: 'put', list: 'sublets', item: promisedAnew(sublet, expectedOn) }),
      });
  if (purchase.paperReceivedOn === null)
    waits.push({
      key: 'paper',
      what: purchase.paperKind || 'Title or registration paper',
      withDay: (paperExpectedOn) => ({ kind: 'set', section: 'purchase', value: { ...purchase, paperExpectedOn } }),
    });
  return waits;
}

/** Faults whose decision can still be another one. */
export function openFaultsOf({ faults }: Vehicle): Vehicle['faults'] {
  return faults.filter(({ doneOn }) => doneOn === null);
}

/** In the order in which they would be kept; none while nothing is complete. `newId` is the identity of the extra cost. */
export function whatIfChanges(
  vehicle: Vehicle,
  tried: Tried,
  { today, newId }: { readonly today: Day; readonly newId: string },
): VehicleChange[] {
  const changes: VehicleChange[] = [];
  if (tried.askingCents !== null && tried.askingCents !== vehicle.targets.askingCents)
    changes.push({
      kind: 'set',
      section: 'targets',
      value: { ...vehicle.targets, askingCents: tried.askingCents },
    });
  const wait = openWaitsOf(vehicle).find(({ key }) => key === tried.waitKey);
  if (wait && tried.expectedOn !== null) changes.push(wait.withDay(tried.expectedOn));
  const fault = openFaultsOf(vehicle).find(({ id }) => id === tried.faultId);
  if (fault && tried.decision !== '' && tried.decision !== fault.decision?.kind)
    changes.push({
      kind: 'put',
      list: 'faults',
      item: {
        ...draftOf(fault),
        decision: {
          kind: tried.decision,
          decidedOn: today,
          reason: tried.reason.trim() || (fault.decision?.reason ?? ''),
          estimateMinutes: fault.decision?.estimateMinutes ?? null,
        },
      },
    });
  if (tried.extraCents !== null && tried.extraCents !== 0)
    changes.push({
      kind: 'put',
      list: 'otherCosts',
      item: {
        id: newId,
        spentOn: today,
        what: tried.extraWhat.trim() || 'Extra cost',
        amountCents: tried.extraCents,
      },
    });
  return changes;
}
