// Instants as this computer's clock shows them, the day in the shop's form. Calendar days are text already and never pass through here.
import { sayWholeDay } from './say-day.ts';

function two(number: number): string {
  return String(number).padStart(2, '0');
}

/** '10:42:07' */
export function showTime(instant: string): string {
  const date = new Date(instant);
  return `${two(date.getHours())}:${two(date.getMinutes())}:${two(date.getSeconds())}`;
}

/** '4 Mar 2026 10:42' */
export function showMoment(instant: string): string {
  const date = new Date(instant);
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  return `${sayWholeDay(day)} ${two(date.getHours())}:${two(date.getMinutes())}`;
}
