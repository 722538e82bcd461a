// The recovery key on paper and back: slips are found and named.
import { randomBytes } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { readRecoveryKey, showRecoveryKey } from '../../../app/storage/vault/recovery-key.ts';
import { unwrapped } from '../fleet-fixture.ts';

const key = randomBytes(20);
const shown = showRecoveryKey(key);
const symbols = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const firstProblem = (text: string) => {
  const read = readRecoveryKey(text);
  return read.ok ? null : read.error;
};

describe('the recovery key', () => {
  it('is eight groups of five characters that are hard to misread', () => {
    expect(shown).toMatch(/^([0-9A-HJKMNP-TV-Z]{5}-){7}[0-9A-HJKMNP-TV-Z]{5}$/);
  });

  it('reads back, for any bytes', () => {
    for (let run = 0; run < 300; run++) {
      const bytes = randomBytes(20);
      expect(unwrapped(readRecoveryKey(showRecoveryKey(bytes))).equals(bytes)).toBe(true);
    }
    for (const value of [0, 255]) {
      const bytes = Buffer.alloc(20, value);
      expect(unwrapped(readRecoveryKey(showRecoveryKey(bytes))).equals(bytes)).toBe(true);
    }
  });

  it('reads in small letters, with spaces, and with O and I for 0 and 1', () => {
    const typed = ` ${shown.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'i')} `;
    expect(unwrapped(readRecoveryKey(typed)).equals(key)).toBe(true);
  });

  it('is refused with any one character wrong, and the group is named', () => {
    const compact = shown.replaceAll('-', '');
    for (let at = 0; at < compact.length; at++) {
      for (const symbol of symbols) {
        if (symbol === compact[at]) continue;
        const typed = compact.slice(0, at) + symbol + compact.slice(at + 1);
        expect([at, symbol, firstProblem(typed)?.slice(0, 10)]).toEqual([
          at,
          symbol,
          `Group ${Math.floor(at / 5) + 1} of`,
        ]);
      }
    }
  });

  it('is refused with any two neighbours of a group swapped', () => {
    const compact = shown.replaceAll('-', '');
    for (let at = 0; at + 1 < compact.length; at++) {
      if (at % 5 === 4 || compact[at] === compact[at + 1]) continue;
      const typed = `${compact.slice(0, at)}${compact[at + 1]}${compact[at]}${compact.slice(at + 2)}`;
      expect([at, firstProblem(typed)]).toEqual([at, expect.stringContaining(`Group ${Math.floor(at / 5) + 1} of 8`)]);
    }
  });

  it('is refused with two groups swapped, even where their symbols are the same', () => {
    const groups = shown.split('-');
    const swapped = [groups[1], groups[0], ...groups.slice(2)].join('-');
    expect(firstProblem(swapped)).toContain('Group 1 of 8');
    const same = showRecoveryKey(Buffer.alloc(20)).split('-');
    expect(new Set(same).size).toBe(8);
  });

  it('is refused when too short, and no sentence repeats it', () => {
    const sentence = firstProblem(shown.slice(0, -2));
    expect(sentence).toContain('38 of 40');
    expect(sentence).not.toContain(shown.slice(0, 5));
    expect(firstProblem(`${shown.slice(0, -1)}U`)).toContain('Group 8 of 8');
    expect(firstProblem('')).toContain('0 of 40');
  });
});
