// What the page may know of the codes of one vehicle: whether one is kept for each request, who may see it, and every look. No value.
import type { CodeHappening, KeptCode, KeptCodes } from '../contract/vault-view.ts';
import { codesDestroyedOn } from '../domain/codes/codes-overdue.ts';
import { stepsNeedingCode, whyNoHandOver, whyNoKeeping, whyNoLook } from '../domain/codes/who-may-look.ts';
import { ok } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { type HistoryPlace, readHistory } from '../storage/read-change-log.ts';
import type { CodeMark } from '../storage/vault/vault.ts';
import { type Answer, type DeskContext, refuseStorage } from './desk-context.ts';
import { refuseVaultProblem } from './vault-answers.ts';

const linesAtOnce = 200;
/** Of a history longer than this the oldest looks are left to the history itself. */
const mostPages = 20;

async function happeningsOf(context: DeskContext, vehicleId: string) {
  const found = new Map<string, CodeHappening[]>();
  let place: HistoryPlace | null = null;
  for (let page = 0; page < mostPages; page++) {
    const read = await readHistory(context.store.folder, vehicleId, { place, count: linesAtOnce, savedRevision: null });
    if (!read.ok) return read;
    for (const { at, by, kind, label, reason, parts } of read.value.lines) {
      if (kind !== 'put-code' && kind !== 'look-at-code' && kind !== 'destroy-code') continue;
      const requestId = parts[0]?.place.replace('codeRequests/', '') ?? '';
      found.set(requestId, [...(found.get(requestId) ?? []), { at, by, kind, label, reason }]);
    }
    place = read.value.older;
    if (place === null) break;
  }
  return ok(found);
}

async function marksOf(context: DeskContext, vehicleId: string) {
  const vault = await context.vault.vault();
  // Without a vault no code is kept; a damaged one is told of by `vault:state`, and must not hide the requests.
  if (!vault.ok) return vault.error.storage === null ? ok<readonly CodeMark[]>([]) : vault;
  const marks = await vault.value.marks();
  if (!marks.ok) return marks.error.storage === null ? ok<readonly CodeMark[]>([]) : marks;
  return ok(marks.value.filter(({ ref }) => ref.vehicleId === vehicleId));
}

export async function keptCodes(context: DeskContext, vehicle: Vehicle): Answer<KeptCodes> {
  const marks = await marksOf(context, vehicle.id);
  if (!marks.ok) return refuseVaultProblem(marks.error);
  const happenings = await happeningsOf(context, vehicle.id);
  if (!happenings.ok) return refuseStorage(happenings.error);
  const { role } = context.person();
  const { sale } = vehicle;
  const goesOn = sale === null ? null : codesDestroyedOn(sale.soldOn, context.shop().daysUntilCodesAreDestroyed);
  const codes = vehicle.codeRequests.map((request): KeptCode => {
    const mark = marks.value.find(({ ref }) => ref.requestId === request.id);
    return {
      requestId: request.id,
      state: mark?.state ?? 'none',
      keptAt: mark?.putAt ?? null,
      destroyedAt: mark?.destroyedAt ?? null,
      destroyedOn: mark?.state === 'held' ? goesOn : null,
      whyNoLook: whyNoLook(role, vehicle, request.id) ?? '',
      steps: stepsNeedingCode(vehicle, request.id),
      happenings: happenings.value.get(request.id) ?? [],
    };
  });
  return ok({
    codes,
    mayKeep: whyNoKeeping(role, vehicle) === null,
    mayDestroy: role === 'manager',
    mayHandOver: whyNoHandOver(role, vehicle) === null,
  });
}
