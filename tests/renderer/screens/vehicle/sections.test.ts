// The sections of the vehicle screen: where things to do are dealt with, what is seen by whom, where something is not saved.
import { describe, expect, it } from 'vitest';
import type { VehicleView } from '../../../../app/contract/views.ts';
import { factListSchema } from '../../../../app/domain/vehicle/change.ts';
import type { Vehicle } from '../../../../app/domain/vehicle/vehicle.ts';
import { gateGroups } from '../../../../renderer/screens/vehicle/gates/gate-groups.ts';
import {
  countIn,
  holdingBySection,
  holdingIn,
  readPlace,
  sectionKeys,
  sectionOf,
  sectionsWithDrafts,
  visibleSections,
} from '../../../../renderer/screens/vehicle/page/sections.ts';
import { exampleToday, exampleVehicle, readyVehicle, reckonExample } from '../../../helpers/sheet-example.ts';

function viewOf(vehicle: Vehicle): VehicleView {
  const reckoning = reckonExample(vehicle);
  return {
    ...reckoning,
    revision: 1,
    savedAt: '2026-03-18T08:00:00.000Z',
    isReadOnly: false,
    vehicle,
    today: exampleToday,
    forecast: null,
    isForecastToCome: false,
    course: null,
    prospect: null,
  };
}
const view = viewOf(exampleVehicle);

describe('the sections', () => {
  it('have a place for every list of the record and every section of it', () => {
    const ofLists = factListSchema.options.map((list) => sectionOf({ list, id: null }));
    const ofSections = (['identity', 'purchase', 'arrival', 'targets', 'sale'] as const).map((section) =>
      sectionOf({ section }),
    );
    expect(new Set([...ofLists, ...ofSections])).toEqual(new Set(sectionKeys));
  });

  it('count what the record holds', () => {
    expect(countIn(view, 'faults')).toBe(exampleVehicle.faults.length);
    expect(countIn(view, 'programming')).toBe(exampleVehicle.jobs.length);
    expect(countIn(view, 'details')).toBeNull();
  });

  it('carry the mark of every thing that holds the sale, none lost', () => {
    const items = view.readiness.gates
      .filter((gate) => gate.state === 'open' || gate.state === 'stale')
      .flatMap((gate) => gate.items);
    const marked = [...holdingBySection(view).values()].reduce((sum, count) => sum + count, 0);
    expect(items.length).toBeGreaterThan(5);
    expect(marked).toBe(items.length);
  });

  it('carry none once the vehicle is sold', () => {
    const sold = viewOf({
      ...exampleVehicle,
      sale: { soldOn: exampleToday, priceCents: 1, buyer: '', paidOffOn: null },
    });
    expect(holdingBySection(sold).size).toBe(0);
    expect(holdingIn(sold, 'parts').size).toBe(0);
  });

  it('mark the entries that hold it by their identity', () => {
    for (const id of holdingIn(view, 'parts')) expect(exampleVehicle.parts.map((part) => part.id)).toContain(id);
    expect(holdingIn(view, 'parts').size).toBeGreaterThan(0);
  });

  it('leave out money for whoever sees none, and codes for sales', () => {
    const technician = visibleSections({ costs: null }, { seesCodes: true });
    expect(technician).not.toContain('money');
    expect(technician).not.toContain('costs');
    expect(technician).toContain('codes');
    expect(visibleSections({ costs: null }, { seesCodes: false })).not.toContain('codes');
    expect(visibleSections(view, { seesCodes: true })).toEqual(sectionKeys);
  });

  it('say where something of this vehicle is not saved', () => {
    const keys = ['v-1/parts/p-1', 'v-1/identity', 'v-1/attempts/a-1', 'v-2/notes/n-1', 'take-in'];
    expect(sectionsWithDrafts(keys, 'v-1')).toEqual(new Set(['parts', 'details', 'programming']));
  });
});

describe('a place named by a route', () => {
  it('is read when it exists, and ignored when it does not', () => {
    expect(readPlace({ list: 'parts', id: 'p-1' })).toEqual({ list: 'parts', id: 'p-1' });
    expect(readPlace({ section: 'targets' })).toEqual({ section: 'targets' });
    expect(readPlace({ list: 'elsewhere', id: null })).toBeNull();
    expect(readPlace({ section: 'parts' })).toBeNull();
  });
});

describe('what stands in the way, grouped', () => {
  it('keeps every open thing, in the order of the way', () => {
    const groups = gateGroups(view.readiness.gates);
    const holding = view.readiness.gates.filter((gate) => gate.state === 'open' || gate.state === 'stale');
    const lines = groups.flatMap((group) => group.lines);
    expect(lines.map((line) => line.gateKey)).toEqual(holding.flatMap((gate) => gate.items.map(() => gate.key)));
  });

  it('gathers the checks to be signed under one head, by their titles', () => {
    const signing = gateGroups(view.readiness.gates).filter((group) => group.title === null);
    expect(signing).toHaveLength(1);
    expect(signing[0]?.lines.map((line) => line.text)).toContain('Photographed');
    expect(signing[0]?.lines.every((line) => line.gateKey.startsWith('check:'))).toBe(true);
  });

  it('keeps the words of a check that failed or has to be signed again', () => {
    const failed = viewOf({
      ...readyVehicle,
      signOffs: readyVehicle.signOffs.map((signOff) =>
        signOff.checkId === 'photographed' ? { ...signOff, result: 'failed' as const, note: 'rain' } : signOff,
      ),
    });
    const texts = gateGroups(failed.readiness.gates).flatMap((group) => group.lines.map((line) => line.text));
    expect(texts.some((text) => text.startsWith('Failed on') && text.includes('rain'))).toBe(true);
  });
});
