// Words of Next jobs.
import { plural } from '../../app/domain/shared/text.ts';
import type { Purpose } from './purpose.ts';

const forWorkshop =
  'Programming steps and repairs that can be done now, on the vehicles where an hour of work saves most first. Begin with the first line; what waits for something is below, with the reason.';
export const nextJobsPurpose: Purpose = { manager: forWorkshop, technician: forWorkshop, sales: null };

export const nextJobsText = {
  title: 'Next jobs',
  onlyWorkshop: 'This list is for the workshop and the manager. Choose one of them at the top.',
  reading: 'Reading what can be done …',
  tryAgain: 'Try again',
  nothing: 'Nothing can be done now: no repair is decided and no programming step is open, or all of it waits.',
  found: (vehicles: number, tasks: number) =>
    `${plural(tasks, 'thing', 'things')} to do on ${plural(vehicles, 'vehicle', 'vehicles')}.`,
  sharedOut:
    'Shared out among the technicians by a rule of thumb: the next vehicle to whoever is free first, as if everybody could do everything. It is often the best sharing, not always.',
  share: (name: string, after: string | null) =>
    after === null ? `${name}, now` : `${name}, after ${after} of other work`,
  vehicle: (place: number, stockNumber: string, title: string) => `${place}. ${stockNumber} ${title}`,
  key: (tag: string) => `key ${tag}`,
  left: (time: string) => `${time} of work left`,
  aDay: (amount: string, currency: string) => `${amount} ${currency} a day`,
  about: (time: string) => `about ${time}`,
  cannotBeUndone: 'Cannot be undone',
  go: 'Go to it',
  goFor: (what: string, stockNumber: string) => `Go to it: ${what}, ${stockNumber}`,
  waits: 'Cannot be done now',
  nothingWaits: 'Nothing waits.',
  columns: { vehicle: 'Vehicle', what: 'What', why: 'Waits for' },
} as const;
