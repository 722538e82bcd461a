// What is being tried out becomes exactly the changes that entering it would make.

import { describe, expect, it } from 'vitest';
import { shippedCodeKinds } from '../../../../app/domain/codes/code-kinds.ts';
import { generalPack } from '../../../../app/domain/programming/general-pack.ts';
import { applyChange } from '../../../../app/domain/vehicle/apply-change.ts';
import {
  nothingTried,
  openWaitsOf,
  whatIfChanges,
} from '../../../../renderer/screens/vehicle/money/what-if-changes.ts';
import { makeCodeRequest, makeFault, makePart, makeSublet, makeVehicle } from '../../../helpers/vehicle-maker.ts';

const day = '2026-03-02';
const context = { today: '2026-03-18', newId: 'cost-new' };
const fault = makeFault(day, { decision: null });
const part = makePart(day, { orderedOn: day });
const vehicle = makeVehicle(day, {
  faults: [fault],
  parts: [part, makePart(day, { orderedOn: day, receivedOn: day }), makePart(day)],
  codeRequests: [makeCodeRequest(day, { askedOn: day })],
  sublets: [makeSublet(day, { sentOn: day })],
});

describe('trying out', () => {
  it('changes nothing while nothing is complete', () => {
    const half = { ...nothingTried, waitKey: part.id, faultId: fault.id, extraWhat: 'Towing' };
    expect(whatIfChanges(vehicle, half, context)).toEqual([]);
    const same = { ...nothingTried, askingCents: vehicle.targets.askingCents };
    expect(whatIfChanges(vehicle, same, context)).toEqual([]);
  });

  it('offers what is under way, and not what is here or not ordered', () => {
    const keys = openWaitsOf(vehicle).map(({ key }) => key);
    expect(keys).toContain(part.id);
    expect(keys.filter((key) => vehicle.parts.some(({ id }) => id === key))).toEqual([part.id]);
  });

  it('makes changes that the record takes, each in its own place', () => {
    const tried = {
      askingCents: 1_111_100,
      extraCents: 5_000,
      extraWhat: 'Towing',
      waitKey: part.id,
      expectedOn: '2026-03-25',
      faultId: fault.id,
      decision: 'repair' as const,
      reason: '',
    };
    const changes = whatIfChanges(vehicle, tried, context);
    const stamp = { by: 'manager-1', at: '2026-03-18T09:00:00.000Z' };
    let after = vehicle;
    for (const change of changes) {
      const applied = applyChange(after, change, {
        today: context.today,
        market: 'US',
        stamp,
        rulePack: generalPack,
        codeKinds: shippedCodeKinds,
      });
      if (!applied.ok) throw new Error(JSON.stringify(applied.error));
      after = applied.value;
    }
    expect(after.targets).toEqual({ ...vehicle.targets, askingCents: 1_111_100 });
    expect(after.parts[0]?.expectedOn).toBe('2026-03-25');
    expect(after.faults[0]?.decision).toMatchObject({ kind: 'repair', decidedOn: '2026-03-18' });
    expect(after.otherCosts).toMatchObject([{ id: 'cost-new', what: 'Towing', amountCents: 5_000 }]);
    expect(changes).toHaveLength(4);
  });

  it('can promise another day for everything that is under way', () => {
    for (const { key } of openWaitsOf(vehicle)) {
      const changes = whatIfChanges(vehicle, { ...nothingTried, waitKey: key, expectedOn: '2026-04-01' }, context);
      expect(JSON.stringify(changes)).toContain('2026-04-01');
    }
  });
});
