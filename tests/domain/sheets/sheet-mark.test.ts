// The mark on a sheet: what it is made of, and that a slip in copying it is noticed.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Marked, markAlphabet, readMark, sheetMark, showMark } from '../../../app/domain/sheets/sheet-mark.ts';

const sheet: Marked = {
  kind: 'job-sheet',
  subjectId: 'vehicle-one',
  revision: 7,
  printedAt: '2026-03-18T09:00:00.000Z',
};

const anyMarked = fc
  .tuple(fc.string({ minLength: 1 }), fc.nat(), fc.date({ noInvalidDate: true }))
  .map(([subjectId, revision, date]) => ({ ...sheet, subjectId, revision, printedAt: date.toISOString() }));

describe('a mark', () => {
  it('is six characters that are not taken for each other, and the same for the same sheet', () => {
    const mark = sheetMark(sheet);
    expect(mark).toMatch(/^[2-9A-HJKMNPR-TV-Z]{6}$/);
    expect(sheetMark({ ...sheet })).toBe(mark);
  });

  it('is another one for another revision, kind, vehicle or instant', () => {
    const others: Marked[] = [
      { ...sheet, revision: 8 },
      { ...sheet, kind: 'readiness-sheet' },
      { ...sheet, subjectId: 'vehicle-two' },
      { ...sheet, printedAt: '2026-03-18T09:00:00.001Z' },
    ];
    expect(new Set([sheet, ...others].map(sheetMark)).size).toBe(5);
  });

  it('is read as it is written in halves, in small letters and with a hyphen', () => {
    fc.assert(
      fc.property(anyMarked, (marked) => {
        const mark = sheetMark(marked);
        expect(readMark(` ${showMark(mark).toLowerCase()} `)).toEqual({ ok: true, mark });
        expect(readMark(`${mark.slice(0, 2)}-${mark.slice(2)}`)).toEqual({ ok: true, mark });
      }),
    );
  });

  it('is refused when any one character is another', () => {
    const mark = sheetMark(sheet);
    for (const [place, right] of [...mark].entries())
      for (const wrong of markAlphabet) {
        if (wrong === right) continue;
        expect(readMark(`${mark.slice(0, place)}${wrong}${mark.slice(place + 1)}`).ok).toBe(false);
      }
  });

  it('is refused when any two characters have changed places', () => {
    fc.assert(
      fc.property(anyMarked, fc.nat(5), fc.nat(5), (marked, a, b) => {
        const characters = [...sheetMark(marked)];
        const [one, other] = [characters[a] ?? '', characters[b] ?? ''];
        fc.pre(one !== other);
        characters[a] = other;
        characters[b] = one;
        expect(readMark(characters.join('')).ok).toBe(false);
      }),
    );
  });

  it('says what is wrong with what was typed', () => {
    expect(readMark('K7M2P')).toMatchObject({ ok: false, sentence: expect.stringContaining('these are 5') });
    expect(readMark('K7M2PO')).toMatchObject({ ok: false, sentence: expect.stringContaining('“O”') });
  });
});
