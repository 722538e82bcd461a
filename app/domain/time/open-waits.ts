// The open items that somebody outside the shop decides: parts, codes, sublet work, each with what the shop must do first.
import { codeName } from '../codes/code-name.ts';
import { failsSince, promisedFor } from '../codes/request-life.ts';
import { isOpenRepair } from '../diagnosis/fault.ts';
import { jobProgress } from '../programming/job-progress.ts';
import { refusalSettledOn } from '../readiness/refused-code.ts';
import { firstKnown } from '../work/first-known.ts';
import { itemIds, question, type Sitting, type Sketch } from './open-item.ts';
import { codeGroups, providerGroups } from './turnaround-cases.ts';

/** Order, wait, and fit where no repair and no programming job does. */
export function partItems(sitting: Sitting): Sketch[] {
  const { vehicle, settings, arrival } = sitting;
  return vehicle.parts.flatMap((part): Sketch[] => {
    if (part.fittedOn !== null || part.returnedOn !== null) return [];
    const place = { list: 'parts', id: part.id } as const;
    const from = part.supplier ? ` from ${part.supplier}` : '';
    const items: Sketch[] = [];
    if (part.orderedOn === null) {
      const wait = question('order', [], sitting, { since: part.neededOn });
      const order = { id: `order:${part.id}`, what: `Order ${part.what}`, cause: 'idle', minutes: 0 } as const;
      items.push({ ...order, place, after: [], wait });
    }
    if (part.receivedOn === null)
      items.push({
        id: itemIds.part(part.id),
        what: `${part.what}${from}`,
        cause: 'part',
        place,
        after: part.orderedOn === null ? [`order:${part.id}`] : [],
        wait: question('part', providerGroups(part.supplier), sitting, {
          since: part.orderedOn,
          promisedOn: part.orderedOn === null ? null : promisedFor(part),
        }),
        minutes: 0,
      });
    const isFittedElsewhere =
      vehicle.faults.some((fault) => fault.id === part.faultId && (isOpenRepair(fault) || fault.decision === null)) ||
      vehicle.jobs.some(
        (job) => job.modules.some(({ partId }) => partId === part.id) && !jobProgress(vehicle, job).isClosed,
      );
    if (!isFittedElsewhere) {
      const wait = question('repair', [], sitting, { since: part.receivedOn });
      const fit = { id: `fit:${part.id}`, what: `Fit ${part.what}`, cause: 'work' } as const;
      items.push({ ...fit, place, after: [arrival, itemIds.part(part.id)], wait, minutes: settings.minutes.fit });
    }
    return items;
  });
}

export function codeItems(sitting: Sitting): Sketch[] {
  const { vehicle } = sitting;
  return vehicle.codeRequests.flatMap((request): Sketch[] => {
    const isRefused = request.outcome === 'refused';
    const failing = failsSince(request);
    const isLost = isRefused || failing !== null;
    if (request.closedOn !== null || (request.outcome === 'given' && failing === null)) return [];
    if (isRefused && refusalSettledOn(vehicle, request) !== null) return [];
    const place = { list: 'codeRequests', id: request.id } as const;
    const name = codeName(request, sitting.codeKinds);
    const base = { place, minutes: 0 };
    // Another way, after a refusal or a code that does not work, takes a decision and then about as long as any such code.
    const groups = codeGroups(isLost ? '' : request.askedOf, request.kind);
    const first: Sketch[] = isLost
      ? [
          {
            ...base,
            id: `ask:${request.id}`,
            what: `Find another way: ${name} ${isRefused ? 'was refused' : 'does not work'}`,
            cause: 'decide',
            after: [],
            wait: question('decide', [], sitting, { since: failing ?? request.answeredOn }),
          },
        ]
      : request.askedOn === null
        ? [
            {
              ...base,
              id: `ask:${request.id}`,
              what: `Ask for the ${name}`,
              cause: 'idle',
              after: [],
              wait: question('ask', [], sitting, { since: request.notedOn }),
            },
          ]
        : [];
    const isOpen = first.length === 0;
    const wait = question('code', groups, sitting, {
      since: isOpen ? request.askedOn : null,
      promisedOn: isOpen ? promisedFor(request) : null,
    });
    const what = request.askedOf && !isLost ? `${name} from ${request.askedOf}` : name;
    return [
      ...first,
      { ...base, id: itemIds.code(request.id), what, cause: 'code', after: isOpen ? [] : [`ask:${request.id}`], wait },
    ];
  });
}

export function subletItems(sitting: Sitting): Sketch[] {
  const { vehicle, arrival } = sitting;
  return vehicle.sublets.flatMap((sublet): Sketch[] => {
    if (sublet.backOn !== null) return [];
    const place = { list: 'sublets', id: sublet.id } as const;
    const base = { place, minutes: 0 };
    const isSent = sublet.sentOn !== null;
    const send: Sketch = {
      ...base,
      id: `send:${sublet.id}`,
      what: `Send out: ${sublet.what}`,
      cause: 'idle',
      after: [arrival],
      wait: question('send', [], sitting, { since: firstKnown(sublet.notedOn, sublet.sentOn) }),
    };
    const back: Sketch = {
      ...base,
      id: itemIds.sublet(sublet.id),
      what: sublet.supplier ? `${sublet.what} at ${sublet.supplier}` : sublet.what,
      cause: 'sublet',
      after: [isSent ? arrival : send.id],
      wait: question('sublet', providerGroups(sublet.supplier), sitting, {
        since: sublet.sentOn,
        promisedOn: isSent ? promisedFor(sublet) : null,
      }),
    };
    return isSent ? [back] : [send, back];
  });
}
