// The invented dealership that comes with the program: valid today, told without contradiction, in every standing, and said to be invented.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { makes, models } from '../../app/dev/sample-fleet/makes-and-models.ts';
import { sampleFleetFiles } from '../../app/dev/sample-fleet/sample-fleet.ts';
import { suppliers } from '../../app/dev/sample-fleet/sample-shop.ts';
import { isWorkingDay } from '../../app/dev/sample-fleet/working-days.ts';
import { codeKindOf } from '../../app/domain/codes/code-name.ts';
import { filingReminder } from '../../app/domain/codes/filing-limit.ts';
import { requestStanding } from '../../app/domain/codes/request-life.ts';
import { daysBetween } from '../../app/domain/shared/day.ts';
import { standingSchema } from '../../app/domain/time/cause.ts';
import { changeDays, recordAsOf } from '../../app/domain/time/record-as-of.ts';
import { reckonVehicle } from '../../app/domain/vehicle/reckon.ts';
import { readVin } from '../../app/domain/vehicle/vin.ts';
import { readRecord } from '../../app/storage/record-file.ts';
import { recordKinds } from '../../app/storage/record-kind.ts';

const folder = fileURLToPath(new URL('../../sample-fleet/current/', import.meta.url));
const vehicleFiles = readdirSync(`${folder}vehicles`).sort();

const shopRead = readRecord(readFileSync(`${folder}shop.json`), recordKinds.shop, null);
const vehicleReads = vehicleFiles.map((name) => ({
  name,
  read: readRecord(readFileSync(`${folder}vehicles/${name}`), recordKinds.vehicle, name.replace(/\.json$/, '')),
}));

function sample() {
  if (!shopRead.ok) throw new Error(shopRead.error.reason);
  const shop = shopRead.value.data;
  const today = shop.sample?.today;
  if (!today) throw new Error('The sample does not say which day is its today.');
  const vehicles = vehicleReads.map(({ name, read }) => {
    if (!read.ok) throw new Error(`${name}: ${read.error.reason}`);
    return read.value.data;
  });
  return { shop, today, vehicles };
}

describe('the files of the sample fleet', () => {
  it('all read as records of the present version', () => {
    for (const { name, read } of vehicleReads) expect(read.ok ? read.value.version : read.error.reason, name).toBe(1);
    expect(shopRead.ok).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['logo.png', 'shop.json', 'vehicles']);
  });

  it('are byte for byte what its maker makes, twice', () => {
    const made = sampleFleetFiles();
    const names = ['logo.png', 'shop.json', ...vehicleFiles.map((name) => `vehicles/${name}`)];
    expect([...made.keys()].sort()).toEqual(names.sort());
    const again = sampleFleetFiles();
    for (const [path, bytes] of made) {
      expect(again.get(path)?.equals(bytes), path).toBe(true);
      const isSame = readFileSync(`${folder}${path}`).equals(bytes);
      expect(isSame, `${path} is not as made. Run: npx tsx app/dev/sample-fleet/write.ts`).toBe(true);
    }
  });
});

describe('the invented vehicles', () => {
  it('stand in every standing there is; about two dozen are open, sixty or more sold', () => {
    const { shop, today, vehicles } = sample();
    const standings = vehicles.map((vehicle) => reckonVehicle(vehicle, shop, today).held.now.standing);
    expect([...new Set(standings)].sort()).toEqual([...standingSchema.options].sort());
    const sold = standings.filter((standing) => standing === 'sold').length;
    expect(sold).toBeGreaterThanOrEqual(60);
    expect(vehicles.length - sold).toBeGreaterThanOrEqual(24);
    expect(vehicles.length - sold).toBeLessThanOrEqual(30);
  });

  it('have VINs that hold, of a maker’s code that nobody was given, each once', () => {
    const { vehicles } = sample();
    for (const { identity } of vehicles) {
      const reading = readVin(identity.vin, { market: 'US' });
      expect(reading.problems, identity.stockNumber).toEqual([]);
      expect(reading.checkDigit?.holds).toBe(true);
      expect(reading.modelYears).toEqual([identity.modelYear]);
      expect(reading.assignedIn).toBeNull();
      // No maker's code begins with G, in no region: see makes-and-models.ts.
      expect(identity.vin.startsWith('G')).toBe(true);
    }
    expect(new Set(vehicles.map(({ identity }) => identity.vin)).size).toBe(vehicles.length);
    expect(new Set(vehicles.map(({ identity }) => identity.vin.slice(-8))).size).toBe(vehicles.length);
    expect(new Set(vehicles.map(({ identity }) => identity.stockNumber)).size).toBe(vehicles.length);
  });

  it('are of invented makes and models only', () => {
    for (const { identity } of sample().vehicles) {
      expect(Object.keys(makes)).toContain(identity.make);
      expect(Object.values(models).map(({ model }) => model)).toContain(identity.model);
    }
  });

  it('have nothing in them that lies after the sample’s today, nor was entered later', () => {
    const { today, vehicles } = sample();
    for (const vehicle of vehicles) {
      expect(recordAsOf(vehicle, today)).toEqual(vehicle);
      expect(changeDays(vehicle).every((day) => day >= vehicle.purchase.boughtOn)).toBe(true);
    }
    for (const { read } of vehicleReads) if (read.ok) expect(read.value.savedAt.slice(0, 10) <= today).toBe(true);
  });

  it('were worked on when the workshop was open', () => {
    for (const vehicle of sample().vehicles) {
      const days = [
        ...vehicle.labour.map(({ workedOn }) => workedOn),
        ...vehicle.attempts.map(({ on }) => on),
        ...vehicle.scans.map(({ takenOn }) => takenOn),
      ];
      expect(
        days.filter((day) => !isWorkingDay(day)),
        vehicle.identity.stockNumber,
      ).toEqual([]);
    }
  });

  it('name only people and checks of the shop', () => {
    const { shop, vehicles } = sample();
    const people = shop.people.map(({ id }) => id);
    const checklist = shop.checklist.map(({ id }) => id);
    for (const { labour, attempts, signOffs } of vehicles) {
      for (const { person } of [...labour, ...attempts]) expect(people).toContain(person);
      for (const { signedBy, checkId } of signOffs) {
        expect(people).toContain(signedBy);
        expect(checklist).toContain(checkId);
      }
    }
  });
});

describe('as a manager would look at it', () => {
  const reckoned = () => {
    const { shop, today, vehicles } = sample();
    return vehicles.map((vehicle) => ({ vehicle, ...reckonVehicle(vehicle, shop, today) }));
  };
  const open = () => reckoned().filter(({ vehicle }) => vehicle.sale === null);

  it('open vehicles are held from a few days to a quarter, some of it idle, not everywhere', () => {
    const held = open().map(({ held: { heldDays } }) => heldDays);
    expect(Math.min(...held)).toBeLessThanOrEqual(3);
    expect(Math.max(...held)).toBeGreaterThan(90);
    const idle = open().filter(({ held: { byCause } }) => (byCause.idle ?? 0) > 0).length;
    expect(idle).toBeGreaterThan(6);
    expect(idle).toBeLessThan(open().length - 6);
  });

  it('one is over its budget, one has used up its margin, one has no price, a signature is stale, promises are overdue', () => {
    const all = open();
    expect(all.some(({ costs }) => (costs.budgets.at(-1)?.leftCents ?? 0) < 0)).toBe(true);
    expect(all.some(({ costs, today }) => costs.breakEvenOn !== null && costs.breakEvenOn < today)).toBe(true);
    expect(all.some(({ vehicle }) => vehicle.targets.askingCents === null)).toBe(true);
    expect(all.some(({ readiness }) => readiness.gates.some(({ state }) => state === 'stale'))).toBe(true);
    expect(all.filter(({ nextMove }) => nextMove?.what.startsWith('Chase ')).length).toBeGreaterThanOrEqual(2);
    expect(all.some(({ vehicle }) => vehicle.codeRequests.some(({ outcome }) => outcome === 'refused'))).toBe(true);
  });

  it('code requests stand at every stage of their life, and no proof is missing where one was asked', () => {
    const { shop, today, vehicles } = sample();
    const requests = vehicles.flatMap(({ codeRequests }) => codeRequests);
    const states = requests.map(
      (request) => requestStanding(request, codeKindOf(shop.codeKinds, request.kind), `${today}T12:00:00.000Z`).state,
    );
    for (const state of ['drafted', 'asked', 'chased', 'answered', 'locked', 'refused', 'closed'])
      expect(states, state).toContain(state);
    expect(requests.filter(({ askedOn, proof }) => askedOn !== null && proof === null)).toEqual([]);
    expect(requests.some((request) => filingReminder(request, shop.filingRules, today) !== null)).toBe(true);
    expect(requests.some(({ tries }) => tries.some(({ result }) => result === 'right'))).toBe(true);
  });

  it('sold vehicles mostly left something, not all, and were ready before they went', () => {
    const sold = reckoned().filter(({ vehicle }) => vehicle.sale !== null);
    const left = sold.map(({ costs }) => costs.marginLeftCents ?? 0).sort((a, b) => a - b);
    const losses = left.filter((cents) => cents < 0).length;
    expect(losses).toBeGreaterThan(3);
    expect(losses).toBeLessThan(sold.length / 3);
    expect(left[Math.floor(left.length / 2)]).toBeGreaterThan(40_000);
    expect(sold.every(({ readiness }) => readiness.isReady)).toBe(true);
  });

  it('suppliers differ in how long they take', () => {
    const meanDays = (supplier: string) => {
      const days = sample().vehicles.flatMap(({ parts }) =>
        parts.flatMap(({ supplier: by, orderedOn, receivedOn }) =>
          by === supplier && orderedOn && receivedOn ? [daysBetween(orderedOn, receivedOn)] : [],
        ),
      );
      expect(days.length, supplier).toBeGreaterThanOrEqual(8);
      return days.reduce((sum, one) => sum + one, 0) / days.length;
    };
    expect(meanDays(suppliers.counter)).toBeLessThan(meanDays(suppliers.newParts));
    expect(meanDays(suppliers.newParts)).toBeLessThan(meanDays(suppliers.salvage));
  });

  it('programming does not always work at once, and more ways than one were tried', () => {
    const attempts = sample().vehicles.flatMap((vehicle) => vehicle.attempts);
    const failed = attempts.filter(({ outcome }) => outcome !== 'worked').length;
    expect(failed / attempts.length).toBeGreaterThan(0.05);
    expect(failed / attempts.length).toBeLessThan(0.4);
    expect(new Set(attempts.map(({ route }) => route)).size).toBeGreaterThanOrEqual(4);
  });
});

describe('the invented dealer', () => {
  it('says that it is invented, where its name is shown and where its notice is printed', () => {
    const { shop } = sample();
    expect(shop.sample).not.toBeNull();
    expect(shop.dealer.name).toContain('invented');
    expect(shop.dealer.buyerNotice.toLowerCase()).toContain('invented');
    expect(shop.dealer.address.toLowerCase()).toContain('invented');
    expect(new Set(shop.people.map(({ role }) => role))).toEqual(new Set(['manager', 'technician', 'sales']));
  });
});
