// The use cases on a real folder: what is kept, what is refused and why, what can be taken back, what survives a new start.
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { VehicleChange } from '../../app/domain/vehicle/change.ts';
import { openTestDesk, type TestDesk, takeInOf } from '../helpers/open-test-desk.ts';

// Two of the eleven VINs worked out in the trade facts, one for each check digit (computed by 49 CFR 565.15(c)).
const vinOne = '1M8GDM9A3KP000009';
const vinTwo = '1M8GDM9A4KP000004';

const fault = {
  id: 'fault-one',
  foundOn: '2026-03-05',
  what: 'Body control module does not answer',
  area: 'control-module',
  module: 'Body control',
  codes: ['U0140'],
  note: '',
  decision: null,
  doneOn: null,
  tellBuyer: true,
} as const;

let desk: TestDesk;
beforeEach(async () => {
  desk = await openTestDesk();
});
afterEach(async () => {
  expect(desk.reported).toEqual([]);
  await desk.discard();
});

async function change(id: string, baseRevision: number, changeValue: VehicleChange) {
  return desk.ask('vehicle:change', { id, baseRevision, change: changeValue });
}

describe('taking a vehicle in', () => {
  it('keeps it in the lot, tells the page, and writes one file', async () => {
    const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    expect(view.revision).toBe(1);
    expect(view.held.heldDays).toBe(16);
    expect(view.held.now.standing).toBe('inspect');
    const rows = await desk.ask('lot:read', {});
    expect(rows.map((row) => row.identity.stockNumber)).toEqual(['LW-1001']);
    expect(await readdir(join(desk.folder, 'fleet', 'vehicles'))).toEqual([`${view.vehicle.id}.json`]);
    expect(desk.emitted.some((event) => event.name === 'lot:row-changed')).toBe(true);
  });

  it('refuses a VIN that is in the lot already and names the vehicle that has it', async () => {
    await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    const error = await desk.refused('vehicle:take-in', takeInOf('LW-1002', vinOne));
    expect(error.code).toBe('refused');
    expect(error.problems).toEqual([
      expect.objectContaining({ field: 'identity.vin', sentence: expect.stringContaining('LW-1001') }),
    ]);
  });

  it('refuses a stock number that another vehicle has', async () => {
    await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    const error = await desk.refused('vehicle:take-in', takeInOf('lw-1001', vinTwo));
    expect(error.problems.map((problem) => problem.field)).toEqual(['identity.stockNumber']);
  });

  it('says at once everything that stands against it', async () => {
    const takeIn = takeInOf('LW-1001', '1M8GDM9A3KP00000');
    const error = await desk.refused('vehicle:take-in', {
      ...takeIn,
      purchase: { ...takeIn.purchase, boughtOn: '2026-03-19' },
    });
    expect(error.problems.map((problem) => problem.field)).toEqual(
      expect.arrayContaining(['identity.vin', 'purchase.boughtOn', 'arrival.arrivedOn']),
    );
    expect(await desk.ask('lot:read', {})).toEqual([]);
  });
});

describe('changing a vehicle', () => {
  it('shows the change in causes, gates and money, and keeps it over a new start', async () => {
    const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    const id = taken.view.vehicle.id;
    const withFault = await change(id, 1, { kind: 'put', list: 'faults', item: { ...fault, codes: ['U0140'] } });
    expect(withFault.view.readiness.gates.find((gate) => gate.key === 'decided')?.state).toBe('open');
    const withPart = await change(id, 2, {
      kind: 'put',
      list: 'parts',
      item: {
        id: 'part-one',
        neededOn: '2026-03-05',
        what: 'Body control module',
        partNumber: 'BCM-77',
        supplier: 'Harrow Parts',
        faultId: 'fault-one',
        quantity: 1,
        priceCents: 42_000,
        coreChargeCents: 6_000,
        orderedOn: '2026-03-06',
        expectedOn: '2026-03-20',
        receivedOn: null,
        fittedOn: null,
        returnedOn: null,
        coreReturnedOn: null,
        chases: [],
        note: '',
      },
    });
    expect(withPart.view.costs?.committedCents).toBe(48_000);
    expect(withPart.desk.undo).toBe('LW-1001: a part added');
    desk = await desk.reopen();
    const again = await desk.ask('vehicle:open', { id });
    expect(again.revision).toBe(3);
    expect(again.vehicle).toEqual(withPart.view.vehicle);
  });

  it('refuses a change that was based on an older state, and changes nothing', async () => {
    const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    const note = {
      kind: 'put',
      list: 'notes',
      item: { id: 'note-one', on: '2026-03-10', text: 'Asked about the title.' },
    } as const;
    await change(view.vehicle.id, 1, note);
    const error = await desk.refused('vehicle:change', {
      id: view.vehicle.id,
      baseRevision: 1,
      change: { ...note, item: { ...note.item, id: 'note-two' } },
    });
    expect(error.code).toBe('stale-revision');
    expect((await desk.ask('vehicle:open', { id: view.vehicle.id })).vehicle.notes).toHaveLength(1);
  });

  it('lets two changes asked at the same moment through one after the other, the second refused as stale', async () => {
    const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    const ask = (noteId: string) =>
      desk.session.answer('vehicle:change', {
        id: view.vehicle.id,
        baseRevision: 1,
        change: { kind: 'put', list: 'notes', item: { id: noteId, on: '2026-03-10', text: noteId } },
      });
    const answers = await Promise.all([ask('note-one'), ask('note-two')]);
    expect(answers.map((answer) => answer.ok)).toEqual([true, false]);
  });

  it('stamps what is new with the person at the desk and leaves the stamp alone when it is corrected', async () => {
    const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    const id = view.vehicle.id;
    const first = await change(id, 1, {
      kind: 'put',
      list: 'notes',
      item: { id: 'note-one', on: '2026-03-10', text: 'One' },
    });
    const second = await change(id, 2, {
      kind: 'put',
      list: 'notes',
      item: { id: 'note-one', on: '2026-03-10', text: 'Two' },
    });
    expect(second.view.vehicle.notes[0]?.entered).toEqual(first.view.vehicle.notes[0]?.entered);
    expect(second.view.vehicle.notes[0]?.text).toBe('Two');
  });
});

describe('taking back', () => {
  it('undoes and redoes a change, each time as a new saved state', async () => {
    const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    const id = view.vehicle.id;
    await change(id, 1, { kind: 'put', list: 'faults', item: { ...fault, codes: [] } });
    const undone = await desk.ask('edit:undo', {});
    expect(undone.vehicleId).toBe(id);
    expect(undone.desk.redo).toBe('LW-1001: a fault added');
    const afterUndo = await desk.ask('vehicle:open', { id });
    expect(afterUndo.vehicle.faults).toEqual([]);
    expect(afterUndo.revision).toBe(3);
    await desk.ask('edit:redo', {});
    expect((await desk.ask('vehicle:open', { id })).vehicle.faults).toHaveLength(1);
  });

  it('undoes a taking-in by putting the record aside, and brings it back', async () => {
    const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    await desk.ask('edit:undo', {});
    expect(await desk.ask('lot:read', {})).toEqual([]);
    expect(await readdir(join(desk.folder, 'fleet', 'withdrawn'))).toHaveLength(1);
    await desk.ask('edit:redo', {});
    const rows = await desk.ask('lot:read', {});
    expect(rows.map((row) => row.id)).toEqual([view.vehicle.id]);
  });

  it('says so when there is nothing to take back', async () => {
    expect((await desk.refused('edit:undo', {})).code).toBe('nothing-to-undo');
    expect((await desk.refused('edit:redo', {})).code).toBe('nothing-to-undo');
  });
});

describe('the shop', () => {
  it('refuses to be left without a manager', async () => {
    const { revision, shop } = await desk.ask('shop:read', {});
    const error = await desk.refused('shop:change', {
      baseRevision: revision,
      change: { part: 'people', value: shop.people.map((person) => ({ ...person, isActive: false })) },
    });
    expect(error.problems[0]?.sentence).toContain('At least one manager');
  });

  it('refuses to remove a check that stands in a record', async () => {
    const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    await change(view.vehicle.id, 1, {
      kind: 'put',
      list: 'signOffs',
      item: {
        id: 'sign-one',
        checkId: 'road-test',
        signedOn: '2026-03-10',
        signedBy: 'manager',
        result: 'passed',
        note: '',
      },
    });
    const { revision, shop } = await desk.ask('shop:read', {});
    const error = await desk.refused('shop:change', {
      baseRevision: revision,
      change: { part: 'checklist', value: shop.checklist.filter((check) => check.id !== 'road-test') },
    });
    expect(error.problems[0]?.sentence).toContain('Switch it off');
  });

  it('reckons the fleet again when rates change', async () => {
    await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    const before = (await desk.ask('lot:read', {}))[0]?.money?.spentCents ?? 0;
    const { revision, shop } = await desk.ask('shop:read', {});
    await desk.ask('shop:change', {
      baseRevision: revision,
      change: { part: 'rates', value: { ...shop.rates, overheadCentsPerDay: 1_000 } },
    });
    const after = (await desk.ask('lot:read', {}))[0]?.money?.spentCents ?? 0;
    expect(after - before).toBe(16 * 1_000);
  });
});

describe('a new day', () => {
  it('is noticed, and everything is reckoned for it', async () => {
    await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    desk.setToday('2026-03-20');
    desk.session.dayMayHaveChanged();
    expect(desk.emitted.some((event) => event.name === 'lot:all-changed')).toBe(true);
    expect((await desk.ask('lot:read', {}))[0]?.held.heldDays).toBe(18);
  });
});

describe('sheets', () => {
  it('prints into the fleet folder under a plain name and opens it again by that name only', async () => {
    const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
    const [printed] = await desk.ask('sheet:print', { kind: 'job-sheet', vehicleIds: [view.vehicle.id] });
    const fileName = printed?.fileName ?? '';
    const bytes = await readFile(join(desk.folder, 'fleet', 'sheets', fileName));
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    await desk.ask('sheet:open', { fileName });
    expect(desk.opened).toEqual([join(desk.folder, 'fleet', 'sheets', fileName)]);
    for (const bad of ['../shop.json', '..\\shop.json', '/etc/passwd', 'nothing.pdf', '.pdf']) {
      expect((await desk.refused('sheet:open', { fileName: bad })).code).toBe('not-found');
    }
    expect(desk.opened).toHaveLength(1);
  });
});
