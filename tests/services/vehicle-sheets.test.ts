// Who may print which sheet of a vehicle, and what is refused with a sentence: in the main process, on a real folder.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Role } from '../../app/domain/fleet/shop.ts';
import { rightsOf } from '../../app/domain/people/role-rights.ts';
import {
  type AnySheetKind,
  fleetSheetKindSchema,
  type SheetKind,
  sheetKindSchema,
} from '../../app/domain/sheets/sheet.ts';
import { mayOpenSheet } from '../../app/services/who-opens-sheet.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';

const personOf: Readonly<Record<Role, string>> = { manager: 'manager', technician: 'tech-one', sales: 'sales-one' };

/** Written out by hand, so that a change of the rights has to be made here too. M, T, S: who may print. */
const whoMayPrint: Readonly<Record<SheetKind, string>> = {
  'job-sheet': 'MT',
  'plan-sheet': 'MT',
  'readiness-sheet': 'MTS',
  'window-sheet': 'MS',
  'code-letter': 'M',
  'cost-sheet': 'M',
};

let desk: TestDesk;
let vehicleId: string;
beforeEach(async () => {
  desk = await openTestDesk();
  const shop = await desk.ask('shop:read', {});
  await desk.ask('shop:change', { baseRevision: shop.revision, change: { part: 'people', value: [...testPeople] } });
  const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1001', '1M8GDM9A3KP000009'));
  vehicleId = taken.view.vehicle.id;
});
afterEach(() => desk.discard());

const at = (role: Role) => desk.ask('desk:set-person', { personId: personOf[role] });

describe('sheets of one vehicle', () => {
  it('are printed by exactly the roles in the table', () => {
    const letters: Readonly<Record<Role, string>> = { manager: 'M', technician: 'T', sales: 'S' };
    const declared = Object.fromEntries(
      sheetKindSchema.options.map((kind) => [
        kind,
        (['manager', 'technician', 'sales'] as const)
          .filter((role) => rightsOf(role).prints.includes(kind))
          .map((role) => letters[role])
          .join(''),
      ]),
    );
    expect(declared).toEqual(whoMayPrint);
  });

  it.each(['window-sheet', 'code-letter', 'cost-sheet'] as const)('refuse the technician the %s', async (kind) => {
    await at('technician');
    expect((await desk.refused('sheet:preview', { kind, id: vehicleId })).code).toBe('not-allowed');
    expect((await desk.refused('sheet:print', { kind, vehicleIds: [vehicleId] })).code).toBe('not-allowed');
  });

  it('give the manager the cost sheet as a file, which nobody else may open through the program', async () => {
    const [file] = await desk.ask('sheet:print', { kind: 'cost-sheet', vehicleIds: [vehicleId] });
    expect(file?.fileName).toBe('LW-1001-cost-sheet.pdf');
    await desk.ask('sheet:open', { fileName: 'LW-1001-cost-sheet.pdf' });
    for (const role of ['technician', 'sales'] as const) {
      await at(role);
      expect((await desk.refused('sheet:open', { fileName: 'LW-1001-cost-sheet.pdf' })).code).toBe('not-allowed');
    }
  });

  it('together in one file are opened only by whoever may print every one of them', async () => {
    const make = async (kinds: readonly AnySheetKind[]) => {
      const order = { kinds: [...kinds], vehicleIds: [vehicleId], to: 'folder' as const, isJoint: true };
      const made = await desk.ask('sheet:make', order);
      return made.files[0]?.fileName ?? '';
    };
    const withCost = await make(['job-sheet', 'cost-sheet']);
    const forWork = await make(['job-sheet', 'readiness-sheet']);
    const everything = await make([...sheetKindSchema.options, ...fleetSheetKindSchema.options]);
    expect(Buffer.byteLength(everything)).toBeLessThanOrEqual(100);
    for (const fileName of [withCost, forWork, everything]) await desk.ask('sheet:open', { fileName });
    await at('technician');
    await desk.ask('sheet:open', { fileName: forWork });
    for (const fileName of [withCost, everything])
      expect((await desk.refused('sheet:open', { fileName })).code).toBe('not-allowed');
    await at('sales');
    expect((await desk.refused('sheet:open', { fileName: forWork })).code).toBe('not-allowed');
  });

  it('keep their rule where a name is told apart by an identity, and where nothing says what is in a file', () => {
    const { technician, manager } = { technician: rightsOf('technician'), manager: rightsOf('manager') };
    for (const fileName of ['A-1-cost-sheet-vehicle-7.pdf', 'money-summary-2026-03-18.pdf', 'scan.pdf']) {
      expect([fileName, mayOpenSheet(fileName, technician)]).toEqual([fileName, false]);
      expect([fileName, mayOpenSheet(fileName, manager)]).toEqual([fileName, true]);
    }
    expect(mayOpenSheet('sheets-2026-03-18-0900-job-secret.pdf', technician)).toBe(false);
  });

  it('of the fleet say in their names what stands on them: the list with margins is the manager’s', async () => {
    const order = { kinds: ['fleet-list' as const], vehicleIds: [], to: 'folder' as const, isJoint: false };
    const [file] = (await desk.ask('sheet:make', order)).files;
    expect(file?.fileName).toBe('fleet-list-2026-03-18-with-margins.pdf');
    await at('technician');
    expect((await desk.refused('sheet:open', { fileName: file?.fileName ?? '' })).code).toBe('not-allowed');
    const [own] = (await desk.ask('sheet:make', order)).files;
    await desk.ask('sheet:open', { fileName: own?.fileName ?? '' });
    await at('sales');
    expect((await desk.refused('sheet:open', { fileName: own?.fileName ?? '' })).code).toBe('not-allowed');
  });

  it('that have nothing to say are refused with what to do, and write no file', async () => {
    const plan = await desk.refused('sheet:preview', { kind: 'plan-sheet', id: vehicleId });
    expect(plan).toMatchObject({ code: 'no-sheet', detail: expect.stringContaining('no programming job') });
    const letter = await desk.refused('sheet:print', { kind: 'code-letter', vehicleIds: [vehicleId] });
    expect(letter).toMatchObject({ code: 'no-sheet', detail: expect.stringContaining('nobody to write to') });
  });
});
