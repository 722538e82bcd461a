// The chases of a part or of sublet work as a small list in its form, newest first, each to be removed; they are written down in Waiting.
import './chase-list.css';
import type { Chase } from '../../../../app/domain/codes/request-facts.ts';
import { codeText, chaseListText as text } from '../../../text/codes.ts';
import { sayDay } from '../../../text/say-day.ts';
import { Button } from '../../../ui/button.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { personName } from './choices.ts';

export function ChaseList({
  chases,
  onChange,
}: {
  readonly chases: readonly Chase[];
  readonly onChange: (chases: Chase[]) => void;
}) {
  const { desk, today } = useVehicle();
  if (chases.length === 0) return null;
  const newestFirst = chases.toSorted((a, b) => (a.chasedOn < b.chasedOn ? 1 : a.chasedOn > b.chasedOn ? -1 : 0));
  return (
    <fieldset className="field-group">
      <legend>{codeText.chases}</legend>
      <ul className="chase-list">
        {newestFirst.map((chase) => {
          const day = sayDay(chase.chasedOn, today);
          return (
            <li key={chase.id}>
              <span>
                {text.chase(day, codeText.ways[chase.how], personName(desk, chase.by))}
                {chase.promisedOn !== null && `, ${text.promised(sayDay(chase.promisedOn, today))}`}
                {chase.note !== '' && <span className="quiet"> {chase.note}</span>}
              </span>
              <Button
                kind="quiet"
                label={text.remove(day)}
                onPress={() => onChange(chases.filter(({ id }) => id !== chase.id))}
              >
                {codeText.remove}
              </Button>
            </li>
          );
        })}
      </ul>
    </fieldset>
  );
}
