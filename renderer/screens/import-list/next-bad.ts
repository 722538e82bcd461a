// Finds the next row with something against it, around the end of the list. Pure.

/** Index of it after (1) or before (-1) `from`, which itself comes last; null when there is none. */
export function nextBad(
  rows: readonly { readonly problems: readonly string[] }[],
  from: number,
  direction: 1 | -1,
): number | null {
  for (let step = 1; step <= rows.length; step += 1) {
    const index = (from + direction * step + rows.length * step) % rows.length;
    if ((rows[index]?.problems.length ?? 0) > 0) return index;
  }
  return null;
}
