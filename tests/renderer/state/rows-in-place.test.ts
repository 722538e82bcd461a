// Rows are replaced where they stand, added at the end, and never twice.
import { expect, it } from 'vitest';
import type { LotRow } from '../../../app/contract/views.ts';
import { withRows } from '../../../renderer/state/rows-in-place.ts';

const row = (id: string, note = '') => ({ id, note }) as unknown as LotRow;

it('replaces rows where they stand and adds the others at the end, in their order', () => {
  const rows = [row('a'), row('b'), row('c')];
  expect(withRows(rows, [row('d'), row('b', 'new'), row('e')])).toEqual([
    row('a'),
    row('b', 'new'),
    row('c'),
    row('d'),
    row('e'),
  ]);
});

it('gives back the very same rows when there is nothing to add', () => {
  const rows = [row('a')];
  expect(withRows(rows, [])).toBe(rows);
});
