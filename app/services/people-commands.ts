// Signing in, locking, and who has a PIN or pass phrase. The secrets pass through to the store; none is kept, told or logged here.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import type { Shop } from '../domain/fleet/shop.ts';
import { ok } from '../domain/shared/result.ts';
import type { SignInProblem } from '../storage/vault/sign-in-store.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';

const words = {
  signInFirst:
    'A manager has a PIN or pass phrase, so who may work here is decided only by a manager who has signed in. Sign in first.',
  lastManager:
    'This is the only manager with a PIN or pass phrase, and signing in is wanted: without it nobody could get in. Give another manager one first, or switch off signing in.',
  noManager: 'Give a manager a PIN or pass phrase first, or nobody could get in.',
  readingOnly:
    'The fleet is open here for reading only, so a try could not be counted and none is taken. Sign in at the desk that has the fleet open, or open it for writing here once nobody works there.',
  nobody: 'There is nobody of this name to sign in. Choose from the list again.',
} as const;

function refuseSecret(field: string, problem: SignInProblem) {
  if (problem.storage?.code === 'read-only') return refuse('refused', '', [{ field, sentence: words.readingOnly }]);
  if (problem.code === 'storage' && problem.storage !== null) return refuseStorage(problem.storage);
  return refuse('refused', '', [{ field, sentence: problem.sentence }]);
}

function personOf(context: DeskContext, personId: string) {
  return context.shop().people.find(({ id, isActive }) => id === personId && isActive) ?? null;
}

function wants({ signIn }: Shop): boolean {
  return signIn.wantsSignIn || signIn.moneyNeedsSignIn;
}

/** Once a manager can be told apart from others, whoever was only picked from the list is not taken for one. */
function isProvenManager(context: DeskContext): boolean {
  return !context.signIn.managerHasSecret() || context.signedIn() !== null;
}

export async function signIn(
  context: DeskContext,
  { personId, secret }: ChannelInput<'people:sign-in'>,
): Answer<ChannelOutput<'people:sign-in'>> {
  if (!personOf(context, personId)) return refuse('refused', '', [{ field: 'secret', sentence: words.nobody }]);
  const before = context.person().id;
  const tried = await context.signIn.signIn(personId, secret);
  if (!tried.ok) {
    // The list of names says what is wrong with the file of keys.
    if (tried.error.code === 'damaged-keys') context.deps.emit('desk:changed', context.desk());
    return refuseSecret('secret', tried.error);
  }
  // What one person did is not for the next one to take back unseen.
  if (before !== personId) context.undo.clear();
  context.deps.deskSettings.change({ personId });
  // In this order: the page drops what the other person left before it reads anew.
  context.deps.emit('desk:changed', context.desk());
  context.deps.emit('lot:all-changed', {});
  return ok(context.desk());
}

export async function readWait(
  context: DeskContext,
  { personId }: ChannelInput<'people:wait'>,
): Answer<ChannelOutput<'people:wait'>> {
  const wait = await context.signIn.waitFor(personId);
  // A file that cannot be read is told of with the desk; there is nothing to wait for.
  return ok({ waitMilliseconds: wait.ok ? wait.value : 0 });
}

export async function lockDesk(context: DeskContext): Answer<ChannelOutput<'people:lock'>> {
  context.signIn.lock('asked');
  return ok(context.desk());
}

export async function noteActivity(): Answer<ChannelOutput<'people:active'>> {
  return ok({});
}

export async function changeSecret(
  context: DeskContext,
  { oldSecret, newSecret }: ChannelInput<'people:change-secret'>,
): Answer<ChannelOutput<'people:change-secret'>> {
  const changed = await context.signIn.changeSecret(context.person().id, oldSecret, newSecret);
  if (changed.ok) return ok(context.desk());
  return refuseSecret(changed.error.code === 'weak' ? 'newSecret' : 'oldSecret', changed.error);
}

export async function giveSecret(
  context: DeskContext,
  { personId, secret }: ChannelInput<'people:give-secret'>,
): Answer<ChannelOutput<'people:give-secret'>> {
  if (!isProvenManager(context)) return refuse('sign-in', words.signInFirst);
  if (!personOf(context, personId)) return refuse('not-found');
  const given = await context.signIn.giveSecret(personId, secret);
  return given.ok ? ok(context.desk()) : refuseSecret('secret', given.error);
}

export async function takeSecret(
  context: DeskContext,
  { personId }: ChannelInput<'people:take-secret'>,
): Answer<ChannelOutput<'people:take-secret'>> {
  if (!isProvenManager(context)) return refuse('sign-in', words.signInFirst);
  const others = context.shop().people.filter(({ id }) => id !== personId);
  if (wants(context.shop()) && !context.signIn.managerHasSecret(others)) return refuse('refused', words.lastManager);
  const taken = await context.signIn.takeSecret(personId);
  return taken.ok ? ok(context.desk()) : refuse('refused', taken.error.sentence);
}

export async function bringBackKeys(context: DeskContext): Answer<ChannelOutput<'people:bring-back-keys'>> {
  const back = await context.signIn.bringBackKeys(context.store);
  if (!back.ok) return refuse('refused', back.error);
  context.deps.emit('desk:changed', context.desk());
  return ok(context.desk());
}

/** What stands against settings that decide who works here, as far as signing in is concerned; null: nothing. */
export function signInRefusal(context: DeskContext, part: keyof Shop, after: Shop) {
  if (part !== 'people' && part !== 'signIn') return null;
  if (!isProvenManager(context)) return refuse('sign-in', words.signInFirst);
  if (!wants(after) || context.signIn.managerHasSecret(after.people)) return null;
  const field = part === 'people' ? 'people' : 'signIn.wantsSignIn';
  return refuse('refused', '', [{ field, sentence: part === 'people' ? words.lastManager : words.noManager }]);
}

/** Whoever has left or was switched off has nothing to sign in with any more. */
export async function dropKeysOfGone(context: DeskContext): Promise<void> {
  const present = new Set(context.shop().people.flatMap(({ id, isActive }) => (isActive ? [id] : [])));
  for (const personId of context.signIn.peopleWithSecret()) {
    if (!present.has(personId)) await context.signIn.takeSecret(personId);
  }
}
