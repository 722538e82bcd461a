// How a VIN is read from what people type, paste and scan: cleaning, severities by market, offers, and that nothing throws.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Market, marketSchema } from '../../../app/domain/vehicle/market.ts';
import { readVin, type VinReading, vinTail } from '../../../app/domain/vehicle/vin.ts';

const markets = marketSchema.options;
// Invented; no maker is assigned to them. The published VINs are in tests/reference/vin.test.ts.
const good = '100AB54C450110341';
const goodWithX = '100AB54CX50100347';
const european = 'W00ZZZ99ZT0000124'; // place 9 is filler

const summary = (reading: VinReading) => reading.problems.map(({ code, severity }) => `${code}:${severity}`);
const severityOf = (text: string, market: Market, code: string) =>
  readVin(text, { market }).problems.find((problem) => problem.code === code)?.severity ?? null;

describe('cleaning', () => {
  it.each([
    ['  100ab54c450110341 ', 'spaces around and small letters'],
    ['100-AB54C4-50110341', 'hyphens'],
    ['100 AB54C4 50110341', 'spaces inside'],
    ['100\u00a0AB54C4\u2009\u201350110341\u200b\ufeff', 'spaces and dashes of other kinds'],
    ['100AB54C4\n50110341\t', 'line breaks and tabs'],
  ])('reads %j (%s) without a problem', (text) => {
    expect(readVin(text, { market: 'US' })).toMatchObject({ vin: good, problems: [], offers: [] });
  });

  it('does not turn foreign letters into others: ß stays one character, dotless ı and long ſ do not become I and S', () => {
    for (const stranger of ['ß', 'ı', 'ſ', 'А', 'Ａ']) {
      const reading = readVin(`${good.slice(0, 16)}${stranger}`, { market: 'US' });
      expect(summary(reading)).toEqual(['character-not-allowed:block']);
      expect(reading.vin).toBe(`${good.slice(0, 16)}${stranger}`);
    }
  });

  it('gives the last eight characters as the search key', () => {
    expect(vinTail(good)).toBe('50110341');
    expect(vinTail('8341')).toBe('8341');
  });
});

describe('structure blocks in every market', () => {
  it.each(markets)('in %s: empty, too short, too long, forbidden letters, foreign characters', (market) => {
    expect(summary(readVin(' - ', { market }))).toEqual(['empty:block']);
    expect(summary(readVin(good.slice(1), { market }))).toEqual(['wrong-length:block']);
    expect(summary(readVin(`${good}1`, { market }))).toEqual(['wrong-length:block']);
    expect(summary(readVin('100AB54C4501I034Q', { market }))).toEqual(['letter-never-used:block']);
    expect(summary(readVin('100AB54C45011034_', { market }))).toEqual(['character-not-allowed:block']);
    expect(summary(readVin('O!', { market }))).toEqual([
      'wrong-length:block',
      'letter-never-used:block',
      'character-not-allowed:block',
    ]);
  });

  it('says how many characters are missing or too many, and where the wrong ones are', () => {
    expect(readVin(good.slice(2), { market: 'US' }).problems[0]?.sentence).toContain('2 are missing');
    expect(readVin(`${good}1`, { market: 'US' }).problems[0]?.sentence).toContain('1 is too many');
    expect(readVin('100AB54C4501O0341', { market: 'US' }).problems[0]?.sentence).toContain('O (place 13)');
  });

  it('tells nothing about a text that is no VIN', () => {
    const reading = readVin('100', { market: 'US' });
    expect(reading).toMatchObject({ checkDigit: null, modelYears: [], assignedIn: null });
  });
});

describe('a wrong check digit', () => {
  it('asks for a reason where the digit is mandatory: United States, Canada, Mexico, China', () => {
    for (const market of ['US', 'CA', 'MX', 'CN'] as const) {
      expect(severityOf('S00AB54C450110341', market, 'check-digit-wrong')).toBe('override');
      expect(severityOf(european, market, 'check-digit-missing')).toBe('override');
    }
  });

  it('is a note elsewhere, so a European VIN with filler in place 9 is accepted', () => {
    for (const market of ['GB', 'EU', 'other'] as const) {
      expect(severityOf('S00AB54C450110341', market, 'check-digit-wrong')).toBe('note');
      const reading = readVin(european, { market });
      expect(reading.problems.map((problem) => problem.severity)).not.toContain('block');
      expect(reading.problems.map((problem) => problem.severity)).not.toContain('override');
      expect(reading.checkDigit).toEqual({ expected: '1', found: 'Z', holds: false });
    }
  });

  it('asks for a reason in every market when the VIN begins 1 to 5', () => {
    for (const market of markets) {
      for (const first of '2345')
        expect(severityOf(`${first}${good.slice(1)}`, market, 'check-digit-wrong')).toBe('override');
    }
  });

  it('shows what was expected and what was found', () => {
    const [problem] = readVin('100AB54C550110341', { market: 'US' }).problems;
    expect(problem?.sentence).toContain('should be 4 but is 5');
  });

  it('treats X as a check digit in place 9 only; elsewhere it is the letter X with the value 7', () => {
    expect(readVin(goodWithX, { market: 'US' })).toMatchObject({
      problems: [],
      checkDigit: { found: 'X', holds: true },
    });
    for (const place of [3, 4, 10, 16]) {
      const withCharacter = (character: string) => `${good.slice(0, place)}${character}${good.slice(place + 1)}`;
      const expected = readVin(withCharacter('7'), { market: 'EU' }).checkDigit?.expected;
      expect(readVin(withCharacter('X'), { market: 'EU' }).checkDigit?.expected).toBe(expected);
    }
  });
});

describe('model years', () => {
  it('gives both years for a heavier vehicle, whose place 7 decides nothing', () => {
    expect(readVin(good, { market: 'US', lightVehicle: false }).modelYears).toEqual([2005, 2035]);
    expect(readVin(good, { market: 'US' }).modelYears).toEqual([2005]);
  });

  it('gives both years, with a note, for a vehicle not made to the North American rule', () => {
    const reading = readVin(european, { market: 'EU' });
    expect(reading.modelYears).toEqual([1996, 2026]);
    expect(severityOf(european, 'EU', 'year-code-voluntary')).toBe('note');
  });

  it('gives none for 0, U and Z in place 10, and says so', () => {
    for (const code of '0UZ') {
      const vin = `W00ZZZ99Z${code}0000124`;
      expect(readVin(vin, { market: 'EU' }).modelYears).toEqual([]);
      expect(severityOf(vin, 'EU', 'year-code-unknown')).toBe('note');
    }
  });
});

describe('serial number', () => {
  it('notes letters in the last five places of a light vehicle made to the North American rule', () => {
    expect(severityOf('100AB54C45011A341', 'US', 'serial-not-numeric')).toBe('note');
    expect(severityOf('100AB54C450A10341', 'US', 'serial-not-numeric')).toBe(null);
    expect(severityOf('100AB54C4501A0341', 'US', 'serial-not-numeric')).toBe('note');
    expect(
      readVin('100AB54C4501A0341', { market: 'US', lightVehicle: false }).problems.map((one) => one.code),
    ).not.toContain('serial-not-numeric');
    expect(severityOf('W00ZZZ99ZT00A012A', 'EU', 'serial-not-numeric')).toBe(null);
  });

  it('allows a low-volume maker, whose third place is 9, letters in places 12 to 14', () => {
    expect(severityOf('109AB54C450ABC345', 'US', 'serial-not-numeric')).toBe(null);
    expect(severityOf('109AB54C450ABC3A5', 'US', 'serial-not-numeric')).toBe('note');
  });
});

describe('offers', () => {
  it('offers 0 for O and Q and 1 for I, and applies nothing by itself', () => {
    const typed = 'I00AB54C450I1034I';
    const reading = readVin(typed, { market: 'US' });
    expect(reading.vin).toBe(typed);
    expect(reading.offers).toMatchObject([{ code: 'replace-letters', vin: good, checkDigitHolds: true }]);
    expect(readVin('10OAB54CX50100347', { market: 'US' }).offers[0]?.vin).toBe(goodWithX);
    expect(readVin('100AB54CX5Q100347', { market: 'US' }).offers[0]?.vin).toBe(goodWithX);
  });

  it('offers to drop a leading I only when the text is 18 long', () => {
    expect(readVin(`I${good}`, { market: 'US' }).offers).toMatchObject([
      { code: 'drop-leading-i', vin: good, checkDigitHolds: true },
    ]);
    expect(readVin(`I${good.slice(1)}`, { market: 'US' }).offers.map((one) => one.code)).toEqual(['replace-letters']);
    expect(readVin(`I${good}1`, { market: 'US' }).offers.map((one) => one.code)).toEqual(['replace-letters']);
  });

  it('offers both corrections together when both are needed', () => {
    const offers = readVin('I100AB54CX501O0347', { market: 'US' }).offers;
    expect(offers.map((one) => [one.code, one.checkDigitHolds])).toEqual([
      ['drop-leading-i', null],
      ['drop-leading-i-and-replace-letters', true],
    ]);
    expect(offers[1]?.vin).toBe(goodWithX);
  });

  it('offers nothing for a VIN that needs no correction', () => {
    expect(readVin(european, { market: 'EU' }).offers).toEqual([]);
  });
});

describe('any text', () => {
  const anyText = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 60 }),
    fc.string({ unit: fc.constantFrom(...'ABCIOQXZ 0189-_ß\u200b'), minLength: 14, maxLength: 20 }),
  );

  it('never throws, always gives a sentence for each problem, and blocks exactly what has no check digit', () => {
    fc.assert(
      fc.property(anyText, fc.constantFrom(...markets), fc.boolean(), (text, market, lightVehicle) => {
        const reading = readVin(text, { market, lightVehicle });
        for (const problem of reading.problems) expect(problem.sentence).toMatch(/\.$/);
        const isBlocked = reading.problems.some((problem) => problem.severity === 'block');
        expect(isBlocked).toBe(reading.checkDigit === null);
        expect(isBlocked).toBe(!/^[A-HJ-NPR-Z0-9]{17}$/.test(reading.vin));
      }),
    );
  });

  it('reads its own cleaned text the same way again, and an offer taken leaves no offer of its kind', () => {
    fc.assert(
      fc.property(anyText, fc.constantFrom(...markets), (text, market) => {
        const reading = readVin(text, { market });
        expect(readVin(reading.vin, { market })).toEqual(reading);
        for (const offer of reading.offers) {
          const next = readVin(offer.vin, { market });
          expect(next.vin).toBe(offer.vin);
          expect(next.offers.map((one) => one.code)).not.toContain(offer.code);
        }
      }),
    );
  });
});
