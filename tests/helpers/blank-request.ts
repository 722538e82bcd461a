// A code request of which nothing is known yet but the day, as its form first shows it: what the makers of requests begin with.
import type { RequestFacts } from '../../app/domain/codes/request-facts.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { freshCodeRequest } from '../../renderer/screens/vehicle/fresh-facts.ts';

export function blankRequest(notedOn: Day): RequestFacts {
  const { id: _id, ...facts } = freshCodeRequest('not-used', notedOn);
  return facts;
}
