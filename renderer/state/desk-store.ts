// The desk: who is at it, which fleet is open, what can be undone, when it was saved last. Follows 'desk:changed'.
import type { ChannelInput } from '../../app/contract/channels.ts';
import type { Desk } from '../../app/contract/views.ts';
import { ask, on } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';
import { frameText } from '../text/frame.ts';
import { dayFormStore } from './day-form-store.ts';
import { notify } from './notice-store.ts';
import { goTo } from './route-store.ts';
import { createStore, forgetStores, useStore } from './store.ts';

/** Null until the first answer. */
export const deskStore = createStore<Desk | null>(null);
/** The desk while it is locked, with the list of names; null while it is open. */
export const lockedStore = createStore<Desk | null>(null);
/** How often somebody else has signed in or out, or another fleet was opened: what was drawn for the one is not drawn on for the next. */
export const handOversStore = createStore(0);
/** The instant of the last save that this window knows of; null before one. */
export const savedAtStore = createStore<string | null>(null);
/** Why the desk could not be read; null when it could. */
export const deskTroubleStore = createStore<string | null>(null);

/**
 * Every desk that comes from the main process. What a locked one covers stays as it was, with what was being typed, until the same person
 * is back; when somebody else signs in or out, all that the page holds is dropped.
 */
function receive(desk: Desk): void {
  const before = deskStore.read();
  const isLocked = desk.signIn.isLocked;
  if (!isLocked && before !== null && isSomebodyElse(before, desk)) {
    forgetAtTheDesk();
  }
  // A locked desk tells nothing of the shop: what lies below the cover stays as it was.
  if (desk.shop !== null) dayFormStore.set(desk.shop.dealer.dayForm);
  if (!isLocked || before === null) deskStore.set(desk);
  lockedStore.set(isLocked ? desk : null);
}

/** Drops all that the page holds but the desk itself and how days are written, and draws anew: another person, or another fleet. */
export function forgetAtTheDesk(): void {
  forgetStores([deskStore, lockedStore, deskTroubleStore, handOversStore, dayFormStore]);
  handOversStore.update((count) => count + 1);
}

function isSomebodyElse(before: Desk, after: Desk): boolean {
  const isBySecret = before.signIn.signedInId !== null || after.signIn.signedInId !== null;
  // Where money waits for signing in, whoever goes on without may be anybody.
  return isBySecret && (before.person.id !== after.person.id || (before.seesMoney && !after.seesMoney));
}

/** Takes the desk that came with an answer, and the instant of the save where the answer was one. */
export function takeDesk(desk: Desk, savedAt?: string): void {
  receive(desk);
  if (savedAt !== undefined) savedAtStore.set(savedAt);
}

/** The desk, inside the frame, which draws no screen before there is one. */
export function useDesk(): Desk {
  const desk = useStore(deskStore);
  if (desk === null) throw new Error('No screen may be drawn before the desk is read.');
  return desk;
}

export async function readDesk(): Promise<void> {
  const answer = await ask('desk:read', {});
  if (answer.ok) receive(answer.value);
  deskTroubleStore.set(answer.ok ? null : errorSentence(answer.error));
}

/** Keeps the desk up to date from now on. */
export function followDesk(): () => void {
  return on('desk:changed', receive);
}

type DeskChannel =
  | 'desk:set-person'
  | 'desk:set-theme'
  | 'fleet:restore-trouble'
  | 'fleet:settle-trouble'
  | 'fleet:take-over'
  | 'fleet:back-up';

/** Asks for something that gives back the desk; says in a notice what stands against it. True when it was done. */
export async function askDesk<Name extends DeskChannel>(name: Name, input: ChannelInput<Name>): Promise<boolean> {
  const answer = await ask<DeskChannel>(name, input);
  if (answer.ok) receive(answer.value);
  else notify('problem', errorSentence(answer.error));
  return answer.ok;
}

async function step(name: 'edit:undo' | 'edit:redo'): Promise<void> {
  const desk = deskStore.read();
  const what = name === 'edit:undo' ? desk?.undo : desk?.redo;
  if (what === null || what === undefined) return;
  const answer = await ask(name, {});
  if (!answer.ok) {
    notify('problem', errorSentence(answer.error));
    return;
  }
  const { vehicleId } = answer.value;
  takeDesk(answer.value.desk, new Date().toISOString());
  notify('done', name === 'edit:undo' ? frameText.undone(what) : frameText.redone(what), {
    label: frameText.showVehicle,
    onPress: () => goTo({ screen: 'vehicle', id: vehicleId }),
  });
}

export function undo(): Promise<void> {
  return step('edit:undo');
}

export function redo(): Promise<void> {
  return step('edit:redo');
}
