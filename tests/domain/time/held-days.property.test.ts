// What must hold of the days of every record, not only of the examples.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isHolding } from '../../../app/domain/readiness/gate.ts';
import { isWorkOpen, workGates } from '../../../app/domain/readiness/work-gates.ts';
import { addDays, type Day, daysBetween } from '../../../app/domain/shared/day.ts';
import { causeSchema } from '../../../app/domain/time/cause.ts';
import { chargeHeldDays } from '../../../app/domain/time/held-days.ts';
import { changeDays, recordAsOf } from '../../../app/domain/time/record-as-of.ts';
import { stageSpans } from '../../../app/domain/time/stages.ts';
import { type Vehicle, vehicleSchema } from '../../../app/domain/vehicle/vehicle.ts';
import { arbitraryVehicle } from '../../helpers/arbitrary-vehicle.ts';
import { cleaned, roadTest } from '../../helpers/vehicle-maker.ts';

const checklist = [roadTest, cleaned];

describe('whether work is open', () => {
  it('is the same as whether any gate of the work holds, at the end of every day on which something changed', () => {
    const seen = new Set<boolean>();
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle }) => {
        for (const day of changeDays(vehicle)) {
          const then = recordAsOf(vehicle, day);
          const isOpen = isWorkOpen(then);
          expect(isOpen).toBe(workGates(then).some(isHolding));
          seen.add(isOpen);
        }
      }),
    );
    expect(seen.size).toBe(2);
  });
});

describe('the days of any record', () => {
  it('are made from records that the schema takes', () => {
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle }) => {
        expect(vehicleSchema.parse(vehicle)).toEqual(vehicle);
      }),
    );
  });

  it('are each charged to exactly one cause, and the causes add up to the days held', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(arbitraryVehicle, fc.boolean(), ({ vehicle, today }, countsFirstDay) => {
        const { heldDays, stretches, byCause, now } = chargeHeldDays(vehicle, checklist, { today, countsFirstDay });
        const end = vehicle.sale?.soldOn ?? today;
        expect(heldDays).toBe(daysBetween(vehicle.purchase.boughtOn, end) + (countsFirstDay ? 1 : 0));
        let next = vehicle.purchase.boughtOn;
        const sums: Record<string, number> = {};
        for (const { cause, from, days } of stretches) {
          expect(from).toBe(next);
          expect(days).toBeGreaterThanOrEqual(1);
          causeSchema.parse(cause);
          sums[cause] = (sums[cause] ?? 0) + days;
          next = addDays(from, days);
          seen.add(cause);
        }
        expect(daysBetween(vehicle.purchase.boughtOn, next)).toBe(heldDays);
        expect(byCause).toEqual(sums);
        expect(now.since <= today && now.since >= vehicle.purchase.boughtOn).toBe(true);
      }),
      { numRuns: 600 },
    );
    // The random records reach every cause; else the check above would say less than it seems to.
    expect([...seen].sort()).toEqual([...causeSchema.options].sort());
  });

  it('come out the same twice, and the record is left as it was', () => {
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle, today }) => {
        const before = structuredClone(vehicle);
        const once = chargeHeldDays(vehicle, checklist, { today, countsFirstDay: false });
        expect(chargeHeldDays(structuredClone(vehicle), checklist, { today, countsFirstDay: false })).toEqual(once);
        expect(vehicle).toEqual(before);
      }),
    );
  });

  it('do not depend on the order in which facts were entered into their lists', () => {
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle, today }) => {
        const turned = {
          ...vehicle,
          parts: [...vehicle.parts].reverse(),
          codeRequests: [...vehicle.codeRequests].reverse(),
          sublets: [...vehicle.sublets].reverse(),
          faults: [...vehicle.faults].reverse(),
        };
        const options = { today, countsFirstDay: false };
        expect(chargeHeldDays(turned, checklist, options).byCause).toEqual(
          chargeHeldDays(vehicle, checklist, options).byCause,
        );
      }),
    );
  });

  it('keep the stages they had: a record looked at on an earlier day had the same past', () => {
    fc.assert(
      fc.property(arbitraryVehicle, fc.nat(), ({ vehicle, today }, pick) => {
        const length = Math.max(1, daysBetween(vehicle.purchase.boughtOn, today));
        const then = addDays(vehicle.purchase.boughtOn, pick % length);
        const seen = (record: Vehicle, lastDay: Day) =>
          stageSpans(record, checklist, lastDay).map(({ from, stage, nextText }) => ({
            from,
            stage,
            text: nextText(),
          }));
        const now = seen(vehicle, today).filter((span) => span.from <= then);
        expect(seen(recordAsOf(vehicle, then), then)).toEqual(now);
      }),
    );
  });

  it('are all in the record of the last day: looked at on the day of its last change it is whole', () => {
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle, today }) => {
        expect(recordAsOf(vehicle, today)).toEqual(vehicle);
        expect(changeDays(vehicle).every((day) => day <= today)).toBe(true);
      }),
    );
  });
});
