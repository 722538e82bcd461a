// What signing in opens, for every role and every wish of the shop; when the desk locks itself.
import { describe, expect, it } from 'vitest';
import { roleSchema } from '../../../app/domain/fleet/shop.ts';
import {
  accessOf,
  codeIdleMinutes,
  isIdle,
  signInRulesSchema,
  startingSignInRules,
} from '../../../app/domain/people/sign-in.ts';

/** role, signed in, shop wants sign-in, money needs it → work, money, codes */
const table: readonly (readonly [string, boolean, boolean, boolean, boolean, boolean, boolean])[] = [
  ['manager', true, true, true, true, true, true],
  ['manager', true, true, false, true, true, true],
  ['manager', true, false, true, true, true, true],
  ['manager', true, false, false, true, true, true],
  ['manager', false, true, true, false, false, false],
  ['manager', false, true, false, false, false, false],
  ['manager', false, false, true, true, false, false],
  ['manager', false, false, false, true, true, false],
  ['technician', true, true, true, true, false, true],
  ['technician', true, true, false, true, false, true],
  ['technician', true, false, true, true, false, true],
  ['technician', true, false, false, true, false, true],
  ['technician', false, true, true, false, false, false],
  ['technician', false, true, false, false, false, false],
  ['technician', false, false, true, true, false, false],
  ['technician', false, false, false, true, false, false],
  ['sales', true, true, true, true, false, false],
  ['sales', true, true, false, true, false, false],
  ['sales', true, false, true, true, false, false],
  ['sales', true, false, false, true, false, false],
  ['sales', false, true, true, false, false, false],
  ['sales', false, true, false, false, false, false],
  ['sales', false, false, true, true, false, false],
  ['sales', false, false, false, true, false, false],
];

describe('access', () => {
  it.each(table)(
    'of %s, signed in %s, shop wants it %s, money needs it %s: work %s, money %s, codes %s',
    (role, isSignedIn, shopWantsSignIn, moneyNeedsSignIn, mayWork, seesMoney, mayAskForCodes) => {
      const access = accessOf(roleSchema.parse(role), { isSignedIn, shopWantsSignIn, moneyNeedsSignIn });
      expect(access).toMatchObject({ mayWork, seesMoney, mayAskForCodes });
    },
  );

  it('is spelled out for every role and every wish', () => {
    const rows = new Set(table.map((row) => row.slice(0, 4).join()));
    expect(rows.size).toBe(roleSchema.options.length * 8);
  });

  it('says what signing in would add, and nothing once signed in', () => {
    const open = { isSignedIn: false, shopWantsSignIn: false, moneyNeedsSignIn: true };
    expect(accessOf('manager', open).signInAdds).toEqual(['money', 'codes']);
    expect(accessOf('manager', { ...open, moneyNeedsSignIn: false }).signInAdds).toEqual(['codes']);
    expect(accessOf('sales', open).signInAdds).toEqual([]);
    expect(accessOf('technician', { ...open, shopWantsSignIn: true }).signInAdds).toEqual(['work', 'codes']);
    expect(accessOf('manager', { ...open, isSignedIn: true }).signInAdds).toEqual([]);
  });
});

describe('idle time', () => {
  const at = '2026-03-04T10:00:00.000Z';

  it('locks after the minutes that the shop has set, and not before', () => {
    expect(isIdle(at, '2026-03-04T10:09:59.999Z', 10)).toBe(false);
    expect(isIdle(at, '2026-03-04T10:10:00.000Z', 10)).toBe(true);
    expect(isIdle(at, '2027-03-04T10:10:00.000Z', null)).toBe(false);
  });

  it('is not got round by setting the clock back, but a small correction does no harm', () => {
    expect(isIdle(at, '2026-03-04T09:59:30.000Z', 10)).toBe(false);
    expect(isIdle(at, '2026-03-04T09:00:00.000Z', 10)).toBe(true);
  });

  it('locks codes after ten minutes at the latest', () => {
    expect(signInRulesSchema.safeParse(startingSignInRules).success).toBe(true);
    expect(codeIdleMinutes({ ...startingSignInRules, idleMinutes: null })).toBe(10);
    expect(codeIdleMinutes({ ...startingSignInRules, idleMinutes: 60 })).toBe(10);
    expect(codeIdleMinutes({ ...startingSignInRules, idleMinutes: 3 })).toBe(3);
  });
});
