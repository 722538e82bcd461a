// The sheet for the windscreen: what it says, and that nothing internal ever stands on it.
import { describe, expect, it } from 'vitest';
import { type SheetBlock, sheetSchema } from '../../../app/domain/sheets/sheet.ts';
import { windowSheet } from '../../../app/domain/sheets/window-sheet.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import {
  exampleAmounts,
  examplePrinting,
  exampleShop,
  exampleToday,
  exampleVehicle,
  readyToday,
  readyVehicle,
  reckonExample,
} from '../../helpers/sheet-example.ts';
import { amountsIn, sheetText } from '../../helpers/sheet-text.ts';

function sheetOf(vehicle: Vehicle, today = exampleToday, shop = exampleShop) {
  return windowSheet(vehicle, reckonExample(vehicle, today, shop), shop, examplePrinting);
}

function cardOf(...about: Parameters<typeof sheetOf>) {
  const [card] = sheetOf(...about).blocks;
  return card as Extract<SheetBlock, { kind: 'window-card' }>;
}

describe('the window sheet', () => {
  it('is one block by the schema, ready or not', () => {
    for (const sheet of [sheetOf(exampleVehicle), sheetOf(readyVehicle, readyToday)]) {
      expect(sheetSchema.safeParse(sheet).error?.issues).toBeUndefined();
      expect(sheet.blocks).toHaveLength(1);
    }
  });

  it('says stock number, vehicle, reading and ready, with the price where the shop wants it', () => {
    expect(cardOf(readyVehicle, readyToday)).toMatchObject({
      number: 'F-1042',
      name: '2019 Merrowick Hearth 2.0 Estate',
      lines: ['61,482 mi · hybrid · river blue'],
      isGood: true,
      verdict: 'Ready for sale',
      price: 'USD 14,273',
    });
  });

  it('shows no price where the shop does not want it, none is set, or the vehicle is not offered', () => {
    const discreet = { ...exampleShop, dealer: { ...exampleShop.dealer, showsPriceInWindow: false } };
    expect(cardOf(readyVehicle, readyToday, discreet).price).toBe('');
    expect(cardOf(exampleVehicle).price).toBe('');
    const unpriced = { ...readyVehicle, targets: { ...readyVehicle.targets, askingCents: null } };
    expect(cardOf(unpriced, readyToday).price).toBe('');
    const sold = {
      ...readyVehicle,
      sale: { soldOn: readyToday, priceCents: 1_391_100, buyer: 'A. Buyer', paidOffOn: null },
    };
    expect(cardOf(sold, readyToday)).toMatchObject({ verdict: 'Sold', price: '', isGood: false });
  });

  it('marks a vehicle that is not ready as not for sale, without saying why it waits', () => {
    expect(cardOf(exampleVehicle)).toMatchObject({ isGood: false, verdict: 'Not for sale yet' });
    const text = sheetText(sheetOf(exampleVehicle));
    expect(text).not.toMatch(/Northbank|Clearpane|Harrow Cross|code desk|envelope|immobiliser|expected|Tomáš/);
  });

  it('carries no amount but the asking price', () => {
    const text = sheetText(sheetOf(readyVehicle, readyToday));
    const others = exampleAmounts.filter((cents) => cents !== readyVehicle.targets.askingCents);
    expect(amountsIn(text, others)).toEqual([]);
    expect(amountsIn(sheetText(sheetOf(exampleVehicle)), exampleAmounts)).toEqual([]);
  });

  it('tells a buyer in short what became of each fault, without the shop’s reasons, and where the whole stands', () => {
    const card = cardOf(readyVehicle, readyToday);
    expect(card.told.items).toEqual([
      'Body control module does not answer; no locks, no wipers: replaced',
      'Scratch on the tailgate, 20 cm: left as it is',
      'Blower whistles on stage 4: left as it is',
    ]);
    expect(card.more).toContain('readiness sheet of F-1042');
    expect(card.more).toContain('Buyers Guide');
    const british = { ...exampleShop, dealer: { ...exampleShop.dealer, market: 'GB' as const } };
    expect(cardOf(readyVehicle, readyToday, british).more).not.toContain('Buyers Guide');
  });
});
