// Words of choosing public holidays for the shop's calendar.
import { plural } from '../../app/domain/shared/text.ts';

export const holidayText = {
  open: 'Choose public holidays …',
  title: 'Public holidays',
  hint: 'Look through the list and tick the days on which the shop closes. They are added to the holidays that are there already; nothing is saved until you save the calendar.',
  country: 'Country',
  region: 'Region',
  wholeCountry: 'the whole country',
  year: 'Year',
  choose: 'choose',
  reading: 'Looking them up …',
  none: 'None are known for this place and year.',
  isThere: 'already in the calendar',
  notEverywhere: 'not everywhere, or not for everybody',
  tickPublic: 'Tick all public ones',
  add: (count: number) => (count === 0 ? 'Add' : `Add ${plural(count, 'day', 'days')}`),
  nothingTicked: 'Tick at least one day.',
  cancel: 'Cancel',
  source:
    'Days by date-holidays, data under CC BY 3.0 by its contributors. Rules change: check them against your own law.',
} as const;
