// A small button beside a field for a day that opens the system's calendar. Not a stop of its own for the Tab key: the field says how its
// days are typed, and Alt+arrow down in it presses this button.
import { useRef } from 'react';
import type { Day } from '../../app/domain/shared/day.ts';
import { commonText } from '../text/common.ts';

export function DayPicker({ value, onPick }: { readonly value: Day | null; readonly onPick: (day: Day) => void }) {
  const calendar = useRef<HTMLInputElement>(null);
  return (
    <span className="day-picker">
      <input
        ref={calendar}
        type="date"
        tabIndex={-1}
        aria-hidden="true"
        min="1900-01-01"
        max="2199-12-31"
        value={value ?? ''}
        onChange={(event) => {
          if (event.currentTarget.value !== '') onPick(event.currentTarget.value);
        }}
      />
      <button
        type="button"
        tabIndex={-1}
        data-opens
        aria-label={commonText.dayCalendar}
        title={commonText.dayCalendarTip}
        onClick={() => calendar.current?.showPicker()}
      >
        <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true" focusable="false">
          <path d="M2.5 3.5h11v10h-11zM2.5 6.5h11M5.5 1.5v3M10.5 1.5v3" fill="none" stroke="currentColor" />
        </svg>
      </button>
    </span>
  );
}
