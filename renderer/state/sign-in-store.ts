// Locking and signing in, as the page has to know it: the cover over a locked desk, the dialog for switching, and signs of life for the
// main process, which decides. A secret passes through here and stays nowhere.
import type { AppError } from '../../app/contract/app-error.ts';
import type { Desk } from '../../app/contract/views.ts';
import type { Result } from '../../app/domain/shared/result.ts';
import { ask } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';
import { signInText } from '../text/sign-in.ts';
import { deskStore, lockedStore, takeDesk } from './desk-store.ts';
import { notify } from './notice-store.ts';
import { createStore } from './store.ts';

/** True while the dialog for picking a name is open. */
export const signInAskedStore = createStore(false);

/** Opens the dialog in which a name is picked and a secret typed. */
export function askToSignIn(): void {
  signInAskedStore.set(true);
}

/** The sentence that stands against it; null when the person has signed in. */
export async function signIn(personId: string, secret: string): Promise<string | null> {
  const answer = await ask('people:sign-in', { personId, secret });
  if (!answer.ok) return answer.error.problems[0]?.sentence ?? errorSentence(answer.error);
  takeDesk(answer.value);
  signInAskedStore.set(false);
  return null;
}

/** Milliseconds until this person may try again. */
export async function waitOf(personId: string): Promise<number> {
  const answer = await ask('people:wait', { personId });
  return answer.ok ? answer.value.waitMilliseconds : 0;
}

export async function lockNow(): Promise<void> {
  const signIn = deskStore.read()?.signIn;
  if (lockedStore.read() !== null || signIn === undefined) return;
  if (!signIn.wantsSignIn && signIn.signedInId === null) {
    notify('done', signInText.nothingToLock);
    return;
  }
  const answer = await ask('people:lock', {});
  if (answer.ok) takeDesk(answer.value);
  else notify('problem', errorSentence(answer.error));
}

export async function bringBackKeys(): Promise<string | null> {
  const answer = await ask('people:bring-back-keys', {});
  if (!answer.ok) return answer.error.detail || errorSentence(answer.error);
  takeDesk(answer.value);
  return null;
}

/** Field → sentence for what stands against a secret that is given or changed; null when it is kept. */
export type SecretProblems = Readonly<Record<string, string>> | null;

function keep(answer: Result<Desk, AppError>): SecretProblems {
  if (answer.ok) {
    takeDesk(answer.value);
    return null;
  }
  const { problems } = answer.error;
  if (problems.length === 0) return { secret: errorSentence(answer.error) };
  return Object.fromEntries(problems.map(({ field, sentence }) => [field, sentence]));
}

export async function giveSecret(personId: string, secret: string): Promise<SecretProblems> {
  return keep(await ask('people:give-secret', { personId, secret }));
}

export async function changeSecret(oldSecret: string, newSecret: string): Promise<SecretProblems> {
  return keep(await ask('people:change-secret', { oldSecret, newSecret }));
}

/** True when it was taken away; otherwise a notice says why not. */
export async function takeSecret(personId: string): Promise<boolean> {
  const answer = await ask('people:take-secret', { personId });
  if (answer.ok) takeDesk(answer.value);
  else notify('problem', answer.error.detail || errorSentence(answer.error));
  return answer.ok;
}

const signsOfLife = ['keydown', 'pointerdown', 'pointermove', 'wheel'] as const;
/** More often than this the main process need not be told. */
const quietMs = 20_000;

/** Tells the main process now and then that somebody is there, as long as being there counts. */
export function watchActivity(): () => void {
  let toldAt = Number.NEGATIVE_INFINITY;
  const note = (event: Event) => {
    if (!event.isTrusted || event.timeStamp - toldAt < quietMs) return;
    if (lockedStore.read() !== null || (deskStore.read()?.signIn.signedInId ?? null) === null) return;
    toldAt = event.timeStamp;
    void ask('people:active', {});
  };
  for (const name of signsOfLife) window.addEventListener(name, note, { capture: true, passive: true });
  return () => {
    for (const name of signsOfLife) window.removeEventListener(name, note, { capture: true });
  };
}
