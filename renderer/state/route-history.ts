// How often each route has worked in this shop for a kind of module: asked for anew whenever the vehicle at hand has changed.
import { useEffect, useState } from 'react';
import type { ModuleKind } from '../../app/domain/programming/module-kind.ts';
import type { RouteTally } from '../../app/domain/programming/route-history.ts';
import { ask } from '../bridge.ts';

/** Null while it is being read, and for a step of no module. */
export function useRouteHistory(kind: ModuleKind | null, revision: number): readonly RouteTally[] | null {
  const [known, setKnown] = useState<readonly RouteTally[] | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each revision may have added an attempt.
  useEffect(() => {
    let isCurrent = true;
    if (kind === null) {
      setKnown(null);
      return;
    }
    void ask('programming:routes', { moduleKind: kind }).then((answer) => {
      if (isCurrent) setKnown(answer.ok ? answer.value : []);
    });
    return () => {
      isCurrent = false;
    };
  }, [kind, revision]);
  return known;
}
