// Gives the focus to a row of the lot: at once where the row is drawn, so that the next key already finds it there.
import { rowElementId } from './lot-row.tsx';

function focusIfDrawn(id: string, preventScroll: boolean): boolean {
  const link = document.getElementById(rowElementId(id));
  link?.focus({ preventScroll });
  return link !== null;
}

/** The row of the cursor is always drawn, but one that was out of sight only with the next picture. */
export function focusRow(id: string, { preventScroll = true } = {}): void {
  if (!focusIfDrawn(id, preventScroll)) requestAnimationFrame(() => focusIfDrawn(id, preventScroll));
}
