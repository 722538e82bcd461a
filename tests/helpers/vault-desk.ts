// A desk with a vault and a vehicle that has two code requests and a programming job that needs the first of them. Codes are made up.
import type { ChannelInput } from '../../app/contract/channels.ts';
import { generalPack } from '../../app/domain/programming/general-pack.ts';
import { makeKeptPlan } from '../../app/domain/programming/keep-plan.ts';
import type { JobModule } from '../../app/domain/programming/programming-job.ts';
import { type Sale, saleSchema } from '../../app/domain/vehicle/purchase.ts';
import { blankRequest } from './blank-request.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople, testToday } from './open-test-desk.ts';

/** Worked example of a public encyclopedia article on the VIN; its check digit holds. */
const vin = '1M8GDM9AXKP042788';
export const managerPhrase = 'copper lamp under ferry';
export const technicianPhrase = 'seven quiet orange doors';

export type VaultDesk = {
  readonly desk: TestDesk;
  readonly vehicleId: string;
  readonly recoveryKey: string;
  readonly steps: readonly { readonly jobId: string; readonly stepId: string }[];
  at(personId: 'manager' | 'tech-one' | 'sales-one'): Promise<void>;
  change(change: ChannelInput<'vehicle:change'>['change']): Promise<void>;
  sell(soldOn: string): Promise<void>;
};

export function requestOf(id: string, kind: string, module: string) {
  return { id, ...blankRequest(testToday), kind, module, reason: 'keys not accepted' };
}

/** Every fact of a sale that is not needed here is left unknown. */
function saleOf(soldOn: string): Sale {
  const unknown = Object.fromEntries(Object.keys(saleSchema.shape).map((key) => [key, null]));
  return saleSchema.parse({ ...unknown, soldOn, priceCents: 900_000, buyer: '' });
}

/** `request-1`: immobiliser, needed by a step; `request-2`: radio; `request-3`: a key code, of no usual form. */
export async function openVaultDesk(): Promise<VaultDesk> {
  const desk = await openTestDesk();
  const { revision } = await desk.ask('shop:read', {});
  await desk.ask('shop:change', { baseRevision: revision, change: { part: 'people', value: [...testPeople] } });
  const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vin));
  const vehicleId = taken.view.vehicle.id;
  async function change(wanted: ChannelInput<'vehicle:change'>['change']) {
    const { revision: baseRevision } = await desk.ask('vehicle:open', { id: vehicleId });
    await desk.ask('vehicle:change', { id: vehicleId, baseRevision, change: wanted });
  }
  await change({ kind: 'put', list: 'codeRequests', item: requestOf('request-1', 'immobiliser', 'Body module') });
  await change({ kind: 'put', list: 'codeRequests', item: requestOf('request-2', 'radio', 'Radio') });
  await change({ kind: 'put', list: 'codeRequests', item: requestOf('request-3', 'mechanical-key', '') });
  const keys: JobModule = {
    id: 'keys',
    kind: 'keys',
    name: 'Keys',
    origin: 'kept',
    partId: null,
    codeRequestId: 'request-1',
  };
  const plan = makeKeptPlan({ modules: [keys], pack: generalPack, makerOrder: null }, testToday);
  await change({
    kind: 'put',
    list: 'jobs',
    item: {
      id: 'job-0001',
      openedOn: testToday,
      title: 'Keys',
      faultId: null,
      modules: [keys],
      plan,
      makerOrder: null,
      ticks: [],
      leftOut: [],
      formerSteps: [],
      note: '',
    },
  });
  const made = await desk.ask('vault:make', { passPhrase: managerPhrase });
  await desk.ask('vault:add-person', { personId: 'tech-one', passPhrase: technicianPhrase });
  const { codes } = await desk.ask('vault:codes', { vehicleId });
  return {
    desk,
    vehicleId,
    recoveryKey: made.recoveryKey,
    steps: (codes.find(({ requestId }) => requestId === 'request-1')?.steps ?? []).map(({ jobId, stepId }) => ({
      jobId,
      stepId,
    })),
    at: async (personId) => void (await desk.ask('desk:set-person', { personId })),
    change,
    sell: (soldOn) => change({ kind: 'set', section: 'sale', value: saleOf(soldOn) }),
  };
}
