// How days are written on this page: the form that the open fleet's shop has chosen. Set by the desk; read by the words that name a day.
import { type DayForm, usualDayForm } from '../../app/domain/shared/show-day.ts';
import { createStore, useStore } from './store.ts';

export const dayFormStore = createStore<DayForm>(usualDayForm);

/** For the frame, and for whatever is drawn again only when what it is given changes. */
export function useDayForm(): DayForm {
  return useStore(dayFormStore);
}
