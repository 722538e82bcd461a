// How long a person has to wait after wrong tries, counted down second by second from what the main process says.
import { useEffect, useState } from 'react';
import { waitOf } from '../../state/sign-in-store.ts';

/** Milliseconds left for this person; `ask` again after a try. */
export function useWait(personId: string | null): { readonly left: number; readonly askAgain: () => Promise<void> } {
  const [wait, setWait] = useState({ personId, left: 0 });
  const askAgain = async () => {
    if (personId !== null) setWait({ personId, left: await waitOf(personId) });
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked for each name that is picked.
  useEffect(() => void askAgain(), [personId]);
  const left = wait.personId === personId ? wait.left : 0;
  useEffect(() => {
    if (left <= 0) return;
    const timer = setTimeout(() => setWait({ personId, left: Math.max(0, left - 1000) }), Math.min(left, 1000));
    return () => clearTimeout(timer);
  }, [left, personId]);
  return { left, askAgain };
}
