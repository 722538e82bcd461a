// The keys that work everywhere and the commands of the window's menu, which do the same. Keys of one screen are with that screen.
import { type RefObject, useEffect } from 'react';
import type { EventPayload } from '../../app/contract/events.ts';
import { on } from '../bridge.ts';
import { deskStore, lockedStore, redo, undo } from '../state/desk-store.ts';
import { holdKey } from '../state/held-key.ts';
import { askForSearch } from '../state/lot-store.ts';
import { notify } from '../state/notice-store.ts';
import { chooseFleet } from '../state/other-fleet.ts';
import { goTo, routeStore, screensInOrder } from '../state/route-store.ts';
import { lockNow } from '../state/sign-in-store.ts';
import { lotText } from '../text/lot.ts';

/** The dialogs about the program itself. */
export type Help = 'keys' | 'about' | 'report';

type Command = Exclude<EventPayload<'menu:chosen'>['command'], Help>;

function run(command: Command): void {
  // Nothing moves under the cover, or what is being typed there would be lost.
  if (lockedStore.read() !== null && command !== 'choose-fleet') return;
  switch (command) {
    case 'undo':
      void undo();
      return;
    case 'redo':
      void redo();
      return;
    case 'find':
      goTo({ screen: 'lot' });
      askForSearch();
      return;
    case 'take-in':
      if (deskStore.read()?.person.role === 'manager') goTo({ screen: 'take-in' });
      else notify('problem', lotText.onlyManagersTakeIn);
      return;
    case 'lock':
      void lockNow();
      return;
    case 'choose-fleet':
      void chooseFleet();
      return;
    case 'lot':
    case 'next-jobs':
    case 'waiting':
    case 'sheets':
    case 'setup':
    case 'money':
      goTo({ screen: command });
      return;
  }
}

const screenKeys: Readonly<Record<string, Command>> = Object.fromEntries(
  screensInOrder.map((screen, index) => [String(index + 1), screen]),
);

/** True in a place where a letter is text and where undo means the typing. */
export function isTextPlace(target: EventTarget | null): target is HTMLElement {
  if (target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement) return true;
  return target instanceof HTMLInputElement && !['checkbox', 'radio', 'button'].includes(target.type);
}

/** A sign by itself, as a scanner may send it for the first of a code. */
export function isSingleSign(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'altKey' | 'metaKey'>): boolean {
  return event.key.length === 1 && !event.ctrlKey && !event.altKey && !event.metaKey;
}

/** The command a key stands for, or null. Pure in all but the event. */
export function commandOfKey(event: KeyboardEvent): Command | Help | 'leave' | null {
  const isTyping = isTextPlace(event.target);
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  if (event.altKey && !event.ctrlKey && !event.metaKey) return screenKeys[key] ?? null;
  if (event.ctrlKey || event.metaKey) {
    if (key === 'f') return 'find';
    if (key === 'l') return 'lock';
    if (isTyping) return null;
    if (key === 'z') return event.shiftKey ? 'redo' : 'undo';
    return key === 'y' ? 'redo' : null;
  }
  if (key === 'F1') return event.shiftKey ? 'report' : 'about';
  // The menu has it too; the page takes it first, as it does F1, so that it works where the menu's keys do not reach.
  if (key === 'F9') return event.shiftKey ? 'redo' : 'undo';
  if (key === 'Escape') return 'leave';
  if (isTyping) return null;
  if (key === '/') return 'find';
  if (key === '?') return 'keys';
  return key === 'n' ? 'take-in' : null;
}

export function useCommands({
  showHelp,
  main,
}: {
  readonly showHelp: (help: Help) => void;
  readonly main: RefObject<HTMLElement | null>;
}): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing) return;
      const command = commandOfKey(event);
      if (command === null || lockedStore.read() !== null) return;
      event.preventDefault();
      const act = () => {
        if (command === 'keys' || command === 'about' || command === 'report') showHelp(command);
        else if (command !== 'leave') run(command);
        // Out of the field first, so that a slip of the finger does not take the person away from what is being written.
        else if (isTextPlace(event.target)) main.current?.focus();
        else if (routeStore.read().screen !== 'lot') goTo({ screen: 'lot' });
      };
      if (isSingleSign(event)) holdKey(act);
      else act();
    };
    window.addEventListener('keydown', onKeyDown);
    const stop = on('menu:chosen', ({ command }) => {
      if (command === 'about' || command === 'report') showHelp(command);
      else run(command);
    });
    return () => {
      window.removeEventListener('keydown', onKeyDown);
      stop();
    };
  }, [showHelp, main]);
}
