// What of a vehicle a change has changed, for its history.
import { describe, expect, it } from 'vitest';
import { changedParts, historyEntrySchema } from '../../../app/domain/people/history-entry.ts';
import { makeNote, makePart, makeVehicle } from '../../helpers/vehicle-maker.ts';

describe('the changed parts', () => {
  const part = makePart('2026-03-01');
  const vehicle = makeVehicle('2026-03-01', { parts: [part] });

  it('are none between equal states, whatever the order of their keys', () => {
    const shuffled = { ...vehicle, identity: Object.fromEntries(Object.entries(vehicle.identity).reverse()) };
    expect(changedParts(vehicle, { ...vehicle, ...shuffled } as typeof vehicle)).toEqual([]);
  });

  it('are the section that was set', () => {
    const after = { ...vehicle, arrival: { ...vehicle.arrival, expectedOn: '2026-03-09' } };
    expect(changedParts(vehicle, after)).toEqual([{ place: 'arrival', before: vehicle.arrival, after: after.arrival }]);
  });

  it('are the facts that were put, changed and removed, each once', () => {
    const note = makeNote('2026-03-02');
    const changed = { ...part, what: 'another module' };
    const parts = changedParts(vehicle, { ...vehicle, parts: [changed], notes: [note] });
    expect(parts).toEqual([
      { place: `parts/${part.id}`, before: part, after: changed },
      { place: `notes/${note.id}`, before: null, after: note },
    ]);
    expect(changedParts({ ...vehicle, notes: [note] }, vehicle)).toEqual([
      { place: `notes/${note.id}`, before: note, after: null },
    ]);
  });

  it('of taking a change back are those of the change, the other way round', () => {
    const after = { ...vehicle, parts: [] };
    const [there] = changedParts(vehicle, after);
    const [back] = changedParts(after, vehicle);
    expect(back).toEqual({ place: there?.place, before: there?.after, after: there?.before });
  });

  it('fit into a line of history', () => {
    const parts = changedParts(vehicle, { ...vehicle, parts: [], sale: null });
    const entry = {
      at: '2026-03-04T10:00:00.000Z',
      by: 'ada-1',
      kind: 'change',
      label: 'Part removed',
      reason: '',
      revision: 2,
      parts,
      isShortened: false,
    };
    expect(historyEntrySchema.safeParse(entry).success).toBe(true);
  });
});
