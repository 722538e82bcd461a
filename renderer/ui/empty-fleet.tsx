// Where no vehicle is yet: what to do first, by role, and the way to do it. The same on every screen that lists vehicles.
import { useDesk } from '../state/desk-store.ts';
import { lotStore } from '../state/lot-store.ts';
import { goTo } from '../state/route-store.ts';
import { useStore } from '../state/store.ts';
import { lotText } from '../text/lot.ts';
import { Button } from './button.tsx';
import { EmptyState } from './empty-state.tsx';

/** No vehicle is there for whoever is at the desk, and none is still being read. */
export function useIsFleetEmpty(): boolean {
  const { state, rows, toCome } = useStore(lotStore);
  return state === 'here' && rows.length === 0 && toCome === 0;
}

export function EmptyFleet() {
  const desk = useDesk();
  if (desk.person.role === 'technician') return <EmptyState sentence={lotText.emptyTechnician} />;
  if (desk.person.role === 'sales') return <EmptyState sentence={lotText.emptySales} />;
  const takeIn = (
    <Button kind={desk.shop === null ? 'plain' : 'main'} shortcut="N" onPress={() => goTo({ screen: 'take-in' })}>
      {lotText.takeIn}
    </Button>
  );
  if (desk.shop !== null) return <EmptyState sentence={lotText.emptyManager} action={takeIn} />;
  return (
    <EmptyState
      sentence={lotText.emptyNew}
      action={
        <>
          <Button kind="main" onPress={() => goTo({ screen: 'setup' })}>
            {lotText.goToSetup}
          </Button>
          {takeIn}
        </>
      }
    />
  );
}
