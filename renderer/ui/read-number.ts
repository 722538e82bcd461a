// Reads and shows plain numbers as people type them. Pure; amounts of money are read in app/domain/shared/cents.ts.

/**
 * '12', '12.5', '12,5', '−3', '61 250', '61,250'. A single mark followed by exactly three digits is a thousands mark when whole numbers
 * are asked for. Null when it is no number, has more decimals than allowed or lies outside the limits.
 */
export function readNumber(
  text: string,
  { decimals, minimum, maximum }: { readonly decimals: number; readonly minimum: number; readonly maximum: number },
): number | null {
  const compact = text.replace(/[\s\u00a0\u202f']/g, '').replace('\u2212', '-');
  const plain =
    decimals === 0 && /^-?[1-9]\d{0,2}([.,])\d{3}(\1\d{3})*$/.test(compact) ? compact.replace(/[.,]/g, '') : compact;
  const match = /^(-?\d+)(?:[.,](\d+))?$/.exec(plain);
  if (match === null) return null;
  const [, whole = '', fraction = ''] = match;
  if (fraction.length > decimals) return null;
  const number = Number(fraction === '' ? whole : `${whole}.${fraction}`);
  return Number.isFinite(number) && number >= minimum && number <= maximum ? number : null;
}

/** '61,250' or '12.5': a thousands mark from five digits on, so that a year stays a year. */
export function showNumber(number: number): string {
  const [whole = '', fraction] = String(Math.abs(number)).split('.');
  const marked = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole;
  return `${number < 0 ? '\u2212' : ''}${marked}${fraction === undefined ? '' : `.${fraction}`}`;
}
