// What the number, money and day fields make of what is typed.
import { describe, expect, it } from 'vitest';
import { readDayShorthand } from '../../../renderer/ui/day-shorthand.ts';
import { readMoment } from '../../../renderer/ui/read-moment.ts';
import { readNumber, showNumber } from '../../../renderer/ui/read-number.ts';
import { showWholeUnits } from '../../../renderer/ui/whole-units.ts';

const whole = { decimals: 0, minimum: 0, maximum: 3_000_000 };

describe('reading a number', () => {
  it.each([
    ['61250', 61_250],
    ['61 250', 61_250],
    ['61,250', 61_250],
    ['61.250', 61_250],
    ['0', 0],
    ['007', 7],
  ])('reads %s as a whole number', (text, number) => expect(readNumber(text, whole)).toBe(number));

  it.each(['', 'x', '12x', '12.5', '1,25', '-1', '3000001', '1e3'])('does not take %s for one', (text) =>
    expect(readNumber(text, whole)).toBeNull(),
  );

  it('reads decimals with either mark where they are asked for, and no more of them than asked', () => {
    const volts = { decimals: 1, minimum: -50, maximum: 50 };
    expect(readNumber('12,4', volts)).toBe(12.4);
    expect(readNumber('\u221212.4', volts)).toBe(-12.4);
    expect(readNumber('12.45', volts)).toBeNull();
  });

  it('shows thousands from five digits on, so that a year stays a year', () => {
    expect(showNumber(2019)).toBe('2019');
    expect(showNumber(61_250)).toBe('61,250');
    expect(showNumber(-1234567.5)).toBe('\u22121,234,567.5');
  });

  it.each([0, 7, 2019, 61_250, 2_999_999])('reads back %i as it shows it', (number) =>
    expect(readNumber(showNumber(number), whole)).toBe(number),
  );
});

describe('day shorthands', () => {
  const today = '2026-03-04';

  it.each([
    ['t', '2026-03-04'],
    ['-3', '2026-03-01'],
    ['\u22124', '2026-02-28'],
    ['+5', '2026-03-09'],
    ['-0', '2026-03-04'],
  ])('%s is %s', (text, day) => expect(readDayShorthand(text, today)).toBe(day));

  it.each(['', '-', '+', '3', 'x', '-99999'])('%s is none', (text) => expect(readDayShorthand(text, today)).toBeNull());
});

describe('amounts in whole units', () => {
  it.each([
    [124_950, '1,250'],
    [124_949, '1,249'],
    [-4_650, '\u221247'],
    [-49, '0'],
    [0, '0'],
  ])('shows %i cents as %s', (cents, text) => expect(showWholeUnits(cents)).toBe(text));
});

describe('reading a day and a time of day', () => {
  const today = '2026-03-18';
  const local = (hour: number, minute: number, dayOfMonth = 4) =>
    new Date(2026, 2, dayOfMonth, hour, minute).toISOString();

  it.each([
    ['4 Mar 2026 9:05', local(9, 5)],
    ['mar 4 17:30', local(17, 30)],
    ['2026-03-04T00:00', local(0, 0)],
    ['t 23:59', local(23, 59, 18)],
  ])('reads %s', (text, instant) => expect(readMoment(text, 'day-month', today)).toBe(instant));

  it.each(['', '9:05', '4 Mar 2026', '4 Mar 2026 24:00', '4 Mar 2026 10:60', '04.03.2026 10:00', '10:00 4 Mar'])(
    'does not take “%s” for one',
    (text) => expect(readMoment(text, 'day-month', today)).toBeNull(),
  );

  it('takes the form that the shop has chosen', () =>
    expect(readMoment('04.03.2026 10:00', 'dotted', today)).toBe(local(10, 0)));
});
