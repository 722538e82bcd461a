// VINs against published tables and worked examples: check digit, model year, country. Each check names its source.
import { describe, expect, it } from 'vitest';
import { readVin } from '../../app/domain/vehicle/vin.ts';
import { readCheckDigit, weightedVinSum } from '../../app/domain/vehicle/vin-check-digit.ts';
import { modelYearsOfCode } from '../../app/domain/vehicle/vin-model-year.ts';
import { countryAssigned } from '../../app/domain/vehicle/vin-origin.ts';

type Row = readonly [vin: string, sum: number | null, expected: string, holds: boolean, year: number, source: string];

const table: readonly Row[] = [
  ['1G4AH59H45G118341', 411, '4', true, 2005, '49 CFR 565.15(c), worked example'],
  ['1J9RP1A36A1644345', 314, '6', true, 2010, 'NHTSA, Outline for New Manufacturer Information'],
  ['1M8GDM9AXKP042788', 351, 'X', true, 1989, 'encyclopedia article on the VIN'],
  ['11111111111111111', 89, '1', true, 2001, 'the all-ones self-test'],
  ['1G1BN53E6NW128495', 369, '6', true, 1992, 'enthusiast article, fully worked'],
  ['5GZCZ43D13S812715', 408, '1', true, 2003, 'from memory'],
  ['SGZCZ43D13S812715', 384, 'X', false, 2003, 'from memory, the one above with 5 read as S'],
  ['JTLKT324X64085338', 318, 'X', true, 2006, 'published test list'],
  ['KM8JM12D56U303366', 324, '5', true, 2006, 'published test list'],
  ['1GTHK29U74E341306', 337, '7', true, 2004, 'published test list'],
  ['WBA3A5G59DNP26082', 361, '9', true, 2013, 'published test list'],
  ['3FADP4BJ2FM195587', 376, '2', true, 2015, 'published test list'],
  ['1G6AF5SX6D0125409', 325, '6', true, 2013, 'published test list'],
  ['1HGCM82633A004352', 311, '3', true, 2003, 'from memory'],
  ['VR7EFYHT2PN547380', null, '2', true, 2023, 'published test list; European, happens to pass'],
  ['WP0ZZZ99ZTS392124', 459, '8', false, 1996, 'from memory; European, place 9 is filler'],
  ['KLATF08Y1VB363636', 356, '4', false, 1997, 'from memory; not for North America'],
];

describe('check digit of published VINs (49 CFR 565.15(c))', () => {
  it.each(table)(
    '%s has the sum %s and the digit %s, holds: %s (model year %s; %s)',
    (vin, sum, expected, holds, year) => {
      if (sum !== null) expect(weightedVinSum(vin)).toBe(sum);
      expect(readCheckDigit(vin)).toEqual({ expected, found: vin.charAt(8), holds });
      expect(readVin(vin, { market: 'US' }).modelYears).toEqual([year]);
    },
  );

  it('reproduces the products of the example in 49 CFR 565.15(c), whose place 9 weighs nothing', () => {
    const products = [8, 49, 24, 5, 32, 15, 18, 80, 0, 45, 56, 7, 6, 40, 12, 12, 2];
    expect(weightedVinSum('1G4AH59H45G118341')).toBe(products.reduce((total, one) => total + one, 0));
    expect(weightedVinSum('1G4AH59HX5G118341')).toBe(411);
  });

  // Computed for this program: one VIN for each of the eleven digits.
  it.each([
    ['0', '1M8GDM9A0KP000002'],
    ['1', '1M8GDM9A1KP000008'],
    ['2', '1M8GDM9A2KP000003'],
    ['3', '1M8GDM9A3KP000009'],
    ['4', '1M8GDM9A4KP000004'],
    ['5', '1M8GDM9A5KP000013'],
    ['6', '1M8GDM9A6KP000005'],
    ['7', '1M8GDM9A7KP000000'],
    ['8', '1M8GDM9A8KP000006'],
    ['9', '1M8GDM9A9KP000001'],
    ['X', '1M8GDM9AXKP000007'],
  ])('finds the digit %s in %s and refuses the ten others', (digit, vin) => {
    for (const other of '0123456789X') {
      const changed = `${vin.slice(0, 8)}${other}${vin.slice(9)}`;
      expect(readCheckDigit(changed)).toEqual({ expected: digit, found: other, holds: other === digit });
    }
  });
});

describe('what the check digit can and cannot notice (brute force on 1M8GDM9AXKP042788)', () => {
  const vin = '1M8GDM9AXKP042788';
  const characters = 'ABCDEFGHJKLMNPRSTUVWXYZ0123456789';
  // 49 CFR 565.15(c) Table III, written out a second time so that the test does not ask the code for its own table.
  const groups = ['AJ1', 'BKS2', 'CLT3', 'DMU4', 'ENV5', 'FW6', 'GPX7', 'HY8', 'RZ9', '0'];
  const haveSameValue = (a: string, b: string) => groups.some((group) => group.includes(a) && group.includes(b));

  it('misses 39 of 512 single wrong characters outside place 9, all of them of the same value as the right one', () => {
    let tried = 0;
    let missed = 0;
    for (const [index, right] of [...vin].entries()) {
      if (index === 8) continue;
      for (const wrong of characters) {
        if (wrong === right) continue;
        tried += 1;
        if (!readCheckDigit(`${vin.slice(0, index)}${wrong}${vin.slice(index + 1)}`)?.holds) continue;
        missed += 1;
        expect(haveSameValue(right, wrong)).toBe(true);
      }
    }
    expect(tried).toBe(512);
    expect(missed).toBe(39);
  });

  it('misses one of 13 swaps of neighbours that leave place 9 alone: D and M, which have the same value', () => {
    const missed: string[] = [];
    let tried = 0;
    for (let index = 0; index < 16; index += 1) {
      if (index === 7 || index === 8 || vin[index] === vin[index + 1]) continue;
      tried += 1;
      const swapped = `${vin.slice(0, index)}${vin[index + 1]}${vin[index]}${vin.slice(index + 2)}`;
      if (readCheckDigit(swapped)?.holds) missed.push(vin.slice(index, index + 2));
    }
    expect(tried).toBe(13);
    expect(missed).toEqual(['DM']);
  });
});

describe('model year codes (49 CFR 565.15(d)(1), Table VII and its note)', () => {
  it.each([
    ['A', '5', [1980]],
    ['A', 'M', [2010]],
    ['K', '9', [1989]],
    ['5', '9', [2005]],
    ['5', 'B', [2035]],
    ['Y', '1', [2000]],
    ['9', '1', [2009]],
    ['9', 'A', [2039]],
    ['0', '5', []],
    ['U', '5', []],
    ['Z', '5', []],
    ['I', '5', []],
    ['O', '5', []],
    ['Q', '5', []],
  ])('reads %s with %s in place 7 as %j', (code, positionSeven, years) => {
    expect(modelYearsOfCode(code, positionSeven)).toEqual(years);
  });

  it('has 30 codes that cover 1980 to 2009 once and 2010 to 2039 once', () => {
    const codes = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789'];
    const earlier = codes.flatMap((code) => modelYearsOfCode(code, '7')).sort();
    const later = codes.flatMap((code) => modelYearsOfCode(code, 'G')).sort();
    expect(earlier).toEqual(Array.from({ length: 30 }, (_, index) => 1980 + index));
    expect(later).toEqual(Array.from({ length: 30 }, (_, index) => 2010 + index));
  });
});

describe('country of the world manufacturer identifier (ISO 3780, as two public lists give it)', () => {
  it.each([
    ['JT', 'Japan'],
    ['KM', 'South Korea'],
    ['KF', null],
    ['LS', 'China'],
    ['SA', 'United Kingdom'],
    ['SN', 'Germany'],
    ['SZ', 'Poland'],
    ['TP', 'Czechia'],
    ['TW', 'Portugal'],
    ['T1', 'Portugal'],
    ['T2', null],
    ['U5', 'Slovakia'],
    ['VF', 'France'],
    ['VX', 'Serbia'],
    ['V2', 'Serbia'],
    ['V3', 'Croatia'],
    ['V0', 'Estonia'],
    ['WB', 'Germany'],
    ['W0', 'Germany'],
    ['YX', 'Norway'],
    ['Y0', 'Ukraine'],
    ['ZF', 'Italy'],
    ['ZS', null],
    ['ZX', 'Slovenia'],
    ['1G', 'United States'],
    ['2T', 'Canada'],
    ['3F', 'Mexico'],
    ['3X', null],
    ['4U', 'United States'],
    ['5Y', 'United States'],
    ['6G', 'Australia'],
    ['7A', 'New Zealand'],
    ['8A', 'Argentina'],
    ['8F', 'Chile'],
    ['9A', 'Brazil'],
    ['93', 'Brazil'],
    ['99', 'Brazil'],
    ['90', null],
    ['9F', 'Colombia'],
    ['AA', null],
    ['00', null],
  ])('%s is assigned in %s', (start, country) => {
    expect(countryAssigned(`${start}0AAAAAAAAAAAAAA`)).toBe(country);
  });
});
