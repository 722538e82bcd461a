// Earlier faults like the one at hand: what fixed them, what that cost, how long it took, which programming route worked.
import type { Fault } from '../diagnosis/fault.ts';
import { moduleKindFromName } from '../programming/module-kind.ts';
import { type Day, daysBetween } from '../shared/day.ts';
import type { Identifier } from '../shared/identifier.ts';
import { medianOf } from '../time/turnaround.ts';
import { vehicleTitle } from '../vehicle/identity.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { type CaseCosts, type CostTerms, caseCosts } from './case-costs.ts';
import { type RouteTally, routeTally } from './route-tally.ts';

export type CaseQuery = {
  /** As a person or a scan names it; empty when no module is concerned. */
  readonly module: string;
  readonly codes: readonly string[];
  /** The vehicle at hand, which is not a case of its own. */
  readonly exceptVehicleId: Identifier | null;
};

/** 'both': the same module and a code in common. A code stands for all its failure types: U0140 is U0140-00. */
export type CaseMatch = 'both' | 'code' | 'module';

export type SimilarCase = {
  readonly vehicleId: Identifier;
  readonly stockNumber: string;
  readonly title: string;
  readonly what: string;
  readonly match: CaseMatch;
  readonly foundOn: Day;
  readonly doneOn: Day;
  /** From found to done. */
  readonly days: number;
  /** What was done, in a few words. */
  readonly fix: string;
  readonly costs: CaseCosts;
  readonly routes: readonly RouteTally[];
};

export type FixTally = {
  readonly fix: string;
  readonly count: number;
  readonly medianCents: number;
  readonly medianDays: number;
};

export type SimilarCases = {
  /** The closest match found; the tallies are of these cases alone. Null without any. */
  readonly match: CaseMatch | null;
  /** Closest first, then the latest. */
  readonly cases: readonly SimilarCase[];
  readonly fixes: readonly FixTally[];
  readonly routes: readonly RouteTally[];
  /** Like faults that were left as they were, by decision. */
  readonly leftAsTheyWere: number;
};

const matches: readonly CaseMatch[] = ['both', 'code', 'module'];

function folded(text: string): string {
  return text.trim().replace(/\s+/g, ' ').toLowerCase();
}

function isSameModule(a: string, b: string): boolean {
  if (folded(a) === '' || folded(b) === '') return false;
  if (folded(a) === folded(b)) return true;
  const kind = moduleKindFromName(a);
  return kind !== 'other' && kind === moduleKindFromName(b);
}

function stem(code: string): string {
  return code.trim().toUpperCase().slice(0, 5);
}

function matchOf(fault: Fault, { module, codes }: CaseQuery): CaseMatch | null {
  const asked = new Set(codes.map(stem));
  const hasCode = fault.codes.some((code) => asked.has(stem(code)));
  const hasModule = isSameModule(fault.module, module);
  if (hasCode && hasModule) return 'both';
  if (hasCode) return 'code';
  return hasModule ? 'module' : null;
}

/** Parts fitted, modules programmed by their origin, work sent out; plain repair where there was none of these. */
function fixOf(vehicle: Vehicle, fault: Fault): string {
  const isOf = ({ faultId }: { readonly faultId: string | null }) => faultId === fault.id;
  const pieces = [
    ...vehicle.parts.filter((part) => isOf(part) && part.fittedOn !== null).map(({ what }) => folded(what)),
    ...vehicle.jobs.filter(isOf).flatMap(({ modules }) => {
      const exchanged = modules.filter(({ origin }) => origin !== 'kept');
      const programmed = exchanged.length > 0 ? exchanged : modules.slice(0, 1);
      return programmed.map(({ name, origin }) => `${folded(name)} programmed (${origin})`);
    }),
    ...vehicle.sublets
      .filter((sublet) => isOf(sublet) && sublet.backOn !== null)
      .map(({ what }) => `sent out: ${folded(what)}`),
  ];
  return pieces.length > 0 ? [...new Set(pieces)].sort().join(', ') : 'repaired without a part';
}

function median(numbers: readonly number[]): number {
  return medianOf([...numbers].sort((a, b) => a - b));
}

function fixTallies(cases: readonly SimilarCase[]): FixTally[] {
  const byFix = new Map<string, SimilarCase[]>();
  for (const one of cases) byFix.set(one.fix, [...(byFix.get(one.fix) ?? []), one]);
  return [...byFix]
    .map(([fix, ofFix]) => ({
      fix,
      count: ofFix.length,
      medianCents: median(ofFix.map(({ costs }) => costs.totalCents)),
      medianDays: median(ofFix.map(({ days }) => days)),
    }))
    .sort((a, b) => b.count - a.count || a.medianCents - b.medianCents);
}

/**
 * Finished faults on other vehicles with the same module, a code in common, or both; modules are the same when they have the same name or
 * name the same kind. Costs in cents at the rates given, days from found to done; medians are the middle case, of an even number the
 * lower. Whether a case is truly alike is for a person to judge: own definition ("common practice, no source").
 */
export function similarCases(vehicles: readonly Vehicle[], query: CaseQuery, terms: CostTerms): SimilarCases {
  const cases: SimilarCase[] = [];
  let leftAsTheyWere = 0;
  for (const vehicle of vehicles) {
    if (vehicle.id === query.exceptVehicleId) continue;
    for (const fault of vehicle.faults) {
      const match = matchOf(fault, query);
      if (match === null) continue;
      if (fault.decision?.kind === 'leave') leftAsTheyWere += 1;
      if (fault.doneOn === null || fault.decision?.kind === 'leave') continue;
      cases.push({
        vehicleId: vehicle.id,
        stockNumber: vehicle.identity.stockNumber,
        title: vehicleTitle(vehicle.identity),
        what: fault.what,
        match,
        foundOn: fault.foundOn,
        doneOn: fault.doneOn,
        days: daysBetween(fault.foundOn, fault.doneOn),
        fix: fixOf(vehicle, fault),
        costs: caseCosts(vehicle, fault.id, terms),
        routes: routeTally(vehicle, fault.id),
      });
    }
  }
  cases.sort((a, b) => matches.indexOf(a.match) - matches.indexOf(b.match) || (a.doneOn < b.doneOn ? 1 : -1));
  const match = cases[0]?.match ?? null;
  const closest = cases.filter((one) => one.match === match);
  return { match, cases, fixes: fixTallies(closest), routes: sumRoutes(closest), leftAsTheyWere };
}

function sumRoutes(cases: readonly SimilarCase[]): RouteTally[] {
  const sums = new Map<RouteTally['route'], RouteTally>();
  for (const { route, worked, tried } of cases.flatMap(({ routes }) => routes)) {
    const sum = sums.get(route) ?? { route, worked: 0, tried: 0 };
    sums.set(route, { route, worked: sum.worked + worked, tried: sum.tried + tried });
  }
  return [...sums.values()].sort((a, b) => b.worked - a.worked || a.tried - b.tried);
}
