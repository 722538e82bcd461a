// Finding a vehicle by what a person types.
import { describe, expect, it } from 'vitest';
import { searchWords } from '../../../../app/domain/vehicle/vehicle-search.ts';
import { matchesWords } from '../../../../renderer/screens/lot/lot-search.ts';
import { makeRow } from './make-row.ts';

const row = makeRow({
  stockNumber: 'L-1042',
  vin: '9ZZBX1180KM004711',
  modelYear: 2018,
  make: 'Brindlé',
  model: 'Tarn 4',
  colour: 'dark blue',
  location: 'Back fence',
  keyTag: '77',
});
const finds = (text: string) => matchesWords(row, searchWords(text));

describe('searching the lot', () => {
  it.each(['1042', 'l-10', 'KM004711', '1180km', 'brindle', 'TARN', 'blue', 'fence', '77', '2018'])(
    'finds %s in one of the fields',
    (text) => expect(finds(text)).toBe(true),
  );

  it('needs every word, in any order', () => {
    expect(finds('tarn brindle 4711')).toBe(true);
    expect(finds('tarn brindle 4712')).toBe(false);
  });

  it('finds everything when nothing is typed', () => {
    expect(finds('')).toBe(true);
    expect(finds('   ')).toBe(true);
  });

  it('does not find a word that only begins in one field and ends in the next', () => {
    expect(finds('bluebackfence')).toBe(false);
    expect(matchesWords(makeRow({ colour: 'red', location: 'row' }), searchWords('redrow'))).toBe(false);
  });
});
