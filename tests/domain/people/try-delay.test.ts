// Waiting after wrong pass phrases, and what makes one good enough.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  passPhraseProblem,
  phraseForm,
  signInSecretForm,
  signInSecretProblem,
} from '../../../app/domain/people/pass-phrase.ts';
import {
  noTries,
  oneMoreTry,
  triesSchema,
  waitLeft,
  waitMillisecondsAfter,
  waitSentence,
} from '../../../app/domain/people/try-delay.ts';

const at = (seconds: number) => new Date(Date.UTC(2026, 2, 4, 10) + seconds * 1000).toISOString();

describe('the wait', () => {
  it('is none for two slips, then five seconds doubled each time, at most an hour', () => {
    expect([0, 1, 2, 3, 4, 5, 6].map(waitMillisecondsAfter)).toEqual([0, 0, 0, 5_000, 10_000, 20_000, 40_000]);
    expect(waitMillisecondsAfter(50)).toBe(3_600_000);
    expect(waitMillisecondsAfter(1_000_000)).toBe(3_600_000);
  });

  it('never gets shorter with more failures', () => {
    fc.assert(
      fc.property(fc.nat(5000), (failures) => {
        expect(waitMillisecondsAfter(failures + 1)).toBeGreaterThanOrEqual(waitMillisecondsAfter(failures));
      }),
    );
  });

  it('runs down with the clock', () => {
    const tries = { failures: 4, lastAt: at(0) };
    expect(waitLeft(tries, at(0)).waitMilliseconds).toBe(10_000);
    expect(waitLeft(tries, at(4)).waitMilliseconds).toBe(6_000);
    expect(waitLeft(tries, at(10)).waitMilliseconds).toBe(0);
    expect(waitLeft(noTries, at(0)).waitMilliseconds).toBe(0);
  });

  it('begins anew when the clock was set back, whether by a second or by a year, and no longer than that', () => {
    const tries = { failures: 4, lastAt: at(0) };
    for (const back of [-1, -31_536_000]) {
      const left = waitLeft(tries, at(back));
      expect(left).toEqual({ waitMilliseconds: 10_000, tries: { failures: 4, lastAt: at(back) } });
      expect(waitLeft(left.tries, at(back + 10)).waitMilliseconds).toBe(0);
    }
  });

  it('is never over earlier by any setting back of the clock', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 20 }),
        fc.integer({ min: 0, max: 4000 }),
        fc.nat(100_000),
        (failures, passed, back) => {
          const tries = { failures, lastAt: at(0) };
          const honest = waitLeft(tries, at(passed)).waitMilliseconds;
          const cheated = waitLeft(tries, at(passed - back));
          expect(cheated.waitMilliseconds).toBeGreaterThanOrEqual(honest);
        },
      ),
    );
  });

  it('counts up and stays within its schema', () => {
    expect(oneMoreTry(noTries, at(0))).toEqual({ failures: 1, lastAt: at(0) });
    expect(triesSchema.safeParse(oneMoreTry({ failures: 1_000_000, lastAt: at(0) }, at(1))).success).toBe(true);
  });

  it('is said in words', () => {
    expect(waitSentence(0)).toBe('');
    expect(waitSentence(900)).toBe('Wait 1 second before the next try.');
    expect(waitSentence(40_000)).toBe('Wait 40 seconds before the next try.');
    expect(waitSentence(3_600_000)).toBe('Wait 60 minutes before the next try.');
  });
});

describe('a pass phrase for codes', () => {
  it.each(['short', '12345678901', 'aaaaaaaaaaaaaaaa', 'abababababab', '            '])('“%s” is too weak', (text) => {
    expect(passPhraseProblem(text)).toMatch(/\.$/);
  });

  it.each(['copper lamp under ferry', 'Zwölf Boxkämpfer jagen', '四輪馬車は静かに走る夜明け前'])(
    '“%s” will do',
    (text) => {
      expect(passPhraseProblem(text)).toBeNull();
    },
  );

  it('is the same however the keyboard composes its letters', () => {
    expect(phraseForm('Bru\u0308cke ')).toBe(phraseForm('Br\u00fccke'));
  });

  it('has an end', () => {
    expect(passPhraseProblem('words '.repeat(50))).toMatch(/At most/);
  });
});

describe('what signs in', () => {
  it.each(['123', '1111', '1234', '4321', '7890', 'kurz'])('“%s” is refused', (text) => {
    expect(signInSecretProblem(text)).toMatch(/\.$/);
  });

  it.each([
    ['7302', 'pin'],
    ['730219', 'pin'],
    ['green door', 'pass-phrase'],
  ] as const)('“%s” will do as a %s', (text, form) => {
    expect(signInSecretProblem(text)).toBeNull();
    expect(signInSecretForm(text)).toBe(form);
  });
});
