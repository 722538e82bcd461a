// Which vehicles the sheets screen offers.
import { describe, expect, it } from 'vitest';
import type { LotRow } from '../../../../app/contract/views.ts';
import { findVehicles, toggled } from '../../../../renderer/screens/sheets/find-vehicles.ts';

/** Only what a vehicle is found and ordered by. */
function row(stockNumber: string, make: string, standing: 'sold' | 'part'): LotRow {
  return {
    id: stockNumber,
    identity: { stockNumber, vin: '', modelYear: 2019, make, model: 'Hearth', colour: 'red' },
    held: { now: { standing } },
  } as LotRow;
}
const rows = [row('F-12', 'Brindle', 'sold'), row('F-100', 'Škarn', 'part'), row('F-9', 'Brindle', 'part')];
const found = (typed: string) => findVehicles(rows, typed).map((found) => found.id);

describe('the vehicles offered', () => {
  it('come by stock number, the sold ones last', () => {
    expect(found('')).toEqual(['F-9', 'F-100', 'F-12']);
  });

  it('are those that hold every word, without regard to case and accents', () => {
    expect(found('brindle f-9')).toEqual(['F-9']);
    expect(found('skarn')).toEqual(['F-100']);
    expect(found('brindle blue')).toEqual([]);
  });

  it('are chosen and let go again', () => {
    const chosen = toggled(new Set<string>(), 'F-9');
    expect([...chosen]).toEqual(['F-9']);
    expect(toggled(chosen, 'F-9').size).toBe(0);
  });
});
