// Starting a step: refused while it is blocked unless a named person says why, and the VIN is asked where nothing can be undone.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import { makeKeptPlan } from '../../../app/domain/programming/keep-plan.ts';
import type { KeptStep } from '../../../app/domain/programming/kept-plan.ts';
import type { StepReadiness } from '../../../app/domain/programming/plan-gates.ts';
import { checkOverride, mayStart, type StartRequest } from '../../../app/domain/programming/start-step.ts';
import { checkVinTail } from '../../../app/domain/programming/vin-tail.ts';

const vin = '1M8GDM9AXKP042788'; // Worked example of a public encyclopedia article on the VIN; its check digit holds.
const plan = makeKeptPlan(
  {
    modules: [{ id: 'body', kind: 'body', origin: 'new', name: 'Body module' }],
    pack: generalPack,
    makerOrder: null,
  },
  '2026-03-02',
);
function stepOf(id: string): KeptStep {
  const step = plan.steps.find((one) => one.id === id);
  if (!step) throw new Error(`No step ${id}`);
  return step;
}
const free: StepReadiness = { stepId: 'x', state: 'can-start', reasons: [], notes: [] };
function blockedBy(mayBeOverridden: boolean): StepReadiness {
  const reason = {
    kind: 'gate' as const,
    what: 'vins-compared',
    mayBeOverridden,
    sentence: 'The VINs have not been compared.',
  };
  return { stepId: 'x', state: 'blocked', reasons: [reason], notes: [] };
}
function start(more: Partial<StartRequest>) {
  return mayStart({
    step: stepOf('lead-off'),
    readiness: free,
    override: null,
    vinOnRecord: vin,
    vinTyped: '',
    ...more,
  });
}
const goodOverride = { by: 'Ida Brandt', reason: 'Old module is dead on every route.' };

describe('the last eight of the VIN', () => {
  it('hold when they are the vehicle’s, however they are typed', () => {
    for (const typed of ['KP042788', 'kp042788', ' KP 04-27 88 ', vin, vin.toLowerCase()])
      expect(checkVinTail(vin, typed).ok, typed).toBe(true);
  });

  it.each([
    ['', 'nothing-typed'],
    ['   ', 'nothing-typed'],
    ['042788', 'wrong-length'],
    ['XKP042788', 'wrong-length'],
    ['KP042789', 'does-not-match'],
    ['KPO42788', 'does-not-match'],
    ['1M8GDM9AXKP042789', 'does-not-match'],
  ])('refuse %j as %s', (typed, code) => {
    const checked = checkVinTail(vin, typed);
    expect(checked.ok ? '' : checked.error.code).toBe(code);
  });

  it('cannot be checked against a record without a VIN', () => {
    const checked = checkVinTail('', 'KP042788');
    expect(checked.ok ? '' : checked.error.code).toBe('no-vin-on-record');
    expect(checkVinTail('', '').ok).toBe(false);
  });

  it('say that O is never used, and never show what was expected', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 20 }), (typed) => {
        const checked = checkVinTail(vin, typed);
        if (!checked.ok) expect(checked.error.sentence).not.toContain('KP042788');
      }),
    );
    const withO = checkVinTail(vin, 'KPO42788');
    expect(withO.ok ? '' : withO.error.sentence).toContain('never contains the letters I, O or Q');
  });

  it('hold with no single character changed', () => {
    for (let at = 0; at < 8; at++)
      for (const character of 'ABCDEFGHJKLMNPRSTUVWXYZ0123456789') {
        const typed = `${'KP042788'.slice(0, at)}${character}${'KP042788'.slice(at + 1)}`;
        expect(checkVinTail(vin, typed).ok, typed).toBe(typed === 'KP042788');
      }
  });
});

describe('an override', () => {
  it.each([
    [{ by: '', reason: 'Old module is dead on every route.' }, 'override-unnamed'],
    [{ by: '  ', reason: 'Old module is dead on every route.' }, 'override-unnamed'],
    [{ by: 'Ida Brandt', reason: '' }, 'override-without-reason'],
    [{ by: 'Ida Brandt', reason: 'ok' }, 'override-without-reason'],
    [{ by: 'Ida Brandt', reason: '            ' }, 'override-without-reason'],
    [{ by: 'Ida Brandt', reason: '............' }, 'override-without-reason'],
  ])('%j is refused as %s', (override, code) => {
    const checked = checkOverride(override);
    expect(checked.ok ? '' : checked.error.code).toBe(code);
    const started = start({ readiness: blockedBy(true), override });
    expect(started.ok ? '' : started.error.code).toBe(code);
  });

  it('with a name and a reason goes past a block, and is given back to be recorded', () => {
    expect(start({ readiness: blockedBy(true), override: goodOverride })).toEqual({ ok: true, value: goodOverride });
  });

  it('goes past nothing that could injure somebody or break the law', () => {
    const refused = start({ readiness: blockedBy(false), override: goodOverride });
    expect(refused.ok ? '' : refused.error.code).toBe('never-overridden');
  });

  it('is not recorded where none was needed', () => {
    expect(start({ override: goodOverride })).toEqual({ ok: true, value: null });
  });
});

describe('starting a step', () => {
  it('is refused while it is blocked, with what is missing', () => {
    const refused = start({ readiness: blockedBy(true) });
    expect(refused.ok ? '' : refused.error).toEqual({ code: 'blocked', sentence: 'The VINs have not been compared.' });
  });

  it('asks for the VIN where the step cannot be undone, and only there', () => {
    expect(start({ step: stepOf('lead-off') }).ok).toBe(true);
    const refused = start({ step: stepOf('write-vin--body') });
    expect(refused.ok ? '' : refused.error.code).toBe('vin');
    expect(start({ step: stepOf('write-vin--body'), vinTyped: 'KP042788' }).ok).toBe(true);
  });

  it('is refused on a VIN that does not match, override or not', () => {
    const step = stepOf('write-vin--body');
    for (const readiness of [free, blockedBy(true)]) {
      const refused = start({ step, readiness, override: goodOverride, vinTyped: 'KP042789' });
      expect(refused.ok ? '' : refused.error.code).toBe('vin');
    }
  });

  it('is refused when the step is done or was left out', () => {
    const done = start({ readiness: { ...free, state: 'done' } });
    const leftOut = start({ readiness: { ...free, state: 'left-out' } });
    expect([done, leftOut].map((one) => (one.ok ? '' : one.error.code))).toEqual(['already-done', 'left-out']);
  });
});
