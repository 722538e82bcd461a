// What was tried at a step, a line each. A line opens for correction where the person may correct it.
import type { Attempt } from '../../../../app/domain/programming/attempt.ts';
import { jobText, routeWords } from '../../../text/programming.ts';
import { sayDay } from '../../../text/say-day.ts';
import { personName } from '../ledger/choices.ts';
import { useVehicle } from '../page/vehicle-context.ts';

function volts({ voltsBefore, voltsLowest, voltsAfter }: Attempt): string {
  if (voltsBefore === null && voltsLowest === null && voltsAfter === null) return '';
  const show = (value: number | null) => (value === null ? '–' : value.toFixed(1));
  return jobText.volts(show(voltsBefore), show(voltsLowest), show(voltsAfter));
}

export function AttemptLines({
  attempts,
  onOpen,
}: {
  readonly attempts: readonly Attempt[];
  /** Null where they can only be read. */
  readonly onOpen: ((id: string) => void) | null;
}) {
  const { desk, today } = useVehicle();
  if (attempts.length === 0) return null;
  return (
    <ul className="attempts" aria-label={jobText.attempts}>
      {attempts.map((attempt) => {
        const { override } = attempt;
        const words = [
          sayDay(attempt.on, today),
          routeWords[attempt.route],
          personName(desk, attempt.person),
          volts(attempt),
          attempt.message,
          override === null ? '' : jobText.wentOn(personName(desk, override.by), override.reason),
          attempt.evidence === '' ? '' : jobText.evidenceAt(attempt.evidence),
        ].filter((word) => word !== '');
        const line = (
          <>
            <b className={`attempt-outcome is-${attempt.outcome}`}>{jobText.outcomes[attempt.outcome]}</b>{' '}
            {words.join(' · ')}
          </>
        );
        return (
          <li key={attempt.id}>
            {onOpen === null ? (
              line
            ) : (
              <button type="button" className="ledger-open" onClick={() => onOpen(attempt.id)}>
                {line}
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}
