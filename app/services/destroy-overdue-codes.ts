// Destroys the codes of vehicles that were sold long enough ago, at the start and on each new day, with a line in their history. Needs no
// pass phrase: codes must go in time even when nobody opens the vault.
import { codeName } from '../domain/codes/code-name.ts';
import { codesOverdue } from '../domain/codes/codes-overdue.ts';
import { plural } from '../domain/shared/text.ts';
import type { DeskContext } from './desk-context.ts';

/** How many were destroyed. What cannot be done now is done at the next start or on the next day. */
export async function destroyOverdueCodes(context: DeskContext): Promise<number> {
  if (context.store.isReadOnly !== null) return 0;
  const vault = await context.vault.vault();
  if (!vault.ok) return 0;
  const marks = await vault.value.marks();
  if (!marks.ok) return 0;
  const { daysUntilCodesAreDestroyed: days, codeKinds } = context.shop();
  const held = marks.value.filter(({ state }) => state === 'held').map(({ ref }) => ref);
  if (held.length === 0) return 0;
  await context.store.whole;
  const vehicles = context.store.vehicles();
  const overdue = codesOverdue(held, (id) => vehicles.get(id)?.data ?? null, days, context.today());
  let destroyed = 0;
  for (const ref of overdue) {
    const request = vehicles.get(ref.vehicleId)?.data.codeRequests.find(({ id }) => id === ref.requestId);
    const name = codeName(request ?? { kind: ref.kind, module: '' }, codeKinds);
    const reason = `${plural(days, 'day', 'days')} after the sale, as the shop has set`;
    const told = await context.store.noteHistory(ref.vehicleId, {
      by: 'program',
      kind: 'destroy-code',
      label: `${name.charAt(0).toUpperCase()}${name.slice(1)}: destroyed by the program`,
      reason,
      about: `codeRequests/${ref.requestId}`,
    });
    if (!told.ok) return destroyed;
    const gone = await vault.value.destroy(ref, 'program', reason);
    if (!gone.ok) return destroyed;
    destroyed += 1;
  }
  if (destroyed > 0) context.deps.emit('vault:changed', {});
  return destroyed;
}
