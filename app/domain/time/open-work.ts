// Everything that still stands between a vehicle and being ready, as a network of items. How long each takes is answered elsewhere.
import { isOpenRepair } from '../diagnosis/fault.ts';
import type { Check } from '../fleet/shop.ts';
import { type JobProgress, jobProgress } from '../programming/job-progress.ts';
import { indexOf } from '../programming/plan-index.ts';
import { isHolding } from '../readiness/gate.ts';
import { judgeReadiness } from '../readiness/gates.ts';
import { inspectedOn } from '../readiness/work-gates.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { itemIds, type OpenItem, question, type Sitting, type Sketch } from './open-item.ts';
import { codeItems, partItems, subletItems } from './open-waits.ts';
import { repairInHandOn } from './repair-in-hand.ts';
import { faultGroups, moduleGroup, providerGroups } from './turnaround-cases.ts';

/**
 * The steps left, one after the other as one person does them; the wait for its turn, once everything is in hand, stands before the last.
 * A step that only its own module waits for (a radio's code) holds up nothing but the end.
 */
function jobItems(sitting: Sitting): Sketch[] {
  const { vehicle, settings, arrival } = sitting;
  const open = vehicle.jobs
    .map((job) => jobProgress(vehicle, job, sitting.codeKinds))
    .filter(({ isClosed }) => !isClosed);
  return open.flatMap(({ job, steps, canStartOn }: JobProgress): Sketch[] => {
    const place = { list: 'jobs', id: job.id } as const;
    const index = indexOf(job.plan);
    const turn = question('programming', [moduleGroup(job)], sitting, { since: canStartOn });
    const left = steps.filter(({ state }) => state !== 'done' && state !== 'left-out');
    const idOf = (stepId: string) =>
      stepId === left.at(-1)?.step.id ? itemIds.job(job.id) : `step:${job.id}:${stepId}`;
    let before: string | null = arrival;
    const aside: string[] = [];
    return left.map(({ step }, at): Sketch => {
      const isLast = at === left.length - 1;
      const module = job.modules.find(({ id }) => id === step.moduleId);
      const part = step.gates.includes('part-in-hand') && module?.partId ? itemIds.part(module.partId) : null;
      const code =
        step.gates.includes('code-in-hand') && module?.codeRequestId ? itemIds.code(module.codeRequestId) : null;
      const isAside = !isLast && code !== null && !index.leadsToWholeJob.has(step.id);
      const id = idOf(step.id);
      const after = [before, part, code, ...(isLast ? aside : [])];
      if (isAside) aside.push(id);
      else before = id;
      return {
        id,
        what: `${job.title}: ${step.title}`,
        cause: 'programming',
        place,
        after,
        wait: isLast ? turn : null,
        minutes: step.typicalMinutes ?? settings.minutes.step,
      };
    });
  });
}

function faultItems(sitting: Sitting): Sketch[] {
  const { vehicle, settings, arrival } = sitting;
  return vehicle.faults.flatMap((fault): Sketch[] => {
    const place = { list: 'faults', id: fault.id } as const;
    const isOf = ({ faultId }: { readonly faultId: string | null }) => faultId === fault.id;
    const linked = [
      ...vehicle.parts.filter(isOf).map(({ id }) => itemIds.part(id)),
      ...vehicle.sublets.filter(isOf).map(({ id }) => itemIds.sublet(id)),
      ...vehicle.codeRequests.filter(isOf).map(({ id }) => itemIds.code(id)),
      ...vehicle.jobs.filter(isOf).map(({ id }) => itemIds.job(id)),
    ];
    const area = [`area: ${fault.area}`];
    const booked = vehicle.labour.filter(isOf).reduce((sum, { minutes }) => sum + minutes, 0);
    const repair = { id: itemIds.repair(fault.id), what: fault.what, cause: 'work', place } as const;
    if (fault.decision === null) {
      const decide: Sketch = {
        id: `decide:${fault.id}`,
        what: `Decide: ${fault.what}`,
        cause: 'decide',
        place,
        after: [],
        wait: question('decide', [], sitting, { since: fault.foundOn }),
        minutes: 0,
      };
      const wait =
        linked.length === 0
          ? question('fault', faultGroups(fault.area, null), sitting)
          : question('repair', area, sitting);
      const minutes = Math.max(0, settings.minutes.repair - booked);
      return [decide, { ...repair, after: [arrival, decide.id, ...linked], wait, minutes }];
    }
    if (!isOpenRepair(fault)) return [];
    const minutes = Math.max(0, (fault.decision.estimateMinutes ?? settings.minutes.repair) - booked);
    // Nothing is linked to it yet: what it will need is not known, so the whole way from a decision to its end is asked for.
    const wait =
      linked.length === 0
        ? question('fault', faultGroups(fault.area, 'repaired'), sitting, { since: fault.decision.decidedOn })
        : question('repair', area, sitting, { since: repairInHandOn(vehicle, fault) });
    return [{ ...repair, after: [arrival, ...linked], wait, minutes }];
  });
}

function beginningItems(sitting: Sitting): Sketch[] {
  const { vehicle, settings } = sitting;
  const { arrival, purchase } = vehicle;
  const items: Sketch[] = [];
  if (arrival.arrivedOn === null) {
    const wait = question('arrival', providerGroups(purchase.source), sitting, {
      since: purchase.boughtOn,
      promisedOn: arrival.expectedOn,
    });
    const place = { section: 'arrival' } as const;
    items.push({ id: 'arrival', what: 'Arrival', cause: 'transit', place, after: [], wait, minutes: 0 });
  }
  if (inspectedOn(vehicle) === null) {
    const place = { list: 'scans', id: null } as const;
    const wait = question('inspect', [], sitting, { since: arrival.arrivedOn });
    const scan = { id: 'inspect', what: 'Scan on arrival', cause: 'inspect', place } as const;
    items.push({ ...scan, after: ['arrival'], wait, minutes: settings.minutes.inspect });
    const unseen = { id: 'unseen', what: 'Whatever the scan will show', cause: 'work', place } as const;
    items.push({ ...unseen, after: ['inspect'], wait: question('unseen', [], sitting), minutes: 0 });
  }
  return items;
}

/**
 * What is left to do on a vehicle as it stands on `today`; empty when it is ready or sold. Before-and-after is this project's own reading
 * of the trade ("common practice, no source"): parts, codes, sublet work and programming come before the repair that they belong to,
 * all work before the proof, the proof before presenting, the paper beside it all.
 */
export function openWork(
  vehicle: Vehicle,
  checklist: readonly Check[],
  { today, settings, calendar, codeKinds }: Pick<Sitting, 'today' | 'settings' | 'calendar' | 'codeKinds'>,
): readonly OpenItem[] {
  if (vehicle.sale !== null) return [];
  const readiness = judgeReadiness(vehicle, checklist, codeKinds);
  if (readiness.isReady) return [];
  const arrival = vehicle.arrival.arrivedOn === null ? 'arrival' : null;
  const sitting: Sitting = { vehicle, today, settings, calendar, codeKinds, arrival };
  const work = [
    ...beginningItems(sitting),
    ...partItems(sitting),
    ...codeItems(sitting),
    ...subletItems(sitting),
    ...jobItems(sitting),
    ...faultItems(sitting),
  ];
  const items = [...work];
  const { minutes } = settings;
  if (work.length > 0 || readiness.verifiedOn === null) {
    const wait = question('verify', [], sitting, { since: work.length > 0 ? null : readiness.workFinishedOn });
    const verify = { id: 'verify', what: 'Prove the work', cause: 'verify', minutes: minutes.verify } as const;
    items.push({ ...verify, place: { list: 'signOffs', id: null }, after: work.map(({ id }) => id), wait });
  }
  const presentKeys = checklist.filter(({ stage }) => stage === 'present').map(({ id }) => `check:${id}`);
  if (readiness.gates.some((gate) => isHolding(gate) && (gate.key === 'price' || presentKeys.includes(gate.key)))) {
    const wait = question('present', [], sitting, { since: work.length > 0 ? null : readiness.verifiedOn });
    const present = {
      id: 'present',
      what: 'Clean, photograph, price',
      cause: 'present',
      minutes: minutes.present,
    } as const;
    items.push({
      ...present,
      place: { list: 'signOffs', id: null },
      after: [...work.map(({ id }) => id), 'verify'],
      wait,
    });
  }
  const { purchase } = vehicle;
  if (purchase.paperReceivedOn === null) {
    const wait = question('paper', providerGroups(purchase.source), sitting, {
      since: purchase.boughtOn,
      promisedOn: purchase.paperExpectedOn,
    });
    const what = purchase.paperKind || 'Title or registration paper';
    items.push({ id: 'paper', what, cause: 'paper', place: { section: 'purchase' }, after: [], wait, minutes: 0 });
  }
  const known = new Set(items.map(({ id }) => id));
  return items.map((item) => ({
    ...item,
    after: item.after.flatMap((id) => (id !== null && known.has(id) ? [id] : [])),
  }));
}
