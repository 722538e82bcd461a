// Instants as this computer's clock shows them. Calendar days are text already and never pass through here.

function two(number: number): string {
  return String(number).padStart(2, '0');
}

/** '10:42:07' */
export function showTime(instant: string): string {
  const date = new Date(instant);
  return `${two(date.getHours())}:${two(date.getMinutes())}:${two(date.getSeconds())}`;
}

/** '2026-03-04 10:42' */
export function showMoment(instant: string): string {
  const date = new Date(instant);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())} ${two(date.getHours())}:${two(date.getMinutes())}`;
}
