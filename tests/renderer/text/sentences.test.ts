// Sentences with values in them.
import { describe, expect, it } from 'vitest';
import { appErrorCodeSchema } from '../../../app/contract/app-error.ts';
import { errorSentence } from '../../../renderer/text/errors.ts';
import { stripLabel } from '../../../renderer/text/strip.ts';

describe('the words for an error', () => {
  it.each(appErrorCodeSchema.options)('say what is wrong for %s, in whole sentences', (code) => {
    expect(errorSentence({ code, detail: '' })).toMatch(/^[A-Z].{15,}\.$/);
  });

  it('end with the detail where there is one', () => {
    expect(errorSentence({ code: 'no-space', detail: ' The disk has 0 bytes left. ' })).toMatch(
      /\. The disk has 0 bytes left\.$/,
    );
  });
});

describe('a hold strip in words', () => {
  const now = { standing: 'part', since: '2026-02-10', what: 'dash unit', expectedOn: '2026-03-09' } as const;

  it('tells the days by cause, what it waits for and when the margin is used up', () => {
    const held = { heldDays: 42, stretches: [], byCause: { part: 22, transit: 20 }, now };
    expect(stripLabel({ held, boughtOn: '2026-01-21', breakEvenOn: '2026-04-02' })).toBe(
      'Held 42 days since 21 Jan 2026: in transit 20, part 22. Now: part, dash unit, since 10 Feb 2026, expected on 9 Mar 2026. Margin used up after 2 Apr 2026.',
    );
  });

  it('is short for a vehicle bought today', () => {
    const held = { heldDays: 0, stretches: [], byCause: {}, now: { ...now, what: '', expectedOn: null } };
    expect(stripLabel({ held, boughtOn: '2026-03-04', breakEvenOn: null })).toBe(
      'Held 0 days since 4 Mar 2026. Now: part, since 10 Feb 2026.',
    );
  });
});
