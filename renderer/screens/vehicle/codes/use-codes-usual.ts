// How long the open codes of the vehicle usually take and when to chase them, asked of the program and asked again with each change.
import { useEffect, useState } from 'react';
import type { CodeUsual } from '../../../../app/contract/codes-usual-view.ts';
import { ask } from '../../../bridge.ts';

/** By request; empty until it is known, and where it cannot be read: then nothing is said rather than something wrong. */
export function useCodesUsual(id: string, revision: number, isWanted: boolean): ReadonlyMap<string, CodeUsual> {
  const [known, setKnown] = useState<ReadonlyMap<string, CodeUsual>>(new Map());
  // biome-ignore lint/correctness/useExhaustiveDependencies: another revision of the record may have other answers.
  useEffect(() => {
    if (!isWanted) return;
    let isShown = true;
    void ask('codes:usual', { id }).then((answer) => {
      if (isShown && answer.ok) setKnown(new Map(answer.value.map((usual) => [usual.requestId, usual])));
    });
    return () => {
      isShown = false;
    };
  }, [id, revision, isWanted]);
  return known;
}
