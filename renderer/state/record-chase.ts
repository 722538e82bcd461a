// Writes down that a part, a code or sublet work was chased: reads the vehicle as it is now, adds the chase, saves it as one change.
import type { AppError } from '../../app/contract/app-error.ts';
import type { WaitingLineView } from '../../app/contract/waiting-view.ts';
import type { Chase } from '../../app/domain/codes/request-facts.ts';
import { fail, ok, type Result } from '../../app/domain/shared/result.ts';
import type { FactList, PutChange } from '../../app/domain/vehicle/change.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { ask } from '../bridge.ts';
import { takeDesk } from './desk-store.ts';
import { newIdentifier } from './new-identifier.ts';

export const listOfKind = {
  part: 'parts',
  code: 'codeRequests',
  sublet: 'sublets',
} as const satisfies Record<WaitingLineView['kind'], FactList>;

/** The stamp is the program's; a draft goes without it. */
function withChase<Fact extends { readonly entered: unknown; readonly chases: Chase[] }>(
  { entered: _kept, ...fact }: Fact,
  chase: Chase,
) {
  return { ...fact, chases: [...fact.chases, chase] };
}

function changeWith(vehicle: Vehicle, kind: WaitingLineView['kind'], factId: string, chase: Chase): PutChange | null {
  switch (kind) {
    case 'part': {
      const part = vehicle.parts.find(({ id }) => id === factId);
      return part ? { kind: 'put', list: 'parts', item: withChase(part, chase) } : null;
    }
    case 'code': {
      const request = vehicle.codeRequests.find(({ id }) => id === factId);
      return request ? { kind: 'put', list: 'codeRequests', item: withChase(request, chase) } : null;
    }
    case 'sublet': {
      const sublet = vehicle.sublets.find(({ id }) => id === factId);
      return sublet ? { kind: 'put', list: 'sublets', item: withChase(sublet, chase) } : null;
    }
  }
}

/** Done once it is safely written. The problems of a refusal name the fields of the chase. */
export async function recordChase(
  { vehicleId, kind, factId }: Pick<WaitingLineView, 'vehicleId' | 'kind' | 'factId'>,
  chase: Omit<Chase, 'id'>,
): Promise<Result<null, AppError>> {
  const opened = await ask('vehicle:open', { id: vehicleId });
  if (!opened.ok) return opened;
  const { vehicle, revision } = opened.value;
  const change = changeWith(vehicle, kind, factId, { ...chase, id: newIdentifier() });
  if (change === null) return fail({ code: 'not-found', detail: '', problems: [] });
  const answer = await ask('vehicle:change', { id: vehicleId, baseRevision: revision, change });
  if (!answer.ok) {
    const problems = answer.error.problems.map(({ field, sentence }) => ({
      field: field.replace(/^.*chases\.\d+\./, ''),
      sentence,
    }));
    return fail({ ...answer.error, problems });
  }
  takeDesk(answer.value.desk, answer.value.view.savedAt);
  return ok(null);
}
