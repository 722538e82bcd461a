// What signing in opens: the rules of access by role, by what the shop wants, and by whether somebody has signed in. Pure, no secrets.
import { z } from 'zod';
import type { Role } from '../fleet/shop.ts';

/** To be kept in the shop's settings. */
export const signInRulesSchema = z.strictObject({
  /** False: whoever sits at the desk works under the name that is picked. Codes always need signing in. */
  wantsSignIn: z.boolean(),
  /** Whether money is shown only after signing in, in a shop that wants none for the rest. */
  moneyNeedsSignIn: z.boolean(),
  /** Null: the desk is not locked after idle time. */
  idleMinutes: z.int().min(1).max(240).nullable(),
});
export type SignInRules = z.infer<typeof signInRulesSchema>;

export const startingSignInRules: SignInRules = { wantsSignIn: false, moneyNeedsSignIn: false, idleMinutes: 10 };

/** Codes are asked for again sooner than the rest, whatever the shop has set (common practice, no source). */
export const longestCodeIdleMinutes = 10;

export const accessPartSchema = z.enum(['work', 'money', 'codes']);
export type AccessPart = z.infer<typeof accessPartSchema>;

export type Access = {
  /** May see vehicles and do what the role does. False: nothing but the list of names to sign in with. */
  readonly mayWork: boolean;
  /** Purchase price, costs, margin. Never for a technician or for sales. */
  readonly seesMoney: boolean;
  /** May ask to see a code; whether for this vehicle is decided where it is asked. Never for sales. */
  readonly mayAskForCodes: boolean;
  /** What signing in under this role would add. */
  readonly signInAdds: readonly AccessPart[];
};

type Given = {
  readonly isSignedIn: boolean;
  readonly shopWantsSignIn: boolean;
  readonly moneyNeedsSignIn: boolean;
};

const partsOfRole: Readonly<Record<Role, readonly AccessPart[]>> = {
  manager: ['work', 'money', 'codes'],
  technician: ['work', 'codes'],
  sales: ['work'],
};

function isOpen(part: AccessPart, { isSignedIn, shopWantsSignIn, moneyNeedsSignIn }: Given): boolean {
  if (isSignedIn) return true;
  if (shopWantsSignIn || part === 'codes') return false;
  return part === 'work' || !moneyNeedsSignIn;
}

/** What the person at the desk may reach at all. Inside it the role's own rules hold. */
export function accessOf(role: Role, given: Given): Access {
  const parts = partsOfRole[role];
  const has = (part: AccessPart) => parts.includes(part) && isOpen(part, given);
  return {
    mayWork: has('work'),
    seesMoney: has('money'),
    mayAskForCodes: has('codes'),
    signInAdds: parts.filter((part) => !isOpen(part, given)),
  };
}

/** Clocks are corrected by a little now and then; a step back by more than this is taken for idle time. */
const clockSlackMilliseconds = 60_000;

/**
 * Whether the desk has been left alone for so long that it is locked. Instants are ISO 8601; `idleMinutes` null: never. A clock that was
 * set back locks too, or it could be used to stay signed in.
 */
export function isIdle(lastActedAt: string, now: string, idleMinutes: number | null): boolean {
  if (idleMinutes === null) return false;
  const gone = Date.parse(now) - Date.parse(lastActedAt);
  return gone >= idleMinutes * 60_000 || gone < -clockSlackMilliseconds;
}

/** The idle time after which codes are locked: the shop's, but never longer than ten minutes. */
export function codeIdleMinutes(rules: SignInRules): number {
  return Math.min(rules.idleMinutes ?? longestCodeIdleMinutes, longestCodeIdleMinutes);
}
