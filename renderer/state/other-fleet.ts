// Going from one fleet to another: chosen in the system's dialog, the invented sample, or back from it. Nothing of the earlier fleet stays
// in the page, typed or shown.
import type { Desk } from '../../app/contract/views.ts';
import { ask, on } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';
import { sampleText } from '../text/sample.ts';
import { forgetAtTheDesk, takeDesk } from './desk-store.ts';
import { readLot } from './lot-store.ts';
import { notify } from './notice-store.ts';
import { createStore } from './store.ts';

/** The question before the sample is begun again, and afterwards where the old one lies; null: neither is open. */
export type BeginAgain =
  | { readonly state: 'asked' | 'working' }
  | { readonly state: 'done'; readonly putAside: string };
export const beginAgainStore = createStore<BeginAgain | null>(null);
/** The person has put the line about the sample away, for this run. */
export const sampleLineHiddenStore = createStore(false);

/** To be called once another fleet is open, whoever opened it. */
export function beginOnOtherFleet(desk: Desk): void {
  takeDesk(desk);
  forgetAtTheDesk();
  void readLot();
}

/** The person may also choose none, or the one that is open: only the program knows, and says so by the way. */
async function exchange(name: 'fleet:choose' | 'sample:open' | 'sample:leave', said: string | null): Promise<void> {
  let isAnother = false;
  const stop = on('lot:all-changed', () => {
    isAnother = true;
  });
  const answer = await ask(name, {});
  stop();
  if (!answer.ok) return notify('problem', errorSentence(answer.error));
  if (!isAnother) return takeDesk(answer.value);
  beginOnOtherFleet(answer.value);
  if (said !== null) notify('done', said);
}

export function chooseFleet(): Promise<void> {
  return exchange('fleet:choose', null);
}

export function openSample(): Promise<void> {
  return exchange('sample:open', sampleText.opened);
}

export function leaveSample(): Promise<void> {
  return exchange('sample:leave', null);
}

export function askToBeginAgain(): void {
  beginAgainStore.set({ state: 'asked' });
}

export async function beginSampleAgain(): Promise<void> {
  beginAgainStore.set({ state: 'working' });
  const answer = await ask('sample:begin-again', {});
  if (!answer.ok) {
    beginAgainStore.set(null);
    return notify('problem', errorSentence(answer.error));
  }
  const { desk, putAside } = answer.value;
  beginOnOtherFleet(desk);
  beginAgainStore.set({ state: 'done', putAside });
}

export async function showPutAside(): Promise<void> {
  const answer = await ask('sample:show-put-aside', {});
  if (!answer.ok) notify('problem', errorSentence(answer.error));
}
