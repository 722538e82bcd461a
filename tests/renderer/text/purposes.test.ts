// Every screen says what it is for and what to do first, to whoever it is for, and of money only to the manager.
import { describe, expect, it } from 'vitest';
import { roleSchema } from '../../../app/domain/fleet/shop.ts';
import { purposes } from '../../../renderer/text/purposes.ts';

const ofMoney = /money|price|cost|margin|paid|payment|earn|tie up|lender|rate/i;
/** By hand: which screens the program shows to nobody but these. */
const onlyFor: Readonly<Record<string, readonly string[]>> = {
  'next-jobs': ['manager', 'technician'],
  waiting: ['manager', 'technician'],
  money: ['manager'],
  safety: ['manager'],
  'take-in': ['manager'],
  'import-list': ['manager'],
};

describe.each(Object.entries(purposes))('the screen %s', (screen, purpose) => {
  it.each(roleSchema.options)('has its sentence for %s, or is not for them', (role) => {
    const sentence = purpose[role];
    const isForThem = (onlyFor[screen] ?? roleSchema.options).includes(role);
    expect(sentence !== null).toBe(isForThem);
    if (sentence === null) return;
    expect(sentence).toMatch(/^[A-Z].*\.$/);
    // A quiet line, not a page.
    expect(sentence.length).toBeLessThan(230);
    if (role !== 'manager') expect(sentence).not.toMatch(ofMoney);
  });
});
