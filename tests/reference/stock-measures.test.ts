// Stock measures against worked and published figures: the gross return of 3.25 is that of an investing dictionary; the rest computed
// from the formulas.
import { describe, expect, it } from 'vitest';
import {
  averageInventoryCents,
  daysSupply,
  daysToSell,
  grossReturn,
  inventoryTurn,
} from '../../app/domain/fleet/stock-measures.ts';

describe('measures of stock', () => {
  it('days’ supply: 60 in stock and 45 sold in 30 days last 40 days', () => {
    expect(daysSupply(60, 45, 30)).toBe(40);
  });

  it('days’ supply: 100 in stock and 25 a month last 120 days, not the 4 that dividing by the month’s sales prints', () => {
    expect(daysSupply(100, 25, 30)).toBe(120);
  });

  it('turn: 3,650,000 of sales at cost over 500,000 of stock is 7.3, a turn each 50 days', () => {
    const turn = inventoryTurn(3_650_000_00, 500_000_00);
    expect(turn).toBeCloseTo(7.3, 12);
    expect(daysToSell(turn)).toBeCloseTo(50, 12);
  });

  it('average stock is half of beginning and end', () => {
    expect(averageInventoryCents(400_000_00, 600_000_00)).toBe(500_000_00);
  });

  it('gross return: revenue 100 million, cost 35 million, average stock 20 million give 3.25', () => {
    const million = 100_000_000;
    expect(grossReturn(100 * million, 35 * million, 20 * million)).toBe(3.25);
    // the same as gross share of sales times sales over stock
    expect((65 / 100) * (100 / 20)).toBe(3.25);
  });

  it('cannot be told where there is nothing to divide by', () => {
    expect(daysSupply(60, 0, 30)).toBeNull();
    expect(inventoryTurn(100, 0)).toBeNull();
    expect(daysToSell(null)).toBeNull();
    expect(daysToSell(0)).toBeNull();
    expect(grossReturn(100, 50, 0)).toBeNull();
  });
});
