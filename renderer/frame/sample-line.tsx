// The quiet line over the lot while the invented sample is open: that it is invented, and the two ways on. For the manager, who may go them.
import type { Desk } from '../../app/contract/views.ts';
import { sampleLineHiddenStore } from '../state/other-fleet.ts';
import type { Route } from '../state/route-store.ts';
import { useStore } from '../state/store.ts';
import { sampleText as text } from '../text/sample.ts';
import { Button } from '../ui/button.tsx';
import { SampleWays } from '../ui/sample-ways.tsx';

export function SampleLine({ desk, route }: { readonly desk: Desk; readonly route: Route }) {
  const isHidden = useStore(sampleLineHiddenStore);
  if (!desk.sample.isOwnCopy || desk.person.role !== 'manager' || route.screen !== 'lot' || isHidden) return null;
  return (
    <aside className="sample-line" aria-label={text.lineLabel}>
      <p>{text.line}</p>
      <SampleWays desk={desk} kind="quiet" />
      <span className="sample-line-end">
        <Button kind="quiet" onPress={() => sampleLineHiddenStore.set(true)}>
          {text.hide}
        </Button>
      </span>
    </aside>
  );
}
