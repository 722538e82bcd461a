// What can be done now on all vehicles, read for the screen that shows it and kept up to date while it is shown.
import { useEffect, useState } from 'react';
import type { NextJobsView } from '../../app/contract/next-jobs-view.ts';
import { ask, on } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';

export type NextJobsState =
  | { readonly state: 'reading' }
  | { readonly state: 'failed'; readonly sentence: string }
  | { readonly state: 'here'; readonly view: NextJobsView };

/** Reads again when a vehicle, the settings, the day or the person at the desk changes. */
export function useNextJobs(isWanted: boolean): { readonly known: NextJobsState; readonly readAgain: () => void } {
  const [known, setKnown] = useState<NextJobsState>({ state: 'reading' });
  const [asked, setAsked] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asking again reads again.
  useEffect(() => {
    if (!isWanted) return;
    let latest = 0;
    let isShown = true;
    const read = async () => {
      latest += 1;
      const turn = latest;
      const answer = await ask('next-jobs:read', {});
      if (!isShown || turn !== latest) return;
      setKnown(
        answer.ok ? { state: 'here', view: answer.value } : { state: 'failed', sentence: errorSentence(answer.error) },
      );
    };
    void read();
    const stops = [on('lot:row-changed', () => void read()), on('lot:all-changed', () => void read())];
    return () => {
      isShown = false;
      for (const stop of stops) stop();
    };
  }, [isWanted, asked]);
  return { known, readAgain: () => setAsked((count) => count + 1) };
}
