// The tries of a code as rows of fields, in the order in which they happened, under what should be known before trying.

import type { CodeKindFacts } from '../../../../app/domain/codes/code-kinds.ts';
import type { CodeTry } from '../../../../app/domain/codes/request-facts.ts';
import { triesLeft } from '../../../../app/domain/codes/request-life.ts';
import { cautions } from '../../../../app/domain/work/cautions.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { codeText } from '../../../text/codes.ts';
import { Button } from '../../../ui/button.tsx';
import { CautionNote } from '../../../ui/caution-note.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { MomentField } from '../../../ui/moment-field.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseFrom, personName } from '../ledger/choices.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import type { CodeRequestValue } from './code-draft.ts';
import { instantOn } from './code-state.ts';
import { freshTry, lockedAfter } from './fresh-life.ts';

export function TryRows({
  edit,
  kind,
}: {
  readonly edit: Editing<CodeRequestValue>;
  readonly kind: CodeKindFacts | null;
}) {
  const { desk, today } = useVehicle();
  const { tries, outcome } = edit.value;
  const set = (index: number, more: Partial<CodeTry>) =>
    edit.set({ tries: tries.map((attempt, at) => (at === index ? { ...attempt, ...more } : attempt)) });
  /** A right try locks nothing; a wrong one today as long as its kind says, unless somebody has written until when. */
  const resultOf = (attempt: CodeTry, result: CodeTry['result']): Partial<CodeTry> => {
    if (result === 'right') return { result, lockedUntil: null };
    const isToday = attempt.triedOn === today;
    const known = isToday ? lockedAfter(kind, instantOn(today, new Date())) : null;
    return { result, lockedUntil: attempt.lockedUntil ?? known };
  };
  const add = () =>
    edit.set({ tries: [...tries, freshTry(newIdentifier(), { today, by: desk.person.id, result: 'right' })] });
  if (outcome !== 'given' && tries.length === 0) return null;
  const left = triesLeft(tries, kind, instantOn(today, new Date()));
  return (
    <fieldset className="field-group">
      <legend>{codeText.tries}</legend>
      <CautionNote
        {...cautions['anti-theft-code']}
        more={[codeText.beforeTrying(left), kind?.advice ?? ''].filter((words) => words !== '').join(' ')}
      />
      {tries.map((attempt, index) => {
        const path = `tries.${index}`;
        return (
          <fieldset key={attempt.id} className="code-life-row is-try">
            <legend className="unseen">{codeText.attempt(index + 1)}</legend>
            <FieldPlace name={`${path}.triedOn`}>
              <DayField
                label={codeText.triedOn}
                value={attempt.triedOn}
                onChange={(triedOn) => triedOn !== null && set(index, { triedOn })}
                problem={edit.problemAt(`${path}.triedOn`)}
                today={today}
                isRequired
              />
            </FieldPlace>
            <FieldPlace name={`${path}.result`}>
              <SelectField
                label={codeText.result}
                value={attempt.result}
                onChange={(result) => set(index, resultOf(attempt, result))}
                problem={edit.problemAt(`${path}.result`)}
                options={chooseFrom(['right', 'wrong'] as const, codeText.results)}
              />
            </FieldPlace>
            {attempt.result === 'wrong' && (
              <>
                <FieldPlace name={`${path}.triesLeft`}>
                  <NumberField
                    label={codeText.triesLeft}
                    value={attempt.triesLeft}
                    onChange={(count) => set(index, { triesLeft: count })}
                    problem={edit.problemAt(`${path}.triesLeft`)}
                    maximum={99}
                    hint={codeText.triesLeftHint}
                  />
                </FieldPlace>
                <MomentField
                  today={today}
                  label={codeText.lockedUntil}
                  value={attempt.lockedUntil}
                  onChange={(lockedUntil) => set(index, { lockedUntil })}
                  problem={edit.problemAt(`${path}.lockedUntil`)}
                />
              </>
            )}
            <TextField
              label={codeText.note}
              value={attempt.note}
              onChange={(note) => set(index, { note })}
              problem={edit.problemAt(`${path}.note`)}
              hint={personName(desk, attempt.by)}
            />
            <Button
              kind="quiet"
              label={codeText.removeTry(index + 1)}
              onPress={() => edit.set({ tries: tries.filter((_, at) => at !== index) })}
            >
              {codeText.remove}
            </Button>
          </fieldset>
        );
      })}
      <Button onPress={add}>{codeText.addTry}</Button>
    </fieldset>
  );
}
