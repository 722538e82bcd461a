// What a vehicle has waited for and waits for now, as stretches of days taken from the dated facts. Which wait a day is charged to
// is decided in held-days.ts.

import { codeName, type NamedKinds } from '../codes/code-name.ts';
import { failedRuns, promisedFor } from '../codes/request-life.ts';
import { jobProgress } from '../programming/job-progress.ts';
import { jobWaits } from '../programming/job-waits.ts';
import { refusalSettledOn } from '../readiness/refused-code.ts';
import { inspectedOn } from '../readiness/work-gates.ts';
import { type Day, laterDay } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { WaitCause } from './cause.ts';
import type { StageSpan } from './stages.ts';

export type Wait = {
  readonly cause: WaitCause;
  /** First day of waiting. */
  readonly from: Day;
  /** The day on which it was over (that day is no longer waited for); null while open. */
  readonly until: Day | null;
  /** Promised or expected end of an open wait; null when nobody has named one. */
  readonly expectedOn: Day | null;
  readonly what: string;
  /** The part, code request or sublet work that is waited for; none for a wait that is no single fact. */
  readonly factId?: string;
};

function partWaits({ parts }: Vehicle): Wait[] {
  return parts.flatMap((part): Wait[] => {
    if (part.orderedOn === null) return [];
    const what = part.supplier ? `${part.what} from ${part.supplier}` : part.what;
    return [
      {
        cause: 'part',
        from: part.orderedOn,
        until: part.receivedOn ?? part.returnedOn,
        expectedOn: promisedFor(part),
        what,
        factId: part.id,
      },
    ];
  });
}

function codeWaits({ codeRequests }: Vehicle, kinds?: NamedKinds): Wait[] {
  return codeRequests.flatMap((request): Wait[] => {
    if (request.askedOn === null) return [];
    const name = codeName(request, kinds);
    const what = request.askedOf ? `${name} from ${request.askedOf}` : name;
    const { id: factId, askedOn: from } = request;
    const until = request.answeredOn ?? request.closedOn;
    return [{ cause: 'code', from, until, expectedOn: promisedFor(request), what, factId }];
  });
}

function subletWaits({ sublets }: Vehicle): Wait[] {
  return sublets.flatMap((sublet): Wait[] => {
    if (sublet.sentOn === null) return [];
    const what = sublet.supplier ? `${sublet.what} at ${sublet.supplier}` : sublet.what;
    const { id: factId, sentOn: from, backOn: until } = sublet;
    return [{ cause: 'sublet', from, until, expectedOn: promisedFor(sublet), what, factId }];
  });
}

/** A job waits for programming while everything that it waits for as a whole is in hand and one of its steps could be done. */
function programmingWaits(vehicle: Vehicle, kinds?: NamedKinds): Wait[] {
  return vehicle.jobs.flatMap((job): Wait[] =>
    jobWaits(vehicle, jobProgress(vehicle, job, kinds)).map(({ from, until, stepTitle }) => ({
      cause: 'programming',
      from,
      until,
      expectedOn: null,
      what: `${job.title}: ${stepTitle}`,
    })),
  );
}

/** A fault waits for its decision; a code that was refused, or does not work, waits for somebody to find another way. */
function decisionWaits(vehicle: Vehicle, kinds?: NamedKinds): Wait[] {
  const faults = vehicle.faults.map(
    (fault): Wait => ({
      cause: 'decide',
      from: fault.foundOn,
      until: fault.decision?.decidedOn ?? null,
      expectedOn: null,
      what: fault.what,
    }),
  );
  const refused = vehicle.codeRequests.flatMap((request): Wait[] => {
    if (request.outcome !== 'refused' || request.answeredOn === null) return [];
    const what = `another way: ${codeName(request, kinds)} was refused`;
    const until = refusalSettledOn(vehicle, request);
    return [{ cause: 'decide', from: request.answeredOn, until, expectedOn: null, what }];
  });
  const wrong = vehicle.codeRequests.flatMap((request) =>
    failedRuns(request).map((run): Wait => {
      const what = `another way: ${codeName(request, kinds)} does not work`;
      return { cause: 'decide', ...run, expectedOn: null, what };
    }),
  );
  return [...faults, ...refused, ...wrong];
}

function arrivalWaits(vehicle: Vehicle): Wait[] {
  const { arrival, purchase } = vehicle;
  if (arrival.arrivedOn === null) return [];
  const from = arrival.arrivedOn;
  return [
    { cause: 'inspect', from, until: inspectedOn(vehicle), expectedOn: null, what: 'scan on arrival' },
    {
      cause: 'paper',
      from,
      until: purchase.paperReceivedOn,
      expectedOn: purchase.paperExpectedOn,
      what: purchase.paperKind || 'title or registration paper',
    },
  ];
}

/** Each run of days on which the work was done and not proven, or proven and not presented, as it stood then. */
function stageWaits(spans: readonly StageSpan[]): Wait[] {
  return spans.flatMap(({ stage, from, nextText }, index): Wait[] => {
    if (stage !== 'verify' && stage !== 'present') return [];
    const next = spans[index + 1];
    // Only the last span of the run speaks for it: what was still missing then is what held it longest.
    if (next?.stage === stage) return [];
    let first = index;
    while (spans[first - 1]?.stage === stage) first -= 1;
    const since = spans[first]?.from ?? from;
    return [{ cause: stage, from: since, until: next?.from ?? null, expectedOn: null, what: nextText() }];
  });
}

/** Every wait in the record that lasted at least a day or is still open. */
export function waitsOf(vehicle: Vehicle, spans: readonly StageSpan[], kinds?: NamedKinds): readonly Wait[] {
  const all = [
    ...codeWaits(vehicle, kinds),
    ...partWaits(vehicle),
    ...subletWaits(vehicle),
    ...programmingWaits(vehicle, kinds),
    ...decisionWaits(vehicle, kinds),
    ...arrivalWaits(vehicle),
    ...stageWaits(spans),
  ];
  return all
    .map((wait) => ({ ...wait, from: laterDay(wait.from, vehicle.purchase.boughtOn) }))
    .filter((wait) => wait.until === null || wait.until > wait.from);
}
