// Tells the page something unasked. In development and tests the payload is held against the contract first.
import type { BrowserWindow } from 'electron';
import { type EventName, type EventPayload, events } from '../contract/events.ts';
import type { Log } from './log.ts';

export type SendEvent = <Name extends EventName>(name: Name, payload: EventPayload<Name>) => void;

export function eventSender(
  window: BrowserWindow,
  { checksOutput, log }: { readonly checksOutput: boolean; readonly log: Log },
): SendEvent {
  return (name, payload) => {
    if (window.isDestroyed()) return;
    const parsed = checksOutput ? events[name].safeParse(payload) : null;
    if (parsed?.error) {
      const { code, path } = parsed.error.issues[0] ?? {};
      log.error('event', `${name} is against the contract: ${path?.join('.')}=${code}`);
    }
    window.webContents.send(name, payload);
  };
}
