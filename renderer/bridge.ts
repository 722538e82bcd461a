// The only file of the page that touches the object the preload exposes. Asks and listens; knows nothing of screens.
import type { AppError } from '../app/contract/app-error.ts';
import type { Bridge } from '../app/contract/bridge.ts';
import type { ChannelInput, ChannelName, ChannelOutput } from '../app/contract/channels.ts';
import type { EventName, EventPayload } from '../app/contract/events.ts';
import type { Result } from '../app/domain/shared/result.ts';

declare global {
  interface Window {
    readonly lotwright: Bridge;
  }
}

/** Asks the main process. Never rejects: what went wrong comes back as an error of the closed list. */
export async function ask<Name extends ChannelName>(
  name: Name,
  input: ChannelInput<Name>,
): Promise<Result<ChannelOutput<Name>, AppError>> {
  try {
    return await window.lotwright.ask[name](input);
  } catch {
    return { ok: false, error: { code: 'unexpected', detail: '', problems: [] } };
  }
}

/** Listens for an event of the main process until the returned function is called. */
export function on<Name extends EventName>(name: Name, listener: (payload: EventPayload<Name>) => void): () => void {
  return window.lotwright.on[name](listener);
}
