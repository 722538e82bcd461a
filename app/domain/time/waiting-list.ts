// Everything asked for and not yet here: parts, codes and sublet work of all vehicles, with what another day of each wait costs.
import { codeName } from '../codes/code-name.ts';
import type { Chase } from '../codes/request-facts.ts';
import { promisedFor } from '../codes/request-life.ts';
import type { Shop } from '../fleet/shop.ts';
import type { Cents } from '../shared/cents.ts';
import { addDays, type Day, daysBetween } from '../shared/day.ts';
import type { VehicleReckoning } from '../vehicle/reckon.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Standing, WaitCause } from './cause.ts';
import { type Deciding, decidingWait, isOutside, type OutsideWait, openWaits } from './deciding-wait.ts';
import { type NextChase, nextChase } from './next-chase.ts';
import { question } from './open-item.ts';
import { askTurnaround, eightiethOf, medianOf, type TurnaroundAnswer, type TurnaroundHistory } from './turnaround.ts';
import { codeGroups, providerGroups } from './turnaround-cases.ts';
import { type Usual, usualTurnaround } from './usual-turnaround.ts';
import type { Wait } from './waits.ts';

export type WaitingFor = 'part' | 'code' | 'sublet';

export type Expected = {
  /** In half of the cases, and in 80 of 100. */
  readonly likelyOn: Day;
  readonly safeOn: Day;
  readonly basis: TurnaroundAnswer['basis'];
  readonly group: string;
  readonly cases: number;
};

export type WaitingLine = {
  readonly vehicle: Vehicle;
  readonly kind: WaitingFor;
  readonly factId: string;
  readonly what: string;
  /** As it was written; empty when nobody was named. */
  readonly provider: string;
  /** The kind of code, for turnaround; empty for parts and sublet work. */
  readonly codeKind: string;
  readonly askedOn: Day;
  readonly promisedOn: Day | null;
  readonly waitedDays: number;
  /** Days since the promised day; 0 while it stands, and without one. */
  readonly overdueDays: number;
  readonly expected: Expected;
  readonly usual: Usual | null;
  readonly chase: NextChase;
  readonly chases: number;
  readonly lastChase: Chase | null;
  /** Whether the next day of the vehicle is charged to this wait: alone, together with others, or to something else. */
  readonly decides: 'alone' | 'together' | 'not';
  /** What decides the next day of the vehicle. */
  readonly decidedBy: { readonly cause: Standing; readonly what: string };
  /** Work was booked on the vehicle today. */
  readonly isInWork: boolean;
  /** What the vehicle waits for besides. */
  readonly besides: readonly { readonly cause: WaitCause; readonly what: string }[];
  /** What one more day of the vehicle costs, and this wait's share of it. */
  readonly dayCents: Cents;
  readonly shareCents: Cents;
};

export type WaitingList = {
  /** Dearest first, see `byCost`. */
  readonly lines: readonly WaitingLine[];
  readonly vehicles: number;
  /** What one more day of these vehicles costs, each counted once. */
  readonly dayCents: Cents;
  /** The part of it that is decided by something in the list. */
  readonly sharedCents: Cents;
};

type Asked = Pick<WaitingLine, 'kind' | 'what' | 'provider' | 'codeKind' | 'chases'> & {
  readonly expectedOn: Day | null;
  readonly chaseList: readonly Chase[];
};

/** What the record says of the fact that is waited for. */
function askedOf(vehicle: Vehicle, factId: string, codeKinds: Shop['codeKinds']): Asked | null {
  const part = vehicle.parts.find(({ id }) => id === factId);
  if (part) {
    const { supplier: provider, expectedOn, chases, quantity } = part;
    const name = quantity > 1 ? `${part.what} × ${quantity}` : part.what;
    return { kind: 'part', what: name, provider, codeKind: '', expectedOn, chaseList: chases, chases: chases.length };
  }
  const sublet = vehicle.sublets.find(({ id }) => id === factId);
  if (sublet) {
    const { supplier: provider, expectedOn, chases } = sublet;
    const base = { kind: 'sublet', what: sublet.what, provider, codeKind: '' } as const;
    return { ...base, expectedOn, chaseList: chases, chases: chases.length };
  }
  const request = vehicle.codeRequests.find(({ id }) => id === factId);
  if (!request) return null;
  const { askedOf: provider, expectedOn, chases, kind: codeKind } = request;
  const base = { kind: 'code', what: codeName(request, codeKinds), provider, codeKind } as const;
  return { ...base, expectedOn, chaseList: chases, chases: chases.length };
}

/** Shares of one amount that add up to it exactly; what cannot be divided goes to the first. */
function shareOut(cents: Cents, among: number, place: number): Cents {
  const each = Math.floor(cents / among);
  return place < cents - each * among ? each + 1 : each;
}

export type WaitingContext = {
  readonly shop: Pick<Shop, 'turnaround' | 'calendar' | 'codeKinds'>;
  readonly history: TurnaroundHistory;
  readonly today: Day;
};

function expectedOf(asked: Asked, wait: OutsideWait, promisedOn: Day | null, context: WaitingContext): Expected {
  const { shop, history, today } = context;
  const settings = shop.turnaround;
  const asking = question(
    asked.kind,
    groupsOf(asked),
    { today, calendar: shop.calendar },
    { since: wait.from, promisedOn },
  );
  const { daysToGo, basis, group, cases } = askTurnaround(history, asking, today, settings);
  return {
    likelyOn: addDays(today, medianOf(daysToGo)),
    safeOn: addDays(today, eightiethOf(daysToGo)),
    basis,
    group,
    cases,
  };
}

/** Narrow to wide, as in the cases. */
export function groupsOf({ kind, provider, codeKind }: Pick<WaitingLine, 'kind' | 'provider' | 'codeKind'>): string[] {
  return kind === 'code' ? codeGroups(provider, codeKind) : providerGroups(provider);
}

function lineOf(
  { vehicle, reckoning }: WaitingVehicle,
  wait: OutsideWait,
  { waits, deciding }: { readonly waits: readonly Wait[]; readonly deciding: Deciding },
  context: WaitingContext,
): WaitingLine[] {
  const { today, history, shop } = context;
  const asked = askedOf(vehicle, wait.factId, shop.codeKinds);
  if (asked === null) return [];
  const { kind, what, provider, codeKind, chases, chaseList, expectedOn } = asked;
  const promisedOn = promisedFor({ chases: chaseList, expectedOn });
  const usual = usualTurnaround(
    history,
    { kind, groups: groupsOf(asked) },
    { asOf: today, fewestCases: shop.turnaround.fewestCases },
  );
  const place = deciding.factIds.indexOf(wait.factId);
  const dayCents = Math.max(0, reckoning.costs.nextDayCents);
  const lastChase = chaseList.reduce<Chase | null>(
    (last, chase) => (last === null || chase.chasedOn >= last.chasedOn ? chase : last),
    null,
  );
  return [
    {
      vehicle,
      kind,
      factId: wait.factId,
      what,
      provider: provider.trim(),
      codeKind,
      askedOn: wait.from,
      promisedOn,
      waitedDays: Math.max(0, daysBetween(wait.from, today)),
      overdueDays: promisedOn === null ? 0 : Math.max(0, daysBetween(promisedOn, today)),
      expected: expectedOf(asked, wait, promisedOn, context),
      usual,
      chase: nextChase({ askedOn: wait.from, expectedOn, chases: chaseList }, usual, {
        today,
        calendar: shop.calendar,
      }),
      chases,
      lastChase,
      decides: place < 0 ? 'not' : deciding.factIds.length === 1 ? 'alone' : 'together',
      decidedBy: { cause: deciding.cause, what: deciding.what },
      isInWork: reckoning.held.now.standing === 'work',
      besides: waits.filter((other) => other !== wait).map((other) => ({ cause: other.cause, what: other.what })),
      dayCents,
      shareCents: place < 0 ? 0 : shareOut(dayCents, deciding.factIds.length, place),
    },
  ];
}

/** Costs most by another day; of equals the longer overdue, then the longer waited for, then by stock number and as entered. */
function byCost(a: WaitingLine, b: WaitingLine): number {
  const inOrder = b.shareCents - a.shareCents || b.overdueDays - a.overdueDays || b.waitedDays - a.waitedDays || 0;
  if (inOrder !== 0) return inOrder;
  const [one, other] = [a.vehicle.identity.stockNumber, b.vehicle.identity.stockNumber];
  return one < other ? -1 : one > other ? 1 : 0;
}

export type WaitingVehicle = {
  readonly vehicle: Vehicle;
  readonly reckoning: {
    readonly held: { readonly now: Pick<VehicleReckoning['held']['now'], 'standing'> };
    readonly costs: Pick<VehicleReckoning['costs'], 'nextDayCents'>;
  };
};

/**
 * Parts, codes and sublet work asked for and not here, of vehicles that are not sold. A day more of the vehicle costs what Money says; it is
 * borne by the wait that decides that day. Where several decide it together the vehicle goes on only when all of them are here, so each
 * bears the same part (the Shapley value of a game that only all together can win; Shapley 1953). A wait that ends before another costs
 * nothing by itself. So no day is counted twice: the shares of a vehicle add up to its day, or to nothing where something else decides it.
 */
export function waitingList(vehicles: Iterable<WaitingVehicle>, context: WaitingContext): WaitingList {
  const lines: WaitingLine[] = [];
  let count = 0;
  let dayCents = 0;
  for (const one of vehicles) {
    if (one.vehicle.sale !== null) continue;
    const waits = openWaits(one.vehicle, context.shop.codeKinds);
    const outside = waits.filter(isOutside);
    if (outside.length === 0) continue;
    const deciding = decidingWait(one.vehicle, waits, context.today);
    const found = outside.flatMap((wait) => lineOf(one, wait, { waits, deciding }, context));
    if (found.length === 0) continue;
    lines.push(...found);
    count += 1;
    dayCents += found[0]?.dayCents ?? 0;
  }
  return {
    lines: lines.sort(byCost),
    vehicles: count,
    dayCents,
    sharedCents: lines.reduce((sum, line) => sum + line.shareCents, 0),
  };
}
