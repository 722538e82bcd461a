// Something that the program works out over the whole fleet, read for the screen that shows it and kept up to date while it is shown.
import { useEffect, useState } from 'react';
import type { ChannelOutput } from '../../app/contract/channels.ts';
import { ask, on } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';

type Readable = 'next-jobs:read' | 'waiting:read';

export type Reading<View> =
  | { readonly state: 'reading' }
  | { readonly state: 'failed'; readonly sentence: string }
  | { readonly state: 'here'; readonly view: View };

/** Reads again when a vehicle, the settings, the day or the person at the desk changes. */
export function useReading<Name extends Readable>(
  name: Name,
  isWanted: boolean,
): { readonly known: Reading<ChannelOutput<Name>>; readonly readAgain: () => void } {
  const [known, setKnown] = useState<Reading<ChannelOutput<Name>>>({ state: 'reading' });
  const [asked, setAsked] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asking again reads again.
  useEffect(() => {
    if (!isWanted) return;
    let latest = 0;
    let isShown = true;
    const read = async () => {
      latest += 1;
      const turn = latest;
      const answer = await ask<Readable>(name, {});
      if (!isShown || turn !== latest) return;
      setKnown(
        answer.ok
          ? // Every channel of the list answers with its own view.
            { state: 'here', view: answer.value as ChannelOutput<Name> }
          : { state: 'failed', sentence: errorSentence(answer.error) },
      );
    };
    void read();
    const stops = [on('lot:row-changed', () => void read()), on('lot:all-changed', () => void read())];
    return () => {
      isShown = false;
      for (const stop of stops) stop();
    };
  }, [name, isWanted, asked]);
  return { known, readAgain: () => setAsked((count) => count + 1) };
}
