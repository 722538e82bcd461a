// The pure halves of the lot's and the shop's stores.
import { describe, expect, it } from 'vitest';
import { defaultShop } from '../../../app/services/default-shop.ts';
import { withRow } from '../../../renderer/state/rows-in-place.ts';
import { isPartTouched, noDrafts, problemsInside, withMoved } from '../../../renderer/state/shop-parts.ts';
import { makeRow } from '../screens/lot/make-row.ts';

describe('a row that changed', () => {
  const [a, b] = [makeRow(), makeRow()];

  it('takes the place of the old one', () => {
    const changed = { ...b, holdingGates: 7 };
    expect(withRow([a, b], b.id, changed)).toEqual([a, changed]);
  });

  it('is added when it is new, and taken out when it left', () => {
    expect(withRow([a], b.id, b)).toEqual([a, b]);
    expect(withRow([a, b], a.id, null)).toEqual([b]);
  });

  it('changes nothing when what left was not there', () => {
    const rows = [a];
    expect(withRow(rows, 'nobody', null)).toBe(rows);
  });
});

describe('the settings while they are typed', () => {
  it('are touched only when they differ from what is kept', () => {
    const same = { ...noDrafts, dealer: { ...defaultShop.dealer } };
    const other = { ...noDrafts, dealer: { ...defaultShop.dealer, phone: '555 0100' } };
    expect(isPartTouched('dealer', noDrafts, defaultShop)).toBe(false);
    expect(isPartTouched('dealer', same, defaultShop)).toBe(false);
    expect(isPartTouched('dealer', other, defaultShop)).toBe(true);
  });

  it('get problems with fields named from inside their part', () => {
    const named = (field: string) => problemsInside('people', [{ field, sentence: '' }])[0]?.field;
    expect(named('people.3.name')).toBe('3.name');
    expect(named('people')).toBe('');
    expect(named('change.value.0.role')).toBe('0.role');
    expect(named('')).toBe('');
  });

  it('move an entry by one place, and not past the ends', () => {
    const entries = ['a', 'b', 'c'];
    expect(withMoved(entries, 0, 1)).toEqual(['b', 'a', 'c']);
    expect(withMoved(entries, 2, 0)).toEqual(['c', 'a', 'b']);
    expect(withMoved(entries, 0, -1)).toBe(entries);
    expect(withMoved(entries, 2, 3)).toBe(entries);
  });
});
