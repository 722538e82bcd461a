// Suggests the next stock number from those in use. Pure; a person may write any other.

type Parts = { readonly head: string; readonly digits: string; readonly tail: string };

function partsOf(stockNumber: string): Parts | null {
  const match = /^(.*?)(\d+)(\D*)$/.exec(stockNumber.trim());
  return match === null ? null : { head: match[1] ?? '', digits: match[2] ?? '', tail: match[3] ?? '' };
}

/**
 * One more than the highest number among those written in the commonest way (same letters before and after it), with its leading
 * zeros. Empty when there is nothing to go by.
 */
export function nextStockNumber(used: readonly string[]): string {
  const groups = new Map<string, Parts[]>();
  for (const stockNumber of used) {
    const parts = partsOf(stockNumber);
    if (parts === null || parts.digits.length > 15) continue;
    const key = `${parts.head}\u0000${parts.tail}`;
    groups.set(key, [...(groups.get(key) ?? []), parts]);
  }
  const commonest = [...groups.values()].reduce<readonly Parts[]>(
    (most, group) => (group.length > most.length ? group : most),
    [],
  );
  const highest = commonest.reduce<Parts | null>(
    (high, parts) => (high === null || Number(parts.digits) > Number(high.digits) ? parts : high),
    null,
  );
  if (highest === null) return '';
  const next = String(Number(highest.digits) + 1).padStart(highest.digits.length, '0');
  const suggested = `${highest.head}${next}${highest.tail}`;
  return suggested.length > 24 ? '' : suggested;
}
