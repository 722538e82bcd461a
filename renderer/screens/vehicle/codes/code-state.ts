// How a code request stands, and what is next for it, in a few words for its row. Pure: today and the instant are passed in.
import type { CodeKindFacts } from '../../../../app/domain/codes/code-kinds.ts';
import type { CodeRequestDraft } from '../../../../app/domain/codes/code-request.ts';
import { requestStanding } from '../../../../app/domain/codes/request-life.ts';
import { type Day, daysBetween } from '../../../../app/domain/shared/day.ts';
import { codeText } from '../../../text/codes.ts';
import { sayDay } from '../../../text/say-day.ts';
import { partText } from '../../../text/vehicle-entries.ts';

function expectedWords(expectedOn: Day | null, today: Day): string {
  if (expectedOn === null) return partText.states.noPromise;
  const late = daysBetween(expectedOn, today);
  return `${partText.states.expected(sayDay(expectedOn, today))}${late > 0 ? `, ${partText.states.late(late)}` : ''}`;
}

export function codeState(
  request: CodeRequestDraft,
  kind: Pick<CodeKindFacts, 'triesAllowed'> | null,
  { today, now }: { readonly today: Day; readonly now: string },
): string {
  const words = codeText.states;
  const standing = requestStanding(request, kind, now);
  const since = sayDay(standing.since, today);
  switch (standing.state) {
    case 'drafted':
      return request.proof === null ? words.proofFirst : words.toAsk;
    case 'asked':
      return `${words.asked(since)}, ${expectedWords(standing.expectedOn, today)}`;
    case 'chased':
      return `${words.chased(since, standing.times)}, ${expectedWords(standing.expectedOn, today)}`;
    case 'answered':
      return words.given(since, standing.triesLeft);
    case 'refused':
      return words.refused(since);
    case 'wrong':
      return words.wrong(since, standing.triesLeft);
    case 'locked':
      return words.locked(standing.until);
    case 'right':
      return words.right(since);
    case 'closed':
      return words.closed(since, standing.why);
  }
}

/** The present instant; noon of the sample's own day where that is not the day of this computer. ISO. */
export function instantOn(today: Day, clock: Date): string {
  const two = (number: number) => String(number).padStart(2, '0');
  const here = `${clock.getFullYear()}-${two(clock.getMonth() + 1)}-${two(clock.getDate())}`;
  return here === today ? clock.toISOString() : `${today}T12:00:00.000Z`;
}
