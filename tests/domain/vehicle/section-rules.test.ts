// The rules of the sections, each with its sentence, for a change and for taking a vehicle in. Today is 10 March 2026.
import { describe, expect, it } from 'vitest';
import type { VehicleChange } from '../../../app/domain/vehicle/change.ts';
import type { Market } from '../../../app/domain/vehicle/market.ts';
import { identityProblems, sectionProblems } from '../../../app/domain/vehicle/section-rules.ts';
import { takeInVehicle } from '../../../app/domain/vehicle/take-in.ts';
import { vehicleSchema } from '../../../app/domain/vehicle/vehicle.ts';
import { makeVehicle, stampAt } from '../../helpers/vehicle-maker.ts';

const today = '2026-03-10';
const tomorrow = '2026-03-11';
const boughtOn = '2026-03-03';
const dayBefore = '2026-03-02';

/** A well-known self-test VIN (all ones) and the same with a wrong check digit. */
const holds = '11111111111111111';
const doesNotHold = '11111111211111111';

const vehicle = makeVehicle(boughtOn, { arrival: { arrivedOn: '2026-03-05' } });

function problems(change: VehicleChange, record = vehicle, market: Market = 'US'): string[] {
  if (change.kind !== 'set') throw new Error('Only sections are tried here.');
  return sectionProblems(change, record, { today, market }).map(({ field, sentence }) => `${field}: ${sentence}`);
}

describe('the identity', () => {
  const withVin = (vin: string, vinReason = '') => ({ ...vehicle.identity, vin, vinReason });

  it('has a VIN, or says why not', () => {
    expect(identityProblems(withVin(''), 'US')).toEqual([
      { field: 'vin', sentence: 'Enter the VIN, or say beside it why it is not known yet.' },
    ]);
    expect(identityProblems(withVin('', '  '), 'US')).toHaveLength(1);
    expect(identityProblems(withVin('', 'plate painted over'), 'US')).toEqual([]);
  });

  it('has a VIN whose check digit holds where it must, or a reason to keep it', () => {
    expect(identityProblems(withVin(holds), 'US')).toEqual([]);
    const [problem] = identityProblems(withVin(doesNotHold), 'US');
    expect(problem?.field).toBe('vin');
    expect(problem?.sentence).toMatch(/^Place 9 should be 1 but is 2\..* Correct it, or say why it is kept\.$/);
    expect(identityProblems(withVin(doesNotHold, 'as on the title'), 'US')).toEqual([]);
  });

  it('may have a European VIN without a check digit where the market does not ask for one', () => {
    expect(identityProblems(withVin('SAAZZZ99ZTS392124'), 'GB')).toEqual([]);
    expect(identityProblems(withVin('SAAZZZ99ZTS392124'), 'US')).toHaveLength(1);
  });

  it('is refused with a VIN of the wrong length or letters, whatever the reason', () => {
    for (const vin of ['1111111111111111', '1111111111111111I'])
      expect(identityProblems(withVin(vin, 'it is what it is'), 'US')).toHaveLength(1);
  });
});

describe('the purchase', () => {
  const set = (value: Partial<typeof vehicle.purchase>): VehicleChange => ({
    kind: 'set',
    section: 'purchase',
    value: { ...vehicle.purchase, ...value },
  });

  it('does not lie in the future, nor does the day the paper came', () => {
    const transit = makeVehicle(boughtOn, { arrival: { arrivedOn: null } });
    expect(problems(set({ boughtOn: tomorrow }), transit)).toEqual([
      'boughtOn: The day of purchase lies in the future (2026-03-11). Write the day on which it happened.',
    ]);
    expect(problems(set({ paperReceivedOn: tomorrow }))).toEqual([
      'paperReceivedOn: The day the paper came lies in the future (2026-03-11). Write the day on which it happened.',
    ]);
    expect(problems(set({ paperExpectedOn: tomorrow }))).toEqual([]);
  });

  it('is not after the arrival or the sale', () => {
    const sold = { ...vehicle, sale: { soldOn: '2026-03-06', priceCents: 1, buyer: '', paidOffOn: null } };
    expect(problems(set({ boughtOn: '2026-03-08' }), sold)).toEqual([
      'boughtOn: The purchase would be after the arrival (2026-03-05). Correct one of the two days.',
      'boughtOn: The purchase would be after the sale (2026-03-06). Correct one of the two days.',
    ]);
    expect(problems(set({ boughtOn: '2026-03-05' }), sold)).toEqual([]);
  });
});

describe('arrival and sale', () => {
  const arrival = (arrivedOn: string | null): VehicleChange => ({
    kind: 'set',
    section: 'arrival',
    value: { expectedOn: null, arrivedOn },
  });
  const sale = (soldOn: string): VehicleChange => ({
    kind: 'set',
    section: 'sale',
    value: { soldOn, priceCents: 1, buyer: '', paidOffOn: null },
  });

  it('are not before the purchase and not after today', () => {
    expect(problems(arrival(dayBefore))).toEqual([
      'arrivedOn: The day of arrival (2026-03-02) is before the purchase (2026-03-03). Correct one of the two days.',
    ]);
    expect(problems(arrival(tomorrow))).toEqual([
      'arrivedOn: The day of arrival lies in the future (2026-03-11). Write the day on which it happened.',
    ]);
    expect(problems(sale(dayBefore))).toEqual([
      'soldOn: The day of the sale (2026-03-02) is before the purchase (2026-03-03). Correct one of the two days.',
    ]);
    expect(problems(sale(tomorrow))).toEqual([
      'soldOn: The day of the sale lies in the future (2026-03-11). Write the day on which it happened.',
    ]);
    expect(problems(arrival(today))).toEqual([]);
    expect(problems(sale(today))).toEqual([]);
  });

  it('may be taken back', () => {
    expect(problems(arrival(null))).toEqual([]);
    expect(problems({ kind: 'set', section: 'sale', value: null })).toEqual([]);
  });
});

describe('taking a vehicle in', () => {
  const { identity, purchase, arrival, targets } = vehicle;
  const context = { today, market: 'US', stamp: stampAt(today) } as const;

  it('makes a record with nothing in it but what was said, stamped', () => {
    const result = takeInVehicle('vehicle-new', { identity, purchase, arrival, targets }, context);
    if (!result.ok) throw new Error('It was refused.');
    expect(vehicleSchema.parse(result.value)).toEqual(result.value);
    expect(result.value).toMatchObject({ id: 'vehicle-new', takenIn: context.stamp, identity, scans: [], sale: null });
  });

  it('names every problem with its section', () => {
    const result = takeInVehicle(
      'vehicle-new',
      {
        identity: { ...identity, vin: '' },
        purchase: { ...purchase, boughtOn: tomorrow },
        arrival: { expectedOn: null, arrivedOn: dayBefore },
        targets,
      },
      context,
    );
    if (result.ok) throw new Error('It was not refused.');
    expect(result.error.map(({ field }) => field)).toEqual([
      'identity.vin',
      'purchase.boughtOn',
      'purchase.boughtOn',
      'arrival.arrivedOn',
    ]);
  });
});
