// Where a part stands, in words: the last thing that happened, and what is owed next. Pure.
import { promisedFor } from '../../../../app/domain/codes/request-life.ts';
import type { PartDraft } from '../../../../app/domain/parts/part.ts';
import { type Day, daysBetween } from '../../../../app/domain/shared/day.ts';
import { sayDay } from '../../../text/say-day.ts';
import { partText } from '../../../text/vehicle-entries.ts';

const words = partText.states;

function onItsWay(part: PartDraft, orderedOn: Day, today: Day): string {
  const ordered = words.ordered(sayDay(orderedOn, today));
  const promisedOn = promisedFor(part);
  if (promisedOn === null) return `${ordered}, ${words.noPromise}`;
  const late = daysBetween(promisedOn, today);
  return `${ordered}, ${words.expected(sayDay(promisedOn, today))}${late > 0 ? `, ${words.late(late)}` : ''}`;
}

export function partState(part: PartDraft, today: Day): string {
  if (part.returnedOn !== null) return words.returned(sayDay(part.returnedOn, today));
  if (part.orderedOn === null) return words.needed(sayDay(part.neededOn, today));
  if (part.receivedOn === null) return onItsWay(part, part.orderedOn, today);
  if (part.fittedOn === null) return words.received(sayDay(part.receivedOn, today));
  const fitted = words.fitted(sayDay(part.fittedOn, today));
  if (part.coreReturnedOn !== null) return `${fitted}, ${words.coreReturned(sayDay(part.coreReturnedOn, today))}`;
  return part.coreChargeCents > 0 ? `${fitted}, ${words.coreOut}` : fitted;
}
