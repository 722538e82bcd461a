// The form that a scheme wants filed about a code, with the day until when; and the closing of the request.
import { filingReminder } from '../../../../app/domain/codes/filing-limit.ts';
import type { Filing } from '../../../../app/domain/codes/request-facts.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { codeText } from '../../../text/codes.ts';
import { sayDaysIn } from '../../../text/say-day.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseOrNone } from '../ledger/choices.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import type { CodeRequestValue } from './code-draft.ts';

export function FilingFields({ edit }: { readonly edit: Editing<CodeRequestValue> }) {
  const { desk, today } = useVehicle();
  const rules = desk.shop?.filingRules ?? [];
  const { filing } = edit.value;
  if (rules.length === 0 && filing === null) return null;
  const set = (more: Partial<Filing>) => filing !== null && edit.set({ filing: { ...filing, ...more } });
  const reminder = filingReminder(edit.value, rules, today);
  const schemes = rules.map(({ id, name }) => ({ value: id, label: name }));
  const isGone = filing !== null && !rules.some(({ id }) => id === filing.schemeId);
  return (
    <fieldset className="field-group">
      <legend>{codeText.filing}</legend>
      <div className="field-grid">
        <FieldPlace name="filing">
          <SelectField
            label={codeText.scheme}
            value={filing?.schemeId ?? ''}
            onChange={(schemeId) =>
              edit.set({
                filing:
                  schemeId === ''
                    ? null
                    : { ...(filing ?? { transactionOn: null, filedOn: null, reference: '' }), schemeId },
              })
            }
            options={chooseOrNone(
              isGone ? [...schemes, { value: filing.schemeId, label: filing.schemeId }] : schemes,
              codeText.noScheme,
            )}
          />
        </FieldPlace>
        {filing !== null && (
          <>
            <FieldPlace name="filing.transactionOn">
              <DayField
                label={codeText.transactionOn}
                value={filing.transactionOn}
                onChange={(transactionOn) => set({ transactionOn })}
                problem={edit.problemAt('filing.transactionOn')}
                hint={codeText.transactionHint}
                today={today}
              />
            </FieldPlace>
            <FieldPlace name="filing.filedOn">
              <DayField
                label={codeText.filedOn}
                value={filing.filedOn}
                onChange={(filedOn) => set({ filedOn })}
                problem={edit.problemAt('filing.filedOn')}
                today={today}
              />
            </FieldPlace>
            <TextField
              label={codeText.reference}
              value={filing.reference}
              onChange={(reference) => set({ reference })}
              problem={edit.problemAt('filing.reference')}
            />
          </>
        )}
      </div>
      {reminder !== null && (
        <p className={reminder.daysLeft < 0 ? 'field-problem' : 'quiet'}>{sayDaysIn(reminder.sentence, today)}</p>
      )}
    </fieldset>
  );
}

export function ClosingFields({ edit }: { readonly edit: Editing<CodeRequestValue> }) {
  const { today } = useVehicle();
  return (
    <fieldset className="field-group">
      <legend>{codeText.closing}</legend>
      <div className="field-grid">
        <FieldPlace name="closedOn">
          <DayField label={codeText.closedOn} {...edit.at('closedOn')} today={today} />
        </FieldPlace>
        <FieldPlace name="closedWhy">
          <TextField label={codeText.closedWhy} {...edit.at('closedWhy')} isWide />
        </FieldPlace>
      </div>
    </fieldset>
  );
}
