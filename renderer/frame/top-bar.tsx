// The top bar: the screens, the fleet, undo and redo, who is at the desk.
import type { MouseEvent } from 'react';
import type { Desk } from '../../app/contract/views.ts';
import { AtTheDesk } from '../screens/sign-in/at-the-desk.tsx';
import { redo, undo } from '../state/desk-store.ts';
import { goTo, type Route, screensInOrder } from '../state/route-store.ts';
import { hasShopDrafts, shopStore } from '../state/shop-store.ts';
import { useStore } from '../state/store.ts';
import { frameText } from '../text/frame.ts';
import { Button } from '../ui/button.tsx';

/** A vehicle and its taking in belong to the lot, safety copies to the setup. */
function screenOf(route: Route): (typeof screensInOrder)[number] {
  if (route.screen === 'safety') return 'setup';
  if (route.screen === 'import-list') return 'lot';
  return route.screen === 'vehicle' || route.screen === 'take-in' ? 'lot' : route.screen;
}

function ScreenLinks({ route, desk }: { readonly route: Route; readonly desk: Desk }) {
  const hasDrafts = hasShopDrafts(useStore(shopStore));
  const current = screenOf(route);
  return (
    <nav aria-label={frameText.screens} className="screen-links">
      {screensInOrder.map((screen, index) => {
        // What is for the workshop is not offered to sales, and money only to whoever sees any.
        if ((screen === 'next-jobs' || screen === 'waiting') && desk.person.role === 'sales') return null;
        if (screen === 'money' && !desk.seesMoney) return null;
        return (
          <a
            key={screen}
            href={`#${screen}`}
            aria-current={screen === current ? 'page' : undefined}
            aria-keyshortcuts={`Alt+${index + 1}`}
            title={`Alt+${index + 1}`}
            onClick={(event: MouseEvent) => {
              event.preventDefault();
              goTo({ screen });
            }}
          >
            {screen === 'setup' && hasDrafts ? frameText.setupUnsaved : frameText[screen]}
          </a>
        );
      })}
    </nav>
  );
}

function UndoButtons({ desk }: { readonly desk: Desk }) {
  return (
    <div className="undo-buttons">
      <Button
        kind="quiet"
        isDisabled={desk.undo === null}
        whyDisabled={frameText.nothingToUndo}
        shortcut="Ctrl+Z"
        tip={desk.undo === null ? undefined : frameText.undoWhat(desk.undo)}
        onPress={() => void undo()}
      >
        {desk.undo === null ? frameText.undo : frameText.undoWhat(desk.undo)}
      </Button>
      <Button
        kind="quiet"
        isDisabled={desk.redo === null}
        whyDisabled={frameText.nothingToRedo}
        shortcut="Ctrl+Shift+Z"
        tip={desk.redo === null ? undefined : frameText.redoWhat(desk.redo)}
        onPress={() => void redo()}
      >
        {desk.redo === null ? frameText.redo : frameText.redoWhat(desk.redo)}
      </Button>
    </div>
  );
}

export function TopBar({ desk, route }: { readonly desk: Desk; readonly route: Route }) {
  return (
    <header className="top-bar">
      <div className="fleet-name" title={desk.fleetName}>
        {desk.fleetName}
      </div>
      {desk.isSample && (
        <div className="sample-mark" title={frameText.sampleTip}>
          {frameText.sample}
        </div>
      )}
      <ScreenLinks route={route} desk={desk} />
      <UndoButtons desk={desk} />
      <AtTheDesk desk={desk} />
    </header>
  );
}
