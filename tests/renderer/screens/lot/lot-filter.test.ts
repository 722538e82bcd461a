// Which rows are shown, and the counts beside the words of the legend.
import { describe, expect, it } from 'vitest';
import { filterRows, standingsInOrder, withToggled } from '../../../../renderer/screens/lot/lot-filter.ts';
import { makeRow } from './make-row.ts';

const part = makeRow({ standing: 'part', make: 'Osprey' });
const idle = makeRow({ standing: 'idle', make: 'Osprey' });
const sold = makeRow({ standing: 'sold', make: 'Osprey' });
const ready = makeRow({ standing: 'ready', make: 'Marram' });
const rows = [part, idle, sold, ready];

describe('filtering the lot', () => {
  it('hides what is sold as long as nothing is chosen', () => {
    expect(filterRows(rows, { search: '', standings: new Set() }).shown).toEqual([part, idle, ready]);
  });

  it('shows exactly what is chosen, sold included', () => {
    expect(filterRows(rows, { search: '', standings: new Set(['part', 'sold']) }).shown).toEqual([part, sold]);
  });

  it('counts what the search finds, also of what is not shown', () => {
    const { shown, counts } = filterRows(rows, { search: 'osprey', standings: new Set(['idle']) });
    expect(shown).toEqual([idle]);
    expect(counts).toEqual({ part: 1, idle: 1, sold: 1 });
  });

  it('takes a standing in and out again', () => {
    const once = withToggled(new Set(), 'code');
    expect([...once]).toEqual(['code']);
    expect([...withToggled(once, 'code')]).toEqual([]);
  });

  it('lists every standing once, sold last', () => {
    expect(new Set(standingsInOrder).size).toBe(14);
    expect(standingsInOrder.at(-1)).toBe('sold');
  });
});
