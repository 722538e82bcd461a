// All gates of a vehicle in the order of the way, and the days on which its stages were passed. Pure; derived, never stored.
import type { NamedKinds } from '../codes/code-name.ts';
import type { Check } from '../fleet/shop.ts';
import { type Day, laterDay } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { workEvents } from '../work/work-events.ts';
import { type Gate, isHolding } from './gate.ts';
import { paperGate, presentGates, verifyGates } from './proof-gates.ts';
import { workGates } from './work-gates.ts';

export type Readiness = {
  readonly gates: readonly Gate[];
  /** Day on which all work was finished; null while something of it is open. */
  readonly workFinishedOn: Day | null;
  readonly verifiedOn: Day | null;
  readonly presentedOn: Day | null;
  /** Day on which the last gate went green; null while one holds. */
  readonly readyOn: Day | null;
  readonly isReady: boolean;
};

/** The last day of a stage: never before the stage that comes before it; null when a gate of it holds. */
function stagePassedOn(gates: readonly Gate[], notBefore: Day | null): Day | null {
  if (notBefore === null || gates.some(isHolding)) return null;
  return gates.reduce<Day>((latest, gate) => (gate.metOn === null ? latest : laterDay(latest, gate.metOn)), notBefore);
}

/** Judges every gate of the vehicle as the record stands now; `kinds` names its codes as the shop does. */
export function judgeReadiness(vehicle: Vehicle, checklist: readonly Check[], kinds?: NamedKinds): Readiness {
  const events = workEvents(vehicle);
  const work = workGates(vehicle, kinds);
  const verify = verifyGates(vehicle, checklist, events);
  const present = presentGates(vehicle, checklist, events);
  const paper = paperGate(vehicle);
  const workFinishedOn = stagePassedOn(work, vehicle.purchase.boughtOn);
  const verifiedOn = stagePassedOn(verify, workFinishedOn);
  const presentedOn = stagePassedOn(present, verifiedOn);
  const readyOn = stagePassedOn([paper], presentedOn);
  return {
    gates: [...work, ...verify, ...present, paper],
    workFinishedOn,
    verifiedOn,
    presentedOn,
    readyOn,
    isReady: readyOn !== null,
  };
}
