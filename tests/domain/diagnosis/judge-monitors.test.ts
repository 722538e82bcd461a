// Readings that cannot be judged, contradictions, and the table of schemes as data that a shop edits.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inspectionSchemeSchema, inspectionSchemes } from '../../../app/domain/diagnosis/inspection-schemes.ts';
import { judgeMonitors } from '../../../app/domain/diagnosis/judge-monitors.ts';
import { readMonitors } from '../../../app/domain/diagnosis/readiness-monitors.ts';

const byte = fc.integer({ min: 0, max: 255 });

describe('reading monitors', () => {
  it.each([
    [[]],
    [[1, 2, 3]],
    [[1, 2, 3, 4, 5]],
    [[0, 7, 256, 0]],
    [[0, 7, -1, 0]],
    [[0, 7, 0.5, 0]],
    [[0, 7, Number.NaN, 0]],
  ])('gives nothing for %j', (bytes) => {
    expect(readMonitors(bytes)).toBeNull();
  });

  it('never calls an unsupported monitor incomplete, for any four bytes', () => {
    fc.assert(
      fc.property(byte, byte, byte, byte, (a, b, c, d) => {
        const reading = readMonitors([a, b, c, d]);
        const other = readMonitors([a, b, c, d & c]);
        expect(reading).toEqual(other);
        expect(reading?.incomplete.length).toBeLessThanOrEqual(reading?.monitors.length ?? 0);
      }),
    );
  });
});

describe('judging', () => {
  const ready = readMonitors([0, 0x07, 0xe5, 0]);
  if (ready === null) throw new Error('four bytes');
  const [federal] = inspectionSchemes;
  if (federal === undefined) throw new Error('a scheme');

  it('has nothing to judge on a battery-electric vehicle', () => {
    expect(judgeMonitors(ready, { scheme: federal, modelYear: 2020, fuel: 'electric' }).verdict).toBe('not-applicable');
  });

  it('says so when the scheme has no rule for the year', () => {
    const judgement = judgeMonitors(ready, { scheme: federal, modelYear: 1994, fuel: 'petrol' });
    expect(judgement).toMatchObject({ verdict: 'no-rule', rule: null });
    expect(judgement.reasons[0]).toContain('1994');
  });

  it('points out a reading of the other kind of engine, except on a hybrid, which can be either', () => {
    const about = (fuel: 'petrol' | 'diesel' | 'hybrid') =>
      judgeMonitors(ready, { scheme: federal, modelYear: 2010, fuel }).reasons.join(' ');
    expect(about('diesel')).toContain('Check which is right');
    expect(about('petrol')).toBe('');
    expect(about('hybrid')).toBe('');
  });

  it('gives a reason for every failure and names the rule it used', () => {
    fc.assert(
      fc.property(
        byte,
        byte,
        byte,
        byte,
        fc.constantFrom(...inspectionSchemes),
        fc.integer({ min: 1990, max: 2030 }),
        (a, b, c, d, scheme, modelYear) => {
          const reading = readMonitors([a, b, c, d]);
          if (reading === null) return;
          const judgement = judgeMonitors(reading, { scheme, modelYear, fuel: 'petrol' });
          if (judgement.verdict === 'fails') expect(judgement.reasons.length).toBeGreaterThan(0);
          if (judgement.verdict === 'passes') expect(judgement.rule).not.toBeNull();
          if (reading.isLampCommanded) expect(judgement.verdict).toBe('fails');
        },
      ),
    );
  });
});

describe('the table of schemes', () => {
  it('is valid data with a source and a date beside every rule', () => {
    for (const scheme of inspectionSchemes) expect(inspectionSchemeSchema.parse(scheme)).toEqual(scheme);
    expect(inspectionSchemeSchema.safeParse({ ...inspectionSchemes[0], rules: [{ source: '' }] }).success).toBe(false);
  });

  it('has at most one rule for any year and fuel', () => {
    for (const scheme of inspectionSchemes) {
      for (const fuel of ['petrol', 'diesel', 'hybrid'] as const) {
        for (let year = 1980; year <= 2060; year += 1) {
          const rules = scheme.rules.filter(
            (one) => one.fuels.includes(fuel) && one.fromModelYear <= year && year <= (one.toModelYear ?? 9999),
          );
          expect(rules.length).toBeLessThanOrEqual(1);
        }
      }
    }
  });
});
