// Usual forms of codes and serials: warns, can be kept, never repeats the code; a code of one kind entered for another is caught.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkCodeForm,
  checkSerialForm,
  codeWarnings,
  looksLikeOtherKind,
  missingFromRequest,
  openWarnings,
} from '../../../app/domain/codes/code-form.ts';
import { type CodeKindFacts, codeKindsSchema, shippedCodeKinds } from '../../../app/domain/codes/code-kinds.ts';

function kindOf(id: string): CodeKindFacts {
  const kind = shippedCodeKinds.find((candidate) => candidate.id === id);
  if (!kind) throw new Error(`no kind ${id}`);
  return kind;
}
const immobiliser = kindOf('immobiliser');
const radio = kindOf('radio');

describe('the shipped kinds', () => {
  it('hold by the schema, are the five of the trade, and say where they come from', () => {
    expect(codeKindsSchema.safeParse(shippedCodeKinds).success).toBe(true);
    expect(shippedCodeKinds.map((kind) => kind.id).sort()).toEqual([
      'gateway',
      'immobiliser',
      'mechanical-key',
      'other',
      'radio',
    ]);
    expect(shippedCodeKinds.every((kind) => kind.source === 'common practice, no source')).toBe(true);
  });

  it('refuse two kinds of the same identity', () => {
    expect(codeKindsSchema.safeParse([radio, { ...immobiliser, id: 'radio' }]).success).toBe(false);
  });

  it('ask for the serial of a radio, not of the vehicle', () => {
    const facts = { vin: '100AB54C450110341', deviceSerial: '', module: '', reason: '' };
    expect(missingFromRequest(radio, facts).map((problem) => problem.field)).toEqual(['deviceSerial']);
    expect(missingFromRequest(immobiliser, facts)).toEqual([]);
    expect(missingFromRequest(immobiliser, { ...facts, vin: ' ' }).map((problem) => problem.field)).toEqual(['vin']);
  });
});

describe('a code', () => {
  it.each([
    [immobiliser, '30417'],
    [immobiliser, ' 304 17 '],
    [radio, '3041'],
    [radio, '30-41'],
    [kindOf('mechanical-key'), 'anything at all'],
    [kindOf('other'), '1'],
  ])('of its usual form is not remarked on', (kind, value) => {
    expect(codeWarnings(kind, value, shippedCodeKinds)).toEqual([]);
  });

  it.each([
    [immobiliser, '304170', 'code-form'],
    [immobiliser, '3041A', 'code-form'],
    [immobiliser, '', 'code-form'],
    [immobiliser, '3041', 'code-of-other-kind'],
    [radio, '30417', 'code-of-other-kind'],
    [radio, 'T12345678ABCDE', 'code-is-serial'],
    [radio, 'A2C45678901234', 'code-is-serial'],
  ])('of another form is remarked on', (kind, value, key) => {
    const warnings = codeWarnings(kind, value, shippedCodeKinds);
    expect(warnings.map((warning) => warning.key)).toEqual([key]);
    expect(warnings[0]?.sentence).toMatch(/keep it with a reason\.$/);
  });

  it('of the radio entered for the immobiliser is named as such, and the other way round', () => {
    expect(looksLikeOtherKind(immobiliser, '3041', shippedCodeKinds)?.id).toBe('radio');
    expect(looksLikeOtherKind(radio, '30417', shippedCodeKinds)?.id).toBe('immobiliser');
    expect(looksLikeOtherKind(radio, '3041', shippedCodeKinds)).toBeNull();
    expect(looksLikeOtherKind(radio, '304170', shippedCodeKinds)).toBeNull();
  });

  it('is not taken for a kind that the shop has switched off', () => {
    const kinds = shippedCodeKinds.map((kind) => (kind.id === 'radio' ? { ...kind, isActive: false } : kind));
    expect(looksLikeOtherKind(immobiliser, '3041', kinds)).toBeNull();
    expect(checkCodeForm(immobiliser, '3041').map((warning) => warning.key)).toEqual(['code-form']);
  });

  it('is judged by the kinds that the shop has added', () => {
    const alarm: CodeKindFacts = {
      ...radio,
      id: 'alarm',
      name: 'Alarm code',
      codeForm: { characters: 'letters-and-digits', lengths: [6, 8] },
      serialForms: [],
    };
    expect(checkCodeForm(alarm, 'ab12cd')).toEqual([]);
    expect(checkCodeForm(alarm, 'ab12cd3')[0]?.sentence).toContain('6 or 8 letters and digits');
    expect(looksLikeOtherKind(radio, 'AB12CD', [...shippedCodeKinds, alarm])?.id).toBe('alarm');
  });

  it('is never repeated by a sentence', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[A-Z0-9]{3,24}$/), fc.constantFrom(...shippedCodeKinds), (value, kind) => {
        for (const { sentence } of codeWarnings(kind, value, shippedCodeKinds)) {
          // Words of the sentence itself do not count: 'VIN', or the usual beginning of a serial.
          const own = codeWarnings(kind, 'x', shippedCodeKinds)
            .map((warning) => warning.sentence)
            .join(' ');
          if (!own.includes(value)) expect(sentence).not.toContain(value);
        }
      }),
    );
  });

  it('is no more remarked on once a reason for it has been kept', () => {
    const warnings = codeWarnings(radio, '30417', shippedCodeKinds);
    expect(
      openWarnings(warnings, [{ key: 'code-of-other-kind', reason: 'Five digits on this set, seen on its label' }]),
    ).toEqual([]);
    expect(openWarnings(warnings, [{ key: 'code-of-other-kind', reason: '  ' }])).toEqual(warnings);
    expect(openWarnings(warnings, [{ key: 'code-form', reason: 'other' }])).toEqual(warnings);
  });
});

describe('the serial of a radio', () => {
  it.each([
    ['T1234567890ABC', 2012],
    ['t123 4567 890abc', 2009],
    ['A2C12345678901', 2013],
    ['A2C12345678901', 2021],
    ['T1234567890ABC', null],
    ['A2C12345678901', null],
    ['', 2015],
  ])('%s is usual for model year %s', (serial, modelYear) => {
    expect(checkSerialForm(radio, serial, modelYear)).toEqual([]);
  });

  it.each([
    ['T1234567890ABC', 2013, 'beginning with A2C'],
    ['A2C12345678901', 2012, 'beginning with T'],
    ['T1234567890AB', 2010, '14 letters and digits'],
    ['X1234567890ABC', null, 'beginning with T or 14 letters and digits beginning with A2C'],
  ])('%s is unusual for model year %s', (serial, modelYear, expected) => {
    const [warning] = checkSerialForm(radio, serial, modelYear);
    expect(warning?.key).toBe('serial-form');
    expect(warning?.sentence).toContain(expected);
  });

  it('is told from a VIN', () => {
    expect(checkSerialForm(radio, '100AB54C450110341', 2015)[0]?.key).toBe('serial-is-vin');
  });

  it('of a kind of which nothing is known is not judged', () => {
    expect(checkSerialForm(immobiliser, 'whatever', 2015)).toEqual([]);
  });
});
