// Which reminders a seller gets in which market. The age rule itself is held to its source in tests/reference.
import { describe, expect, it } from 'vitest';
import { buyerReminders } from '../../../app/domain/sheets/buyer-reminders.ts';
import { marketSchema } from '../../../app/domain/vehicle/market.ts';

const textsOf = (...words: Parameters<typeof buyerReminders>) => buyerReminders(...words).map((item) => item.text);
const recent = {
  modelYear: 2019,
  transferYear: 2026,
  isMarginScheme: false,
  recallCheck: null,
  dayForm: 'day-month',
} as const;

describe('reminders for the seller', () => {
  it.each(marketSchema.options)('always ask for the recall check with its day (%s)', (market) => {
    const recall = buyerReminders(market, recent).find((item) => item.text.includes('recalls'));
    expect(recall?.blanks).toEqual(['looked up on', 'open recalls']);
  });

  it('name the Buyers Guide and the odometer statement in the United States only', () => {
    expect(textsOf('US', recent)).toContain('Buyers Guide on the vehicle');
    expect(textsOf('US', recent)).toContain('Odometer disclosure statement with the transfer');
    for (const market of marketSchema.options.filter((one) => one !== 'US'))
      expect(textsOf(market, recent).join()).not.toMatch(/Buyers Guide|disclosure statement/);
  });

  it('say that an old vehicle is exempt from the statement, and from which year a newer one will be', () => {
    expect(textsOf('US', { ...recent, modelYear: 2009 })).toContain('Odometer disclosure statement: exempt by age');
    const [, odometer] = buyerReminders('US', recent);
    expect(odometer?.detail).toContain('Model year 2019 is exempt from 2039 on.');
  });

  it('do not guess the exemption of a vehicle without a model year', () => {
    const [, odometer] = buyerReminders('US', { ...recent, modelYear: null });
    expect(odometer?.text).toBe('Odometer disclosure statement');
    expect(odometer?.detail).toContain('not recorded');
  });

  it.each(marketSchema.options)('say when and by whom recalls were looked up, or that nobody has (%s)', (market) => {
    const recallOf = (situation: Parameters<typeof buyerReminders>[1]) =>
      buyerReminders(market, situation).find((item) => item.text.includes('recalls'))?.detail;
    expect(recallOf(recent)).toContain('Not looked up yet');
    const recallCheck = { on: '2026-03-24', by: 'Mara Lindqvist', note: 'none open' };
    expect(recallOf({ ...recent, recallCheck })).toContain('Looked up on 24 Mar 2026 by Mara Lindqvist: none open.');
  });

  it('remind of the margin scheme’s words on the invoice only where the shop pays tax on its margin, never in the United States', () => {
    const taxed = { ...recent, isMarginScheme: true };
    const words = 'Invoice says that it is a margin scheme sale of a second-hand vehicle';
    for (const market of ['GB', 'EU'] as const) {
      expect(textsOf(market, taxed)).toContain(words);
      expect(textsOf(market, recent)).not.toContain(words);
    }
    expect(textsOf('US', taxed)).not.toContain(words);
  });

  it('put roadworthiness first in the United Kingdom', () => {
    expect(textsOf('GB', recent)[0]).toBe('Roadworthy before it is shown for sale');
  });
});
