// The gates that prove and present: post-repair scan, the shop's signed checks, paper, price. A sign-off goes stale after later work.
import type { Check } from '../fleet/shop.ts';
import { compareDays } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { laterTouch, type WorkEvent } from '../work/work-events.ts';
import type { Gate, GateItem } from './gate.ts';
import { unprovenRepairs, unresolved } from './scan-proof.ts';
import type { SignOff } from './sign-off.ts';

function latestFact<Fact extends { readonly entered: { readonly at: string } }>(
  facts: readonly Fact[],
  dayOf: (fact: Fact) => string,
): Fact | null {
  const sorted = [...facts].sort(
    (a, b) =>
      compareDays(dayOf(a), dayOf(b)) || (a.entered.at < b.entered.at ? -1 : a.entered.at > b.entered.at ? 1 : 0),
  );
  return sorted[sorted.length - 1] ?? null;
}

function postScanGate(vehicle: Vehicle, events: readonly WorkEvent[]): Gate {
  const key = 'post-scan';
  const title = 'Post-repair scan clean';
  const place = { list: 'scans', id: null } as const;
  const scan = latestFact(
    vehicle.scans.filter((candidate) => candidate.kind === 'post-repair'),
    (candidate) => candidate.takenOn,
  );
  const lastWork = events[events.length - 1] ?? null;
  if (scan === null) {
    const firstScans = vehicle.scans;
    const isClean =
      firstScans.length > 0 && firstScans.every((candidate) => unresolved(vehicle, candidate).length === 0);
    if (lastWork === null && isClean) return { key, title, state: 'not-needed', metOn: null, items: [] };
    const item: GateItem = {
      text: 'Post-repair scan is missing',
      who: 'technician',
      since: lastWork?.on ?? null,
      place,
    };
    return { key, title, state: 'open', metOn: null, items: [item] };
  }
  const touched = laterTouch(events, { on: scan.takenOn, enteredAt: scan.entered.at }, [
    'mechanical',
    'electrical',
    'safety',
  ]);
  if (touched !== null) {
    const text = `Scan again: ${touched.what} on ${touched.on} came after the scan of ${scan.takenOn}`;
    return { key, title, state: 'stale', metOn: null, items: [{ text, who: 'technician', since: touched.on, place }] };
  }
  const texts = [
    ...unresolved(vehicle, scan).map(
      (what) => `After the repair: ${what}. Repair it, or decide to leave it with a reason`,
    ),
    ...unprovenRepairs(vehicle, scan),
  ];
  const items = texts.map(
    (text): GateItem => ({ text, who: 'technician', since: scan.takenOn, place: { list: 'scans', id: scan.id } }),
  );
  return items.length > 0
    ? { key, title, state: 'open', metOn: null, items }
    : { key, title, state: 'met', metOn: scan.takenOn, items };
}

/** The signature that counts under a check: the latest. Null when nobody has signed. */
export function currentSignOff(vehicle: Vehicle, checkId: string): SignOff | null {
  return latestFact(
    vehicle.signOffs.filter((signOff) => signOff.checkId === checkId),
    (signOff) => signOff.signedOn,
  );
}

function checkGate(vehicle: Vehicle, check: Check, events: readonly WorkEvent[]): Gate {
  const key = `check:${check.id}`;
  const { title } = check;
  const place = { list: 'signOffs', id: null } as const;
  const signOff = currentSignOff(vehicle, check.id);
  if (signOff === null)
    return {
      key,
      title,
      state: 'open',
      metOn: null,
      items: [{ text: `Not signed: ${title}`, who: check.who, since: null, place }],
    };
  if (signOff.result === 'failed') {
    const text = `Failed on ${signOff.signedOn}: ${title}${signOff.note ? ` (${signOff.note})` : ''}`;
    return {
      key,
      title,
      state: 'open',
      metOn: null,
      items: [{ text, who: check.who, since: signOff.signedOn, place }],
    };
  }
  if (signOff.result === 'not-needed') return { key, title, state: 'not-needed', metOn: signOff.signedOn, items: [] };
  const touched = laterTouch(events, { on: signOff.signedOn, enteredAt: signOff.entered.at }, check.staleAfter);
  if (touched === null) return { key, title, state: 'met', metOn: signOff.signedOn, items: [] };
  const text = `Sign again: ${title}. ${touched.what} on ${touched.on} came after the signature of ${signOff.signedOn}`;
  return { key, title, state: 'stale', metOn: null, items: [{ text, who: check.who, since: touched.on, place }] };
}

/** Post-repair scan and the checks that prove the work. */
export function verifyGates(
  vehicle: Vehicle,
  checklist: readonly Check[],
  events: readonly WorkEvent[],
): readonly Gate[] {
  const checks = checklist.filter((check) => check.isActive && check.stage === 'verify');
  return [postScanGate(vehicle, events), ...checks.map((check) => checkGate(vehicle, check, events))];
}

function priceGate({ targets }: Vehicle): Gate {
  const gate = { key: 'price', title: 'Asking price set' };
  if (targets.askingCents !== null) return { ...gate, state: 'met', metOn: targets.pricedOn, items: [] };
  const item: GateItem = {
    text: 'Asking price is missing',
    who: 'manager',
    since: null,
    place: { section: 'targets' },
  };
  return { ...gate, state: 'open', metOn: null, items: [item] };
}

/** The checks that make it fit to be seen, and its price. */
export function presentGates(
  vehicle: Vehicle,
  checklist: readonly Check[],
  events: readonly WorkEvent[],
): readonly Gate[] {
  const checks = checklist.filter((check) => check.isActive && check.stage === 'present');
  return [...checks.map((check) => checkGate(vehicle, check, events)), priceGate(vehicle)];
}

export function paperGate({ purchase, arrival }: Vehicle): Gate {
  const name = purchase.paperKind || 'Title or registration paper';
  const gate = { key: 'paper', title: `${name} here` };
  if (purchase.paperReceivedOn !== null) return { ...gate, state: 'met', metOn: purchase.paperReceivedOn, items: [] };
  const due = purchase.paperExpectedOn ? `, expected on ${purchase.paperExpectedOn}` : '';
  const item: GateItem = {
    text: `${name} has not come${due}`,
    who: 'manager',
    since: arrival.arrivedOn ?? purchase.boughtOn,
    place: { section: 'purchase' },
  };
  return { ...gate, state: 'open', metOn: null, items: [item] };
}
