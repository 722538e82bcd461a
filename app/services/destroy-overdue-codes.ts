// Destroys kept codes whose time is over: of vehicles sold or taken out long enough ago at the start and on each new day, of a request with
// its removal. A line in the history first. Needs no pass phrase: codes must go in time even when nobody opens the vault.
import { codeName } from '../domain/codes/code-name.ts';
import { type PlaceOfCode, type WhyDestroyed, whyDestroyed } from '../domain/codes/codes-overdue.ts';
import { plural } from '../domain/shared/text.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { Vault } from '../storage/vault/vault.ts';
import type { CodeRef } from '../storage/vault/vault-data.ts';
import { withdrawnOn } from '../storage/withdrawn-on.ts';
import type { DeskContext } from './desk-context.ts';

type Gone = { readonly by: string; readonly happened: string; readonly reason: string };

async function heldCodes(context: DeskContext) {
  if (context.store.isReadOnly !== null) return null;
  const vault = await context.vault.vault();
  if (!vault.ok) return null;
  const marks = await vault.value.marks();
  if (!marks.ok) return null;
  const held = marks.value.filter(({ state }) => state === 'held').map(({ ref }) => ref);
  return held.length === 0 ? null : { vault: vault.value, held };
}

/** The history has it first: a code that is gone without a word cannot be told from one that never was. */
async function destroy(
  context: DeskContext,
  vault: Vault,
  { ref, module }: { readonly ref: CodeRef; readonly module: string },
  { by, happened, reason }: Gone,
): Promise<boolean> {
  const name = codeName({ kind: ref.kind, module }, context.shop().codeKinds);
  const told = await context.store.noteHistory(ref.vehicleId, {
    by,
    kind: 'destroy-code',
    label: `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${happened}`,
    reason,
    about: `codeRequests/${ref.requestId}`,
  });
  if (!told.ok) return false;
  const shown = context.vault.shown();
  if (shown?.ref.vehicleId === ref.vehicleId && shown.ref.requestId === ref.requestId) context.vault.hide();
  const gone = await vault.destroy(ref, by, reason);
  return gone.ok;
}

async function placeOf(context: DeskContext, ref: CodeRef): Promise<PlaceOfCode> {
  const vehicle = context.store.vehicles().get(ref.vehicleId)?.data;
  if (vehicle) {
    const hasRequest = vehicle.codeRequests.some(({ id }) => id === ref.requestId);
    return { in: 'fleet', soldOn: vehicle.sale?.soldOn ?? null, hasRequest };
  }
  const day = await withdrawnOn(context.store.folder, ref.vehicleId);
  return day === null ? { in: 'nowhere' } : { in: 'withdrawn', withdrawnOn: day };
}

function reasonOf(why: WhyDestroyed, days: number): string {
  const after = plural(days, 'day', 'days');
  switch (why) {
    case 'sold':
      return `${after} after the sale, as the shop has set`;
    case 'withdrawn':
      return `${after} after the vehicle was taken out of the fleet, as the shop has set`;
    case 'no-request':
      return 'Its request is not in the record any more';
  }
}

/** How many were destroyed. What cannot be done now is done at the next start or on the next day. */
export async function destroyOverdueCodes(context: DeskContext): Promise<number> {
  const found = await heldCodes(context);
  if (found === null) return 0;
  await context.store.whole;
  const days = context.shop().daysUntilCodesAreDestroyed;
  let destroyed = 0;
  for (const ref of found.held) {
    const why = whyDestroyed(await placeOf(context, ref), days, context.today());
    if (why === null) continue;
    const vehicle = context.store.vehicles().get(ref.vehicleId)?.data;
    const module = vehicle?.codeRequests.find(({ id }) => id === ref.requestId)?.module ?? '';
    const gone = { by: 'program', happened: 'destroyed by the program', reason: reasonOf(why, days) };
    if (!(await destroy(context, found.vault, { ref, module }, gone))) return destroyed;
    destroyed += 1;
  }
  if (destroyed > 0) context.deps.emit('vault:changed', {});
  return destroyed;
}

/**
 * After requests were removed and that is saved: their codes go too, and undo does not bring them back. One that cannot be destroyed now
 * goes at the next start, because its request is not in the record any more.
 */
export async function destroyCodesOfRemoved(context: DeskContext, before: Vehicle, after: Vehicle): Promise<void> {
  const kept = new Set(after.codeRequests.map(({ id }) => id));
  const removed = before.codeRequests.filter(({ id }) => !kept.has(id));
  if (removed.length === 0) return;
  const found = await heldCodes(context);
  for (const { id, module } of removed) {
    const ref = found?.held.find(({ vehicleId, requestId }) => vehicleId === before.id && requestId === id);
    if (found === null || ref === undefined) continue;
    const gone = { by: context.person().id, happened: 'destroyed', reason: 'Its request was removed' };
    await destroy(context, found.vault, { ref, module }, gone);
  }
  context.deps.emit('vault:changed', {});
}
