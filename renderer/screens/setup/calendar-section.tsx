// The days on which the shop works: its week, its hours, its holidays.
import { useState } from 'react';
import { readDay } from '../../../app/domain/shared/read-day.ts';
import type { WorkingCalendar } from '../../../app/domain/time/working-calendar.ts';
import { useDayForm } from '../../state/day-form-store.ts';
import { useDesk } from '../../state/desk-store.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { holidayText } from '../../text/holidays.ts';
import { sayWholeDaysIn } from '../../text/say-day.ts';
import { setupText } from '../../text/setup.ts';
import { setupMoneyText as text } from '../../text/setup-money.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { ParagraphField } from '../../ui/text-field.tsx';
import { HolidayChoice } from './holiday-choice.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

export function CalendarSection({ kept, ...section }: SectionProps & { readonly kept: WorkingCalendar }) {
  const { state } = section;
  const desk = useDesk();
  const dayForm = useDayForm();
  const [isChoosing, setChoosing] = useState(false);
  /** Until it is saved or taken back, what was typed stays as it was written. */
  const [typed, setTyped] = useState<{ readonly lines: string; readonly holidays: readonly string[] } | null>(null);
  const calendar = state.drafts.calendar ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const ofHolidays = state.problems.calendar?.find(({ field }) => field.startsWith('holidays'))?.sentence;
  const typeHolidays = (lines: string) => {
    const holidays = lines.split('\n').map((line) => readDay(line, dayForm, desk.today) ?? line);
    setTyped({ lines, holidays });
    typeIntoShop('calendar', { ...calendar, holidays }, 'holidays');
  };
  const toggle = (day: number, works: boolean) => {
    const others = calendar.workDays.filter((other) => other !== day);
    const workDays = works ? [...others, day].sort() : others;
    typeIntoShop('calendar', { ...calendar, workDays }, 'workDays');
  };
  const add = (days: readonly string[]) => {
    const written = calendar.holidays.filter((day) => day.trim() !== '');
    typeIntoShop('calendar', { ...calendar, holidays: [...new Set([...written, ...days])].sort() }, 'holidays');
    setChoosing(false);
  };
  return (
    <SectionForm {...section} part="calendar" hint={text.calendarHint}>
      <fieldset className="setup-week">
        <legend className="unseen">{setupText.sections.calendar}</legend>
        {text.weekdays.map((name, index) => (
          <CheckField
            key={name}
            label={name}
            value={calendar.workDays.includes(index + 1)}
            onChange={(works) => toggle(index + 1, works)}
            problem={index === 0 ? problemAt(state, 'calendar', 'workDays') : undefined}
            isReadOnly={isReadOnly}
          />
        ))}
      </fieldset>
      <div className="field-grid">
        <NumberField
          label={text.workHours}
          value={calendar.minutesPerDay === null ? null : calendar.minutesPerDay / 60}
          onChange={(hours) =>
            typeIntoShop(
              'calendar',
              { ...calendar, minutesPerDay: hours === null ? null : Math.round(hours * 60) },
              'minutesPerDay',
            )
          }
          unit={text.hours}
          decimals={2}
          maximum={24}
          problem={problemAt(state, 'calendar', 'minutesPerDay')}
          isReadOnly={isReadOnly}
          isRequired
        />
        <ParagraphField
          label={text.holidays}
          value={typed?.holidays === calendar.holidays ? typed.lines : calendar.holidays.map(sayWholeDaysIn).join('\n')}
          onChange={typeHolidays}
          hint={text.holidaysHint(desk.today)}
          problem={ofHolidays && sayWholeDaysIn(ofHolidays)}
          rows={5}
          isReadOnly={isReadOnly}
        />
      </div>
      {!isReadOnly && <Button onPress={() => setChoosing(true)}>{holidayText.open}</Button>}
      {isChoosing && (
        <HolidayChoice today={desk.today} kept={calendar.holidays} onClose={() => setChoosing(false)} onAdd={add} />
      )}
    </SectionForm>
  );
}
