// Taking a vehicle in, changing it, withdrawing it, and taking a change back. Each returns only after the record is safely written.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import { applyChange, describeChange } from '../domain/vehicle/apply-change.ts';
import { takeInVehicle } from '../domain/vehicle/take-in.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { Telling } from '../storage/fleet-history.ts';
import type { Kept } from '../storage/kept.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';
import { destroyCodesOfRemoved } from './destroy-overdue-codes.ts';
import { refusalOf, withHiddenKept } from './role-rules.ts';
import type { Step } from './undo-stack.ts';

function nameOf(vehicle: Vehicle): string {
  return vehicle.identity.stockNumber;
}

/** The vehicle that already has this VIN or stock number and is still in the lot, as a problem at its field. */
function sameVehicle(context: DeskContext, id: string, identity: Vehicle['identity'], prefix: string) {
  const others = [...context.store.vehicles().values()].map((kept) => kept.data).filter((vehicle) => vehicle.id !== id);
  const problems = [];
  const sameVin = others.find(
    (vehicle) => vehicle.sale === null && identity.vin !== '' && vehicle.identity.vin === identity.vin,
  );
  if (sameVin)
    problems.push({
      field: `${prefix}vin`,
      sentence: `This VIN is in the lot already, as stock number ${nameOf(sameVin)}. Open that vehicle, or correct the VIN.`,
    });
  const sameStock = others.find(
    (vehicle) => nameOf(vehicle).toLowerCase() === identity.stockNumber.trim().toLowerCase(),
  );
  if (sameStock)
    problems.push({
      field: `${prefix}stockNumber`,
      sentence: 'This stock number belongs to another vehicle. Choose another one.',
    });
  return problems;
}

export async function takeIn(
  context: DeskContext,
  input: ChannelInput<'vehicle:take-in'>,
): Answer<ChannelOutput<'vehicle:take-in'>> {
  const id = context.deps.newIdentifier();
  const problems = sameVehicle(context, id, input.identity, 'identity.');
  const made = takeInVehicle(id, input, context.changeContext());
  if (!made.ok) return refuse('refused', '', [...problems, ...made.error]);
  if (problems.length > 0) return refuse('refused', '', problems);
  if (context.store.shop() === null) {
    const settled = await context.store.saveShop(context.shop(), 0);
    if (!settled.ok) return refuseStorage(settled.error);
  }
  const what = 'taken in';
  const saved = await context.store.saveVehicle(made.value, 0, context.telling('take-in', what));
  if (!saved.ok) return refuseStorage(saved.error);
  const label = `${nameOf(made.value)} ${what}`;
  context.undo.push({ vehicleId: id, label, what, before: null, after: saved.value.data });
  context.emitRow(id);
  return ok({ view: context.view(saved.value), desk: context.desk() });
}

/** Saves the record that a permitted change has made of `kept`, as one act that can be undone; `what` is what a person would call it. */
export async function saveChanged(
  context: DeskContext,
  kept: Kept<Vehicle>,
  next: Vehicle,
  what: string,
): Answer<ChannelOutput<'vehicle:change'>> {
  const saved = await context.store.saveVehicle(next, kept.revision, context.telling('change', what));
  if (!saved.ok) return refuseStorage(saved.error);
  const label = `${nameOf(kept.data)}: ${what}`;
  context.undo.push({ vehicleId: next.id, label, what, before: kept.data, after: saved.value.data });
  await destroyCodesOfRemoved(context, kept.data, saved.value.data);
  context.emitRow(next.id);
  return ok({ view: context.view(saved.value), desk: context.desk() });
}

export async function changeVehicle(
  context: DeskContext,
  input: ChannelInput<'vehicle:change'>,
): Answer<ChannelOutput<'vehicle:change'>> {
  const kept = context.visible(input.id);
  if (!kept) return refuse('not-found');
  const { role } = context.person();
  const rights = context.rights();
  const change = withHiddenKept(rights, kept.data, input.change);
  const refusal = refusalOf(role, kept.data, change, rights);
  if (refusal !== null) return refuse('not-allowed', refusal);
  if (kept.revision !== input.baseRevision) return refuse('stale-revision');
  const problems =
    change.kind === 'set' && change.section === 'identity' ? sameVehicle(context, input.id, change.value, '') : [];
  const applied = applyChange(kept.data, change, context.changeContext());
  if (!applied.ok) return refuse('refused', '', [...problems, ...applied.error]);
  if (problems.length > 0) return refuse('refused', '', problems);
  return saveChanged(context, kept, applied.value, describeChange(kept.data, change));
}

export async function withdraw(
  context: DeskContext,
  input: ChannelInput<'vehicle:withdraw'>,
): Answer<ChannelOutput<'vehicle:withdraw'>> {
  const kept = context.visible(input.id);
  if (!kept) return refuse('not-found');
  const what = 'withdrawn';
  const telling = context.telling('withdraw', what);
  const done = await context.store.withdrawVehicle(input.id, input.baseRevision, telling);
  if (!done.ok) return refuseStorage(done.error);
  const label = `${nameOf(kept.data)} ${what}`;
  context.undo.push({ vehicleId: input.id, label, what, before: kept.data, after: null });
  context.emitRow(input.id);
  return ok(context.desk());
}

/** Brings the vehicle to `target` (null: out of the lot), as a new save on top of whatever is there, told as an act of its own. */
async function bringTo(context: DeskContext, vehicleId: string, target: Vehicle | null, telling: Telling) {
  const kept = context.store.vehicles().get(vehicleId);
  if (target === null) return context.store.withdrawVehicle(vehicleId, kept?.revision ?? 0, telling);
  if (kept) return context.store.saveVehicle(target, kept.revision, telling);
  const back = await context.store.bringBackVehicle(vehicleId, telling);
  if (!back.ok || JSON.stringify(back.value.data) === JSON.stringify(target)) return back;
  return context.store.saveVehicle(target, back.value.revision, telling);
}

/**
 * Brings every vehicle of the act to its side of it. Stops at the first that cannot be: the act stays where it is, and trying again
 * goes on with those that are not there yet.
 */
async function bringAll(context: DeskContext, step: Step, side: 'before' | 'after', telling: Telling) {
  const further = step.further ?? [];
  for (const part of [step, ...further]) {
    const kept = context.store.vehicles().get(part.vehicleId);
    const isThere = part[side] === null ? kept === undefined : kept?.data === part[side];
    if (further.length > 0 && isThere) continue;
    const done = await bringTo(context, part.vehicleId, part[side], telling);
    if (!done.ok) return done;
    context.forecasts.noteChange(part.vehicleId, context.store.vehicles().get(part.vehicleId)?.data ?? null);
  }
  if (further.length === 0) context.emitRow(step.vehicleId);
  else context.deps.emit('lot:all-changed', {});
  return ok(null);
}

export async function undo(context: DeskContext): Answer<ChannelOutput<'edit:undo'>> {
  const step = context.undo.nextUndo();
  if (!step) return refuse('nothing-to-undo');
  const done = await bringAll(context, step, 'before', context.telling('undo', step.what));
  if (!done.ok) return refuseStorage(done.error);
  context.undo.wasUndone();
  return ok({ vehicleId: step.vehicleId, desk: context.desk() });
}

export async function redo(context: DeskContext): Answer<ChannelOutput<'edit:redo'>> {
  const step = context.undo.nextRedo();
  if (!step) return refuse('nothing-to-undo');
  const done = await bringAll(context, step, 'after', context.telling('redo', step.what));
  if (!done.ok) return refuseStorage(done.error);
  context.undo.wasRedone();
  for (const { before, after } of [step, ...(step.further ?? [])])
    if (before !== null && after !== null) await destroyCodesOfRemoved(context, before, after);
  return ok({ vehicleId: step.vehicleId, desk: context.desk() });
}
