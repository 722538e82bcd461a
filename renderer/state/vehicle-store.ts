// The open vehicle: read, changed one change after the other, read again when something else changed it. Drafts are not here.
import type { AppError } from '../../app/contract/app-error.ts';
import type { ChannelInput, ChannelOutput } from '../../app/contract/channels.ts';
import type { VehicleView } from '../../app/contract/views.ts';
import type { Result } from '../../app/domain/shared/result.ts';
import type { VehicleChange } from '../../app/domain/vehicle/change.ts';
import { ask, on } from '../bridge.ts';
import { deskStore, takeDesk } from './desk-store.ts';
import { arrived, asked, failed, type OpenVehicle } from './open-vehicle.ts';
import { createStore } from './store.ts';

export const vehicleStore = createStore<OpenVehicle>({ state: 'none' });

/** The revision each vehicle of this session was last seen at: a queued change may outlive the screen it came from. */
const revisions = new Map<string, number>();
/** Changes under way. While there are some, an event about the vehicle is their own echo. */
let changing = 0;
let queue: Promise<unknown> = Promise.resolve();

let lastTurn = 0;

function nextTurn(): number {
  lastTurn += 1;
  return lastTurn;
}

function take(view: VehicleView, turn: number): void {
  vehicleStore.update((open) => arrived(open, view, turn));
  const open = vehicleStore.read();
  // The revision of what is shown; of a vehicle that is no longer shown, the one its last answer had.
  const isShown = open.state === 'here' && open.id === view.vehicle.id;
  revisions.set(view.vehicle.id, isShown ? open.view.revision : view.revision);
}

async function read(id: string): Promise<void> {
  const turn = nextTurn();
  const answer = await ask('vehicle:open', { id });
  if (answer.ok) take(answer.value, turn);
  else vehicleStore.update((open) => failed(open, id, answer.error));
}

export function openVehicle(id: string): Promise<void> {
  vehicleStore.update((open) => asked(open, id));
  return read(id);
}

type Changed = Result<ChannelOutput<'vehicle:change'>, AppError>;

async function change(
  id: string,
  asking: (baseRevision: number) => Promise<Changed>,
): Promise<Result<VehicleView, AppError>> {
  const turn = nextTurn();
  const answer = await asking(revisions.get(id) ?? 1);
  if (answer.ok) {
    const { view, desk } = answer.value;
    take(view, turn);
    takeDesk(desk, view.savedAt);
    return { ok: true, value: view };
  }
  // What is shown is no longer what is kept. The draft lies over whatever comes back, so nothing typed is lost.
  if (answer.error.code === 'stale-revision') await read(id);
  return answer;
}

/** After the changes that are under way. The answer comes once it is safely written, or refused. */
function inTurn(doing: () => Promise<Result<VehicleView, AppError>>): Promise<Result<VehicleView, AppError>> {
  changing += 1;
  const done = queue.then(doing);
  queue = done.finally(() => {
    changing -= 1;
  });
  return done;
}

/** Makes one change to the open vehicle. */
export function changeVehicle(id: string, wanted: VehicleChange): Promise<Result<VehicleView, AppError>> {
  return inTurn(() => change(id, (baseRevision) => ask('vehicle:change', { id, baseRevision, change: wanted })));
}

/** Adds a photograph or document. Whatever else has changed, it is added all the same: a stale revision is read anew and tried once more. */
export function addToVehicle(
  id: string,
  attachment: Omit<ChannelInput<'attachment:add'>, 'id' | 'baseRevision'>,
): Promise<Result<VehicleView, AppError>> {
  const adding = () => change(id, (baseRevision) => ask('attachment:add', { id, baseRevision, ...attachment }));
  return inTurn(async () => {
    const answer = await adding();
    return !answer.ok && answer.error.code === 'stale-revision' ? adding() : answer;
  });
}

/** Takes the vehicle out of the fleet, as if it had never been taken in. Undo brings it back. */
export async function withdrawVehicle(id: string): Promise<Result<null, AppError>> {
  await queue;
  const answer = await ask('vehicle:withdraw', { id, baseRevision: revisions.get(id) ?? 1 });
  if (!answer.ok) return answer;
  takeDesk(answer.value, new Date().toISOString());
  return { ok: true, value: null };
}

/** Reads the open vehicle again when an undo, another person at the desk or a new day changed what it shows. */
export function followVehicle(): () => void {
  const readAgain = () => {
    const open = vehicleStore.read();
    if (open.state !== 'none') void read(open.id);
  };
  let person = deskStore.read()?.person.id;
  const stops = [
    on('lot:row-changed', ({ id }) => {
      const open = vehicleStore.read();
      if (open.state !== 'none' && open.id === id && changing === 0) readAgain();
    }),
    on('lot:all-changed', readAgain),
    on('lot:past-read', () => {
      const open = vehicleStore.read();
      // An answer from before may still be on its way.
      if (open.state !== 'here' || open.view.isForecastToCome) readAgain();
    }),
    deskStore.subscribe(() => {
      const now = deskStore.read()?.person.id;
      if (now !== person) readAgain();
      person = now;
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
