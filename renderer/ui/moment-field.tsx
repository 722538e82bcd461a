// A day and a time of day as this computer's clock shows them, typed as a day is, with the hour behind it; handed on as an instant.
import type { Day } from '../../app/domain/shared/day.ts';
import { useDayForm } from '../state/day-form-store.ts';
import { commonText } from '../text/common.ts';
import { showMoment } from '../text/instant.ts';
import { readMoment } from './read-moment.ts';
import { TypedField, type TypedFieldProps } from './typed-field.tsx';

/** The value is an ISO instant. */
export type MomentFieldProps = TypedFieldProps<string> & { readonly today: Day };

export function MomentField({ today, ...field }: MomentFieldProps) {
  const form = useDayForm();
  return (
    <TypedField
      // What stands there in another form could no longer be read.
      key={form}
      {...field}
      looks="is-day"
      inputMode="text"
      read={(text) => {
        const instant = readMoment(text, form, today);
        return instant === null ? { ok: false } : { ok: true, value: instant };
      }}
      show={showMoment}
      whenUnreadable={commonText.momentUnreadable(today)}
    />
  );
}
