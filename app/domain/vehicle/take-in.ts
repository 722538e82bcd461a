// Makes the first record of a vehicle from what is known on the day it is taken in. Pure; identity and stamp are passed in.
import { z } from 'zod';
import type { Stamp } from '../shared/fact.ts';
import type { Identifier } from '../shared/identifier.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import type { ChangeContext } from './apply-change.ts';
import type { ChangeProblem } from './change-problem.ts';
import { withDatedPrice } from './dated-price.ts';
import { identitySchema } from './identity.ts';
import { arrivalSchema, noTargets, purchaseSchema, targetsSchema } from './purchase.ts';
import { sectionProblems } from './section-rules.ts';
import type { Vehicle } from './vehicle.ts';

export const takeInSchema = z.strictObject({
  identity: identitySchema,
  purchase: purchaseSchema,
  arrival: arrivalSchema,
  targets: targetsSchema,
});
export type TakeIn = z.infer<typeof takeInSchema>;

/** A price that comes with the purchase is taken to have been asked since it. */
export function newVehicle(id: Identifier, stamp: Stamp, takeIn: TakeIn): Vehicle {
  return {
    id,
    takenIn: stamp,
    ...takeIn,
    targets: withDatedPrice(noTargets, takeIn.targets, takeIn.purchase.boughtOn),
    scans: [],
    batteryReadings: [],
    faults: [],
    jobs: [],
    attempts: [],
    parts: [],
    codeRequests: [],
    labour: [],
    sublets: [],
    otherCosts: [],
    signOffs: [],
    notes: [],
    attachments: [],
    sale: null,
  };
}

/** The new record, or what stands against it. Fields of problems are prefixed with their section: 'identity.vin'. */
export function takeInVehicle(
  id: Identifier,
  takeIn: TakeIn,
  context: Omit<ChangeContext, 'rulePack' | 'codeKinds'>,
): Result<Vehicle, readonly ChangeProblem[]> {
  const vehicle = newVehicle(id, context.stamp, takeIn);
  const problems = (['identity', 'purchase', 'arrival', 'targets'] as const).flatMap((section) => {
    const change = { kind: 'set', section, value: takeIn[section] } as Parameters<typeof sectionProblems>[0];
    return sectionProblems(change, vehicle, context).map((problem) => ({
      ...problem,
      field: `${section}.${problem.field}`,
    }));
  });
  return problems.length > 0 ? fail(problems) : ok(vehicle);
}
