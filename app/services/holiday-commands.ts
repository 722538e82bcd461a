// Public holidays of a country or a region of it, for the shop to choose from. The library and its data are loaded when first asked for.
import type HolidaysOf from 'date-holidays';
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { addDays, daySchema } from '../domain/shared/day.ts';
import { ok } from '../domain/shared/result.ts';
import type { Answer, DeskContext } from './desk-context.ts';

type Library = typeof HolidaysOf;
let library: Promise<Library> | null = null;

/** About two megabytes of rules: not before somebody asks, so that the start is no slower for it. */
function loadLibrary(): Promise<Library> {
  library ??= import('date-holidays').then((module) => module.default);
  return library;
}

const msPerDay = 86_400_000;
/** What a shop may close for. Observances that nobody has off are left out. */
const types = ['public', 'bank', 'optional', 'school'];

export async function listHolidayPlaces(
  _context: DeskContext,
  { country }: ChannelInput<'calendar:places'>,
): Answer<ChannelOutput<'calendar:places'>> {
  const Holidays = await loadLibrary();
  const known = new Holidays();
  const places = country === null ? known.getCountries('en') : (known.getStates(country, 'en') ?? {});
  return ok(
    Object.entries(places)
      .map(([code, name]) => ({ code, name }))
      .sort((a, b) => a.name.localeCompare(b.name, 'en')),
  );
}

/**
 * The holidays of one year by day, each day of those that last longer by itself; of one day with several names, all names. What is
 * observed on another day ("substitute") is listed beside the day itself: the shop decides which of them it closes on.
 */
export async function suggestHolidays(
  _context: DeskContext,
  { country, region, year }: ChannelInput<'calendar:suggest-holidays'>,
): Answer<ChannelOutput<'calendar:suggest-holidays'>> {
  const Holidays = await loadLibrary();
  const ofPlace = region === null ? new Holidays(country) : new Holidays(country, region);
  const byDay = new Map<string, { day: string; name: string; isPublic: boolean }>();
  for (const { date, start, end, name, type } of ofPlace.getHolidays(year, 'en') ?? []) {
    if (!types.includes(type)) continue;
    const first = daySchema.safeParse(date.slice(0, 10));
    if (!first.success) continue;
    // Those that begin at sunset count from the day on which they begin.
    const days = Math.max(1, Math.round((end.getTime() - start.getTime()) / msPerDay));
    for (let offset = 0; offset < days; offset += 1) {
      const day = addDays(first.data, offset);
      const isPublic = type === 'public' || type === 'bank';
      const before = byDay.get(day);
      const names = before === undefined || before.name === name ? name : `${before.name}; ${name}`;
      byDay.set(day, { day, name: names, isPublic: isPublic || (before?.isPublic ?? false) });
    }
  }
  return ok([...byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1)));
}
