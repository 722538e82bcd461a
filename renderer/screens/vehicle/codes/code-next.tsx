// What is next for a code request: the day to chase it with how long such codes take, or the form that is still to be filed.
import type { CodeUsual } from '../../../../app/contract/codes-usual-view.ts';
import type { CodeRequestDraft } from '../../../../app/domain/codes/code-request.ts';
import { filingReminder } from '../../../../app/domain/codes/filing-limit.ts';
import { codeText } from '../../../text/codes.ts';
import { sayDaysIn } from '../../../text/say-day.ts';
import { useVehicle } from '../page/vehicle-context.ts';

export function CodeNext({
  request,
  usual,
}: {
  readonly request: CodeRequestDraft;
  readonly usual: CodeUsual | undefined;
}) {
  const { desk, today } = useVehicle();
  const reminder = filingReminder(request, desk.shop?.filingRules ?? [], today);
  const chase = usual?.chase ?? null;
  return (
    <>
      {chase !== null && (
        <span className={chase.on <= today ? 'code-due' : undefined} title={codeText.chaseWhy(chase.why, today)}>
          {codeText.chaseOn(chase.on, today)}
        </span>
      )}
      {usual?.usual && <span className="code-usual">{codeText.usual(usual.usual)}</span>}
      {reminder !== null && (
        <span className={reminder.daysLeft < 0 ? 'code-due' : undefined}>{sayDaysIn(reminder.sentence, today)}</span>
      )}
    </>
  );
}
