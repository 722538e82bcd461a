// The keys that move the cursor of a table of rows. Pure.

const pageOfRows = 10;

/** Where a key takes the cursor, or null when it is no such key. */
export function indexAfterKey(key: string, index: number, count: number): number | null {
  const last = count - 1;
  switch (key) {
    case 'ArrowDown':
      return Math.min(last, index + 1);
    case 'ArrowUp':
      return Math.max(0, index - 1);
    case 'PageDown':
      return Math.min(last, index + pageOfRows);
    case 'PageUp':
      return Math.max(0, index - pageOfRows);
    case 'Home':
      return 0;
    case 'End':
      return last;
    default:
      return null;
  }
}
