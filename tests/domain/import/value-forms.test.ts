// How a column of a list writes numbers and days.
import { describe, expect, it } from 'vitest';
import {
  guessDayForm,
  guessDecimalForm,
  readListCents,
  readListDay,
  readListWhole,
} from '../../../app/domain/import/value-forms.ts';

describe('numbers of a column', () => {
  it.each([
    [['1.234,50', '900'], 'comma'],
    [['1,234.50', '900'], 'point'],
    [['6.400', '12.500'], 'comma'],
    [['6,400', '12,500'], 'point'],
    [['6400', '900'], 'point'],
    [['€ 6 400,00', '12,5'], 'comma'],
  ] as const)('%j are written with a %s', (values, form) => {
    expect(guessDecimalForm(values)).toBe(form);
  });

  it.each([
    ['1.234,50', 'comma', 123_450],
    ['1,234.5', 'point', 123_450],
    ['$6,400', 'point', 640_000],
    ['6 400,00 €', 'comma', 640_000],
    ["CHF 6'400.00", 'point', 640_000],
    ['-12', 'point', -1_200],
    ['\u221212', 'point', -1_200],
    ['6.400', 'comma', 640_000],
    ['6.400', 'point', null],
    ['1,23', 'point', null],
    ['1.234.5', 'comma', null],
    ['1e3', 'point', null],
    ['n/a', 'point', null],
    ['99999999999999999', 'point', null],
  ] as const)('%s with a %s is %s', (text, form, cents) => {
    expect(readListCents(text, form)).toBe(cents);
  });

  it('may be whole', () => {
    expect(readListWhole('84,120 mi', 'point')).toBe(84_120);
    expect(readListWhole('2017', 'point')).toBe(2017);
    expect(readListWhole('2017.5', 'point')).toBeNull();
  });
});

describe('days of a column', () => {
  it('are told by the value that fits one form only', () => {
    expect(guessDayForm(['03/04/2026', '25/04/2026'], true)).toBe('day-first');
    expect(guessDayForm(['03/04/2026', '04/25/2026'], false)).toBe('month-first');
    expect(guessDayForm(['2026-03-04'], false)).toBe('year-first');
  });

  it('go by the market where both fit', () => {
    expect(guessDayForm(['03/04/2026'], true)).toBe('month-first');
    expect(guessDayForm(['03/04/2026'], false)).toBe('day-first');
    expect(guessDayForm(['03.04.2026'], true)).toBe('day-first');
  });

  it.each([
    ['4.3.2026', 'day-first', '2026-03-04'],
    ['04. 03. 26', 'day-first', '2026-03-04'],
    ['3/4/26', 'month-first', '2026-03-04'],
    ['2026-03-04T10:30:00', 'year-first', '2026-03-04'],
    ['20260304', 'year-first', '2026-03-04'],
    ['30/02/2026', 'day-first', null],
    ['2026-03-04', 'day-first', null],
    ['46085', 'year-first', null],
  ] as const)('%s read %s is %s', (text, form, day) => {
    expect(readListDay(text, form)).toBe(day);
  });
});
