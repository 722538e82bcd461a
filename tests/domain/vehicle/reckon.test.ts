// Whose move it is: the person named must be able to do what is named.
import { describe, expect, it } from 'vitest';
import { reckonVehicle } from '../../../app/domain/vehicle/reckon.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import {
  cleaned,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makePart,
  makeScan,
  makeShop,
  makeSignOff,
  makeSublet,
  makeVehicle,
  roadTest,
} from '../../helpers/vehicle-maker.ts';

const first = '2026-02-02';
const second = '2026-02-03';
const today = '2026-02-10';

function move(vehicle: Vehicle): string | null {
  const { nextMove } = reckonVehicle(vehicle, makeShop(), today);
  return nextMove && `${nextMove.who}: ${nextMove.what}`;
}

const scans = [makeScan(first)];
const fault = makeFault(first, { decision: makeDecision(first, { kind: 'replace' }) });

describe('the next move', () => {
  it('is nobody’s in the shop before the arrival, and the manager’s once the delivery is late', () => {
    const vehicle = makeVehicle(first, { arrival: { arrivedOn: null, expectedOn: today } });
    expect(move(vehicle)).toBe('outside: In transit, expected on 2026-02-10');
    const late = makeVehicle(first, { arrival: { arrivedOn: null, expectedOn: second } });
    expect(move(late)).toBe('manager: Chase an auction: delivery, promised for 2026-02-03');
  });

  it('is the technician’s, to scan, and then the manager’s, to decide', () => {
    const found = makeFault(first, { what: 'horn silent' });
    expect(move(makeVehicle(first, { faults: [found] }))).toBe('technician: Scan on arrival is missing');
    expect(move(makeVehicle(first, { faults: [found], scans }))).toBe('manager: Decide: horn silent');
  });

  it('is not the technician’s while the part for the repair is on its way, though scan and signatures are missing', () => {
    const part = makePart(first, { faultId: fault.id, orderedOn: first, expectedOn: '2026-02-12' });
    expect(move(makeVehicle(first, { scans, faults: [fault], parts: [part] }))).toBe(
      'outside: Part on its way: body module from Yard, expected on 2026-02-12',
    );
  });

  it('is the manager’s, to chase, once a promise has passed: of a part, a code or sublet work', () => {
    const late = { expectedOn: '2026-02-09' } as const;
    const part = makePart(first, { faultId: fault.id, orderedOn: first, ...late });
    expect(move(makeVehicle(first, { scans, faults: [fault], parts: [part] }))).toBe(
      'manager: Chase Yard: body module, promised for 2026-02-09',
    );
    const request = makeCodeRequest(first, { askedOn: first, ...late });
    expect(move(makeVehicle(first, { scans, codeRequests: [request] }))).toBe(
      'manager: Chase Code desk: immobiliser code, promised for 2026-02-09',
    );
    const sublet = makeSublet(first, { sentOn: first, ...late });
    expect(move(makeVehicle(first, { scans, sublets: [sublet] }))).toBe(
      'manager: Chase Glass people: windscreen, promised for 2026-02-09',
    );
  });

  it('is the late one’s where one promise still stands and another has passed', () => {
    const stands = makePart(first, { what: 'lamp', orderedOn: first, expectedOn: today });
    const late = makeSublet(first, { sentOn: first, expectedOn: second });
    expect(move(makeVehicle(first, { scans, parts: [stands], sublets: [late] }))).toContain('manager: Chase Glass');
  });

  it('is the technician’s as soon as something can be done beside the wait', () => {
    const part = makePart(first, { orderedOn: first });
    expect(move(makeVehicle(first, { scans, faults: [fault], parts: [part] }))).toBe(
      'technician: Replace: wipers dead',
    );
  });

  it('goes on to the proof, the presentation and the paper in this order', () => {
    const done = makeVehicle(first, {
      purchase: { paperReceivedOn: null },
      scans,
      faults: [{ ...fault, doneOn: second }],
    });
    expect(move(done)).toBe('technician: Post-repair scan is missing');
    const scanned = { ...done, scans: [...scans, makeScan(second, { kind: 'post-repair' })] };
    expect(move(scanned)).toBe('technician: Not signed: Road test');
    const proven = { ...scanned, signOffs: [makeSignOff(second, roadTest.id)] };
    expect(move(proven)).toBe('sales: Not signed: Cleaned');
    const unpriced = { ...proven, targets: { ...proven.targets, askingCents: null } };
    const presented = { ...unpriced, signOffs: [...proven.signOffs, makeSignOff(second, cleaned.id)] };
    expect(move(presented)).toBe('manager: Asking price is missing');
    const priced = { ...presented, targets: done.targets };
    expect(move(priced)).toBe('manager: Title has not come');
    const ready = { ...priced, purchase: { ...priced.purchase, paperReceivedOn: today } };
    expect(move(ready)).toBe('sales: Offer it');
  });

  it('is none after the sale', () => {
    const sale = { soldOn: second, priceCents: 1, buyer: '', paidOffOn: null };
    expect(move(makeVehicle(first, { sale }))).toBeNull();
  });
});

describe('the reckoning of one vehicle', () => {
  it('counts holding by the days held, and one more where the shop counts the first day', () => {
    const vehicle = makeVehicle(first);
    const rates = { overheadCentsPerDay: 1_000 };
    expect(reckonVehicle(vehicle, makeShop({ rates }), today).costs.holdingCents).toBe(8_000);
    const counts = makeShop({ rates: { ...rates, countsFirstDay: true } });
    expect(reckonVehicle(vehicle, counts, today)).toMatchObject({
      held: { heldDays: 9 },
      costs: { holdingCents: 9_000 },
    });
  });
});
