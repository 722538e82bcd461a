// When a kept code is not kept any longer: after the sale, after its vehicle was taken out, and when nothing asks for it any more.
import { describe, expect, it } from 'vitest';
import { type PlaceOfCode, whyDestroyed } from '../../../app/domain/codes/codes-overdue.ts';

const inFleet: PlaceOfCode = { in: 'fleet', soldOn: null, hasRequest: true };

describe('a kept code', () => {
  it('stays while its vehicle is in stock and its request in the record', () => {
    expect(whyDestroyed(inFleet, 0, '2099-01-01')).toBeNull();
  });

  it('goes when the days of the shop after the sale are over, and not a day earlier', () => {
    const sold: PlaceOfCode = { ...inFleet, soldOn: '2026-03-01' };
    expect(whyDestroyed(sold, 30, '2026-03-30')).toBeNull();
    expect(whyDestroyed(sold, 30, '2026-03-31')).toBe('sold');
    expect(whyDestroyed(sold, 0, '2026-03-01')).toBe('sold');
  });

  it('goes so many days after its vehicle was taken out of the fleet', () => {
    const out: PlaceOfCode = { in: 'withdrawn', withdrawnOn: '2026-03-01' };
    expect(whyDestroyed(out, 14, '2026-03-14')).toBeNull();
    expect(whyDestroyed(out, 14, '2026-03-15')).toBe('withdrawn');
  });

  it('goes with its request, however young', () => {
    expect(whyDestroyed({ ...inFleet, hasRequest: false }, 30, '2026-03-01')).toBe('no-request');
  });

  it('stays while nobody knows what became of the record of its vehicle', () => {
    expect(whyDestroyed({ in: 'nowhere' }, 0, '2099-01-01')).toBeNull();
  });
});
