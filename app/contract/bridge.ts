// The type of the one object the page is given. Types only.
import type { Result } from '../domain/shared/result.ts';
import type { AppError } from './app-error.ts';
import type { ChannelInput, ChannelName, ChannelOutput } from './channels.ts';
import type { EventName, EventPayload } from './events.ts';

export type Bridge = {
  readonly ask: {
    readonly [Name in ChannelName]: (input: ChannelInput<Name>) => Promise<Result<ChannelOutput<Name>, AppError>>;
  };
  readonly on: {
    /** Calls `listener` for each event of this name until the returned function is called. */
    readonly [Name in EventName]: (listener: (payload: EventPayload<Name>) => void) => () => void;
  };
};
