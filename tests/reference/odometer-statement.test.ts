// 49 CFR 580.17(a)(3) and the examples given in the rule: in 2020 model year 2010 and older are exempt; in 2031 model year 2011 and older.
import { describe, expect, it } from 'vitest';
import { isOdometerExempt } from '../../app/domain/sheets/odometer-statement.ts';

describe('the age exemption of 49 CFR 580.17', () => {
  it.each([
    [2010, 2020],
    [2000, 2020],
    [2011, 2031],
    [2010, 2031],
  ])('holds for model year %i in %i, as in the examples of the rule', (modelYear, transferYear) => {
    expect(isOdometerExempt(modelYear, transferYear)).toBe(true);
  });

  // Worked from the two periods of the paragraph: ten years up to model year 2010, twenty from 2011.
  it.each([
    [2010, 2019, false],
    [2010, 2025, true],
    [2011, 2021, false],
    [2011, 2030, false],
    [2015, 2034, false],
    [2015, 2035, true],
  ])('model year %i transferred in %i: %s', (modelYear, transferYear, isExempt) => {
    expect(isOdometerExempt(modelYear, transferYear)).toBe(isExempt);
  });
});
