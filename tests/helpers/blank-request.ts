// A code request of which nothing is known yet but the day: what the makers of requests begin with.
import { noRequestLife, type RequestFacts } from '../../app/domain/codes/request-facts.ts';
import type { Day } from '../../app/domain/shared/day.ts';

export function blankRequest(notedOn: Day): RequestFacts {
  return {
    notedOn,
    kind: 'immobiliser',
    module: '',
    deviceSerial: '',
    reason: '',
    faultId: null,
    proof: null,
    askedOn: null,
    askedOf: '',
    expectedOn: null,
    answeredOn: null,
    outcome: null,
    feeCents: 0,
    keptWhere: '',
    note: '',
    ...noRequestLife,
  };
}
