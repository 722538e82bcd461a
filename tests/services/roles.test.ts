// Who may ask what, and what leaves the main process for whom: the table of roles is itself the test.

import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type ChannelName, channels } from '../../app/contract/channels.ts';
import { nothingElseRead } from '../../app/domain/diagnosis/scan.ts';
import type { Role } from '../../app/domain/fleet/shop.ts';
import type { VehicleChange } from '../../app/domain/vehicle/change.ts';
import { noTargets } from '../../app/domain/vehicle/purchase.ts';
import { blankRequest } from '../helpers/blank-request.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';

const vinOne = '1M8GDM9A3KP000009';
const roles: readonly Role[] = ['manager', 'technician', 'sales'];
const personOf: Readonly<Record<Role, string>> = { manager: 'manager', technician: 'tech-one', sales: 'sales-one' };

/** M, T, S: who may ask. Written out by hand, so that a change of the contract has to be made here too. */
const whoMayAsk: Readonly<Record<ChannelName, string>> = {
  'desk:read': 'MTS',
  'desk:set-person': 'MTS',
  'people:sign-in': 'MTS',
  'people:wait': 'MTS',
  'people:lock': 'MTS',
  'people:active': 'MTS',
  'people:change-secret': 'MTS',
  'people:give-secret': 'M',
  'people:take-secret': 'M',
  'people:bring-back-keys': 'MTS',
  'desk:set-theme': 'MTS',
  'lot:read': 'MTS',
  'vehicle:open': 'MTS',
  'vehicle:take-in': 'M',
  'vehicle:change': 'MTS',
  'vehicle:what-if': 'M',
  'vehicle:withdraw': 'M',
  'vehicle:history': 'MT',
  'attachment:add': 'MTS',
  'attachment:read': 'MTS',
  'attachment:open': 'MTS',
  'cases:find': 'MT',
  'edit:undo': 'MT',
  'edit:redo': 'MT',
  'money:read': 'M',
  'money:export': 'M',
  'money:show-folder': 'M',
  'shop:read': 'M',
  'shop:change': 'M',
  'shop:logo': 'MTS',
  'shop:set-logo': 'M',
  'programming:pack': 'MT',
  'programming:routes': 'MT',
  'next-jobs:read': 'MT',
  'codes:usual': 'MT',
  'waiting:read': 'MT',
  'waiting:export': 'MT',
  'sheet:preview': 'MTS',
  'sheet:print': 'MTS',
  'sheet:open': 'MTS',
  'sheet:show-folder': 'MTS',
  'sheet:preview-fleet': 'MTS',
  'sheet:make': 'MTS',
  'sheet:cancel': 'MTS',
  'sheet:choice': 'MTS',
  'sheet:find-mark': 'MTS',
  'calendar:places': 'M',
  'calendar:suggest-holidays': 'M',
  'archive:write': 'M',
  'archive:size': 'M',
  'archive:open': 'M',
  'list:look': 'M',
  'list:try': 'M',
  'list:take-in': 'M',
  'table:export': 'MTS',
  'table:show-folder': 'MTS',
  'vault:state': 'MT',
  'vault:make': 'M',
  'vault:unlock': 'MT',
  'vault:lock': 'MT',
  'vault:codes': 'MT',
  'vault:put-code': 'MT',
  'vault:look': 'MT',
  'vault:hide': 'MT',
  'vault:copy': 'MT',
  'vault:destroy': 'M',
  'vault:add-person': 'M',
  'vault:remove-person': 'M',
  'vault:change-pass-phrase': 'MT',
  'vault:recover': 'M',
  'vault:new-recovery-key': 'M',
  'vault:start-anew': 'M',
  'fleet:choose': 'M',
  'fleet:restore-trouble': 'M',
  'fleet:settle-trouble': 'M',
  'fleet:take-over': 'M',
  'fleet:back-up': 'M',
  'program:read': 'MTS',
  'program:report': 'MTS',
  'safety:read': 'M',
  'safety:preview-trouble': 'M',
  'safety:preview-backup': 'M',
  'safety:preview-vehicle': 'M',
  'safety:restore-all': 'M',
  'safety:restore-vehicle': 'M',
  'safety:choose-second': 'M',
  'safety:leave-second': 'M',
  'sample:open': 'M',
  'sample:leave': 'M',
  'sample:begin-again': 'M',
  'sample:show-put-aside': 'M',
};

let desk: TestDesk;
let vehicleId: string;
let revision: number;

async function at(role: Role): Promise<void> {
  await desk.ask('desk:set-person', { personId: personOf[role] });
}

beforeEach(async () => {
  desk = await openTestDesk();
  const shop = await desk.ask('shop:read', {});
  await desk.ask('shop:change', { baseRevision: shop.revision, change: { part: 'people', value: [...testPeople] } });
  const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
  vehicleId = taken.view.vehicle.id;
  revision = taken.view.revision;
  await put({
    kind: 'put',
    list: 'otherCosts',
    item: { id: 'cost-one', spentOn: '2026-03-09', what: 'Plates', amountCents: 4_711 },
  });
  await put({
    kind: 'put',
    list: 'sublets',
    item: {
      id: 'sublet-one',
      notedOn: '2026-03-09',
      what: 'Windscreen',
      supplier: 'Clearview',
      area: 'body',
      faultId: null,
      sentOn: null,
      expectedOn: null,
      backOn: null,
      quotedCents: 23_456,
      invoicedCents: null,
      chases: [],
      note: '',
    },
  });
});
afterEach(() => desk.discard());

async function put(change: VehicleChange) {
  const answer = await desk.ask('vehicle:change', { id: vehicleId, baseRevision: revision, change });
  revision = answer.view.revision;
  return answer.view;
}

describe('channels', () => {
  it('are open to exactly the roles in the table', () => {
    const letters: Readonly<Record<Role, string>> = { manager: 'M', technician: 'T', sales: 'S' };
    const declared = Object.fromEntries(
      Object.entries(channels).map(([name, spec]) => [
        name,
        roles
          .filter((role) => (spec.roles as readonly Role[]).includes(role))
          .map((role) => letters[role])
          .join(''),
      ]),
    );
    expect(declared).toEqual(whoMayAsk);
  });

  it.each(['technician', 'sales'] as const)('refuse what is the manager’s alone when a %s asks', async (role) => {
    await at(role);
    expect((await desk.refused('shop:read', {})).code).toBe('not-allowed');
    expect((await desk.refused('vehicle:take-in', takeInOf('LW-1002', '1M8GDM9A4KP000004'))).code).toBe('not-allowed');
    expect((await desk.refused('vehicle:withdraw', { id: vehicleId, baseRevision: revision })).code).toBe(
      'not-allowed',
    );
    expect((await desk.refused('fleet:back-up', {})).code).toBe('not-allowed');
    expect((await desk.refused('money:read', {})).code).toBe('not-allowed');
    expect((await desk.refused('money:export', { table: 'sold' })).code).toBe('not-allowed');
  });
});

/** Every amount that the record of the test vehicle holds, as the numbers that would give it away. */
const moneyOfTheVehicle = ['640000', '25000', '12000', '1099500', '150000', '600000', '80000', '4711', '23456'];

describe('the technician', () => {
  beforeEach(() => at('technician'));

  it('receives no purchase price, no margin and no amount but part prices', async () => {
    const answers = JSON.stringify([
      await desk.ask('lot:read', {}),
      await desk.ask('vehicle:open', { id: vehicleId }),
      await desk.ask('desk:read', {}),
      await desk.ask('sheet:preview', { kind: 'job-sheet', id: vehicleId }),
      await desk.ask('sheet:preview', { kind: 'readiness-sheet', id: vehicleId }),
    ]);
    for (const amount of moneyOfTheVehicle) expect(answers).not.toContain(amount);
    expect((await desk.ask('vehicle:open', { id: vehicleId })).costs).toBeNull();
  });

  it('sees by when a vehicle is likely to be ready, and may not try out what it would bring', async () => {
    const { forecast, prospect } = await desk.ask('vehicle:open', { id: vehicleId });
    expect(forecast?.likelyOn).toMatch(/^2026-/);
    expect(prospect).toBeNull();
    const changes: VehicleChange[] = [
      { kind: 'set', section: 'arrival', value: { expectedOn: null, arrivedOn: null } },
    ];
    expect((await desk.refused('vehicle:what-if', { id: vehicleId, changes })).code).toBe('not-allowed');
  });

  it('enters scans, parts and times without touching the amounts it cannot see', async () => {
    await put({
      kind: 'put',
      list: 'labour',
      item: {
        id: 'labour-one',
        workedOn: '2026-03-10',
        person: 'tech-one',
        minutes: 45,
        what: 'Scan',
        area: 'control-module',
        faultId: null,
      },
    });
    await put({
      kind: 'set',
      section: 'arrival',
      value: { expectedOn: null, arrivedOn: '2026-03-05' },
    });
    await at('manager');
    const view = await desk.ask('vehicle:open', { id: vehicleId });
    expect(view.vehicle.purchase.priceCents).toBe(640_000);
    expect(view.vehicle.otherCosts).toHaveLength(1);
    expect(view.vehicle.sublets[0]?.quotedCents).toBe(23_456);
  });

  it.each([
    {
      kind: 'set',
      section: 'targets',
      value: { ...noTargets, askingCents: 1 },
    },
    { kind: 'remove', list: 'otherCosts', id: 'cost-one' },
    { kind: 'remove', list: 'sublets', id: 'sublet-one' },
    { kind: 'set', section: 'sale', value: { soldOn: '2026-03-18', priceCents: 1, buyer: '', paidOffOn: null } },
  ] satisfies VehicleChange[])('may not change what only the manager sees: %o', async (change) => {
    expect((await desk.refused('vehicle:change', { id: vehicleId, baseRevision: revision, change })).code).toBe(
      'not-allowed',
    );
  });

  it('records a fault but does not decide about it', async () => {
    const fault = {
      id: 'fault-one',
      foundOn: '2026-03-10',
      what: 'Horn silent',
      area: 'electrical',
      module: '',
      codes: [],
      note: '',
      decision: null,
      doneOn: null,
      tellBuyer: false,
    } as const;
    await put({ kind: 'put', list: 'faults', item: { ...fault, codes: [] } });
    const decision = { kind: 'repair', decidedOn: '2026-03-10', reason: '', estimateMinutes: 30 } as const;
    const error = await desk.refused('vehicle:change', {
      id: vehicleId,
      baseRevision: revision,
      change: { kind: 'put', list: 'faults', item: { ...fault, codes: [], decision } },
    });
    expect(error.code).toBe('not-allowed');
  });
});

describe('sales', () => {
  it('sees no vehicle before the work is proven, not even by its identity', async () => {
    await at('sales');
    expect(await desk.ask('lot:read', {})).toEqual([]);
    expect((await desk.refused('vehicle:open', { id: vehicleId })).code).toBe('not-found');
    expect((await desk.refused('sheet:preview', { kind: 'readiness-sheet', id: vehicleId })).code).toBe('not-found');
    expect((await desk.refused('sheet:print', { kind: 'job-sheet', vehicleIds: [vehicleId] })).code).toBe(
      'not-allowed',
    );
  });

  it('sees a proven vehicle with its asking price, without cost and without codes', async () => {
    await put({ kind: 'remove', list: 'sublets', id: 'sublet-one' });
    await put({
      kind: 'put',
      list: 'scans',
      item: {
        ...nothingElseRead,
        id: 'scan-one',
        takenOn: '2026-03-05',
        kind: 'pre-repair',
        device: '',
        modules: [],
        note: '',
      },
    });
    await put({
      kind: 'put',
      list: 'codeRequests',
      item: {
        id: 'code-one',
        ...blankRequest('2026-03-05'),
        kind: 'radio',
        module: 'Radio',
        deviceSerial: 'A2C0000000SN77',
        proof: { document: 'Invoice', checkedOn: '2026-03-05', checkedBy: 'manager' },
        askedOn: '2026-03-05',
        askedOf: 'Code desk',
        answeredOn: '2026-03-06',
        outcome: 'given',
        feeCents: 3_333,
        keptWhere: 'Envelope 9',
      },
    });
    for (const [index, checkId] of ['road-test', 'safety-check', 'keys-proven', 'recall-check'].entries()) {
      await put({
        kind: 'put',
        list: 'signOffs',
        item: {
          id: `sign-${index}x`,
          checkId,
          signedOn: '2026-03-12',
          signedBy: 'tech-one',
          result: 'passed',
          note: '',
        },
      });
    }
    await at('sales');
    const opened = await desk.ask('vehicle:open', { id: vehicleId });
    expect(opened).toMatchObject({ costs: null, forecast: null, prospect: null });
    const answers = JSON.stringify([await desk.ask('lot:read', {}), opened]);
    expect(answers).toContain('1099500');
    for (const hidden of ['640000', '150000', '600000', '80000', '4711', '3333', 'A2C0000000SN77', 'Envelope 9']) {
      expect(answers).not.toContain(hidden);
    }
  });
});
