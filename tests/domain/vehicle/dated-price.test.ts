// Since when a vehicle has had an asking price, and that the days before it are not ready.
import { describe, expect, it } from 'vitest';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import { chargeHeldDays } from '../../../app/domain/time/held-days.ts';
import { applyChange } from '../../../app/domain/vehicle/apply-change.ts';
import { withDatedPrice } from '../../../app/domain/vehicle/dated-price.ts';
import { noTargets } from '../../../app/domain/vehicle/purchase.ts';
import { makeScan, makeVehicle } from '../../helpers/vehicle-maker.ts';

const today = '2026-03-18';
const priced = { ...noTargets, askingCents: 1_000_000 };

describe('the day of the asking price', () => {
  it('is today where there was no price, unless somebody names another', () => {
    expect(withDatedPrice(noTargets, priced, today).pricedOn).toBe(today);
    expect(withDatedPrice(noTargets, { ...priced, pricedOn: '2026-03-01' }, today).pricedOn).toBe('2026-03-01');
  });

  it('stays when the price changes, and goes with the price', () => {
    const kept = { ...priced, pricedOn: '2026-03-01' };
    expect(withDatedPrice(kept, { ...kept, askingCents: 900_000 }, today).pricedOn).toBe('2026-03-01');
    expect(withDatedPrice(kept, { ...kept, askingCents: null }, today).pricedOn).toBeNull();
    expect(withDatedPrice(priced, { ...priced, askingCents: 5 }, today).pricedOn).toBeNull();
  });

  it('is written by the change itself', () => {
    const vehicle = makeVehicle('2026-03-02', { targets: { askingCents: null } });
    const changed = applyChange(
      vehicle,
      { kind: 'set', section: 'targets', value: priced },
      { today, market: 'US', stamp: { by: 'ann', at: `${today}T08:00:00.000Z` }, rulePack: generalPack, codeKinds: [] },
    );
    expect(changed.ok && changed.value.targets.pricedOn).toBe(today);
  });
});

describe('days before the price', () => {
  const vehicle = (pricedOn: string | null) =>
    makeVehicle('2026-03-02', { scans: [makeScan('2026-03-03')], targets: { askingCents: 1_000_000, pricedOn } });
  const held = (pricedOn: string | null) =>
    chargeHeldDays(vehicle(pricedOn), [], { today: '2026-03-12', countsFirstDay: false }).byCause;

  it('do not become ready when the price is set later', () => {
    expect(held('2026-03-10')).toEqual({ inspect: 1, work: 1, present: 6, ready: 2 });
    expect(held('2026-03-02')).toEqual({ inspect: 1, work: 1, ready: 8 });
  });

  it('count as before where nobody has said since when', () => {
    expect(held(null)).toEqual(held('2026-03-02'));
  });
});
