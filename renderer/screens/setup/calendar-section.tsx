// The days on which the shop works: its week, its hours, its holidays.
import { useState } from 'react';
import type { WorkingCalendar } from '../../../app/domain/time/working-calendar.ts';
import { useDesk } from '../../state/desk-store.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { holidayText } from '../../text/holidays.ts';
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
  const [isChoosing, setChoosing] = useState(false);
  const calendar = state.drafts.calendar ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const ofHolidays = state.problems.calendar?.find(({ field }) => field.startsWith('holidays'))?.sentence;
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
          value={calendar.holidays.join('\n')}
          onChange={(lines) => typeIntoShop('calendar', { ...calendar, holidays: lines.split('\n') }, 'holidays')}
          hint={text.holidaysHint}
          problem={ofHolidays}
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
