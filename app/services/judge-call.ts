// Whether a call may be answered at all: what it needs of signing in, and which roles may ask. What of the answer leaves is judged elsewhere.
import type { AppError } from '../contract/app-error.ts';
import { type ChannelName, channels } from '../contract/channels.ts';
import type { Role } from '../domain/fleet/shop.ts';
import { type AccessPart, accessPartSchema } from '../domain/people/sign-in.ts';
import type { DeskContext } from './desk-context.ts';

/** What must be open before a channel is answered; 'nothing': it is answered at the locked desk too. */
export type ChannelNeed = AccessPart | 'nothing';

const needs: Readonly<Partial<Record<string, ChannelNeed>>> = {
  // What the list of names needs, and the ways out of a desk that cannot be signed in to. None of them shows a record.
  'desk:read': 'nothing',
  'desk:set-theme': 'nothing',
  'people:sign-in': 'nothing',
  'people:wait': 'nothing',
  'people:lock': 'nothing',
  'people:active': 'nothing',
  'people:bring-back-keys': 'nothing',
  'fleet:choose': 'nothing',
  'fleet:take-over': 'nothing',
  // Of the manager alone, and without an amount in the answer.
  'vehicle:take-in': 'work',
  'vehicle:withdraw': 'work',
  'fleet:restore-trouble': 'work',
  'fleet:settle-trouble': 'work',
  'fleet:back-up': 'work',
  'sample:open': 'work',
  'sample:leave': 'work',
  'sample:show-put-aside': 'work',
  'people:give-secret': 'work',
  'people:take-secret': 'work',
  // These close the vault, or say whether something is kept in it and who looked.
  'vault:state': 'work',
  'vault:codes': 'work',
  'vault:lock': 'work',
  'vault:hide': 'work',
};

/** Unless the table says otherwise: what is the manager's alone is taken to tell of money, and the vault's of codes. */
export function needOf(name: ChannelName): ChannelNeed {
  const listed = needs[name];
  if (listed !== undefined) return listed;
  if (name.startsWith('vault:')) return 'codes';
  const { roles } = channels[name];
  return roles.length === 1 && roles[0] === 'manager' ? 'money' : 'work';
}

/** Every name the table lists, for the test that none of them is out of date. */
export const listedNeeds = Object.keys(needs);

export type AtTheDesk = {
  readonly role: Role;
  /** The shop wants signing in and nobody has. */
  readonly isLocked: boolean;
  readonly open: readonly AccessPart[];
  /** False: there is nothing this person could sign in with. */
  readonly hasSecret: boolean;
};

export function atTheDesk(context: DeskContext): AtTheDesk {
  const { id, role } = context.person();
  const { mayWork, seesMoney, mayAskForCodes } = context.access();
  const isOpen: Readonly<Record<AccessPart, boolean>> = { work: mayWork, money: seesMoney, codes: mayAskForCodes };
  return {
    role,
    isLocked: context.signIn.isLocked(),
    open: accessPartSchema.options.filter((part) => isOpen[part]),
    hasSecret: context.signIn.formOf(id) !== null,
  };
}

const sentences = {
  role: 'Whoever is at the desk may not do this. Change who is at the desk, or ask the manager.',
  work: 'Choose your name and enter your PIN or pass phrase.',
  money: 'Money is shown here only after signing in.',
  codes: 'Codes are shown only after signing in.',
} as const;

/** Why this call is not answered; null when it is. */
export function judgeCall(name: ChannelName, desk: AtTheDesk): Pick<AppError, 'code' | 'detail'> | null {
  const need = needOf(name);
  // Nobody is at a locked desk: there is no role to judge.
  if (need === 'nothing' && desk.isLocked) return null;
  if (desk.isLocked) return { code: 'sign-in', detail: sentences.work };
  if (!channels[name].roles.some((allowed) => allowed === desk.role))
    return { code: 'not-allowed', detail: sentences.role };
  if (need === 'nothing' || desk.open.includes(need)) return null;
  // The vault asks for a pass phrase of its own; whoever has no PIN is told apart by that one.
  if (need === 'codes' && !desk.hasSecret) return null;
  return { code: 'sign-in', detail: sentences[need] };
}
