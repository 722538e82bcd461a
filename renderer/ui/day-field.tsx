// A calendar day, shown in the form that the shop has chosen, typed in that form, with the month in letters, as ISO 8601, or as a shorthand:
// t, -3, +5. Or picked from the system's own calendar, which is all that the system's date input is used for: it shows days its own way.
import { addDays, type Day, isDay } from '../../app/domain/shared/day.ts';
import { readDay } from '../../app/domain/shared/read-day.ts';
import { useDayForm } from '../state/day-form-store.ts';
import { commonText } from '../text/common.ts';
import { sayWholeDay } from '../text/say-day.ts';
import { DayPicker } from './day-picker.tsx';
import { readDayShorthand } from './day-shorthand.ts';
import { TypedField, type TypedFieldProps } from './typed-field.tsx';

export type DayFieldProps = TypedFieldProps<Day> & { readonly today: Day };

export function DayField({ today, ...field }: DayFieldProps) {
  const form = useDayForm();
  const meant = (text: string) => readDayShorthand(text, today) ?? readDay(text, form, today);
  return (
    <TypedField
      // What stands there in another form could no longer be read.
      key={form}
      {...field}
      looks="is-day"
      inputMode="text"
      tip={commonText.dayTip}
      read={(text) => {
        const day = meant(text);
        return day === null ? { ok: false } : { ok: true, value: day };
      }}
      show={sayWholeDay}
      whileTyped={(text) => commonText.dayMeant(text, meant(text))}
      whenUnreadable={commonText.dayUnreadable(today)}
      step={(day, by) => {
        const next = day === null ? today : addDays(day, by);
        return isDay(next) ? next : day;
      }}
      unit={(take) => !field.isReadOnly && <DayPicker value={field.value} onPick={take} />}
    />
  );
}
