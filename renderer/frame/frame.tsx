// The frame around the screens: top bar, the screen of the route, status line, messages. Knows which screens there are, not what is in them.
import './frame.css';
import { useEffect, useRef, useState } from 'react';
import { LockedCover } from '../screens/sign-in/locked-cover.tsx';
import { SignInDialog } from '../screens/sign-in/sign-in-dialog.tsx';
import { useDayForm } from '../state/day-form-store.ts';
import { deskStore, deskTroubleStore, handOversStore, lockedStore, readDesk } from '../state/desk-store.ts';
import { routeStore } from '../state/route-store.ts';
import { useStore } from '../state/store.ts';
import { frameText } from '../text/frame.ts';
import { Button } from '../ui/button.tsx';
import { HatchPatterns } from '../ui/hatch-patterns.tsx';
import { NoticeArea } from '../ui/notice.tsx';
import { purposeId } from '../ui/screen-purpose.tsx';
import { AboutDialog } from './about-dialog.tsx';
import { applyTheme } from './apply-theme.ts';
import { BeginAgainDialog } from './begin-again-dialog.tsx';
import { KeysDialog } from './keys-dialog.tsx';
import { ReportDialog } from './report-dialog.tsx';
import { SampleLine } from './sample-line.tsx';
import { Screen } from './screen.tsx';
import { StatusLine } from './status-line.tsx';
import { TopBar } from './top-bar.tsx';
import { type Help, useCommands } from './use-commands.ts';
import { useScanner } from './use-scanner.ts';

/** Before the desk is read, and when it cannot be. */
function Opening() {
  const trouble = useStore(deskTroubleStore);
  return (
    <main className="opening">
      <h1>Lotwright</h1>
      {trouble === null ? (
        <p role="status">{frameText.reading}</p>
      ) : (
        <>
          <p role="alert">{trouble}</p>
          <Button onPress={() => void readDesk()}>{frameText.tryAgain}</Button>
        </>
      )}
    </main>
  );
}

export function Frame() {
  const desk = useStore(deskStore);
  const locked = useStore(lockedStore);
  const handOvers = useStore(handOversStore);
  const route = useStore(routeStore);
  // Another form of days is another text everywhere: all that is drawn here is drawn again.
  useDayForm();
  const [helps, setHelps] = useState<Help | null>(null);
  const main = useRef<HTMLElement>(null);
  const theme = desk?.theme ?? 'system';
  useEffect(() => applyTheme(theme), [theme]);
  useCommands({ showHelp: setHelps, main });
  useScanner();
  const { screen } = route;
  // Another place begins at its top, with nothing of the earlier one left in it.
  const place = screen === 'vehicle' ? `vehicle ${route.id}` : screen;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another place is what the focus has to follow.
  useEffect(() => {
    // A screen that wants the focus elsewhere has taken it by now.
    if (document.activeElement === null || document.activeElement === document.body) main.current?.focus();
  }, [place]);
  if (desk === null) return <Opening />;
  // Locked from the start: there is nothing to cover.
  if (desk.signIn.isLocked) return <LockedCover desk={locked ?? desk} hasDraftsBelow={false} />;
  return (
    <>
      {locked !== null && <LockedCover desk={locked} hasDraftsBelow />}
      <div className="frame" hidden={locked !== null}>
        <HatchPatterns />
        <button type="button" className="skip-link" onClick={() => main.current?.focus()}>
          {frameText.skipToScreen}
        </button>
        <TopBar desk={desk} route={route} />
        <SampleLine desk={desk} route={route} />
        <main
          key={`${handOvers} ${place}`}
          id="screen"
          ref={main}
          className={`screen is-${screen}`}
          tabIndex={-1}
          aria-describedby={purposeId}
        >
          <Screen route={route} />
        </main>
        <StatusLine desk={desk} onShowKeys={() => setHelps('keys')} />
        <NoticeArea />
        {helps === 'keys' && <KeysDialog onClose={() => setHelps(null)} onAbout={() => setHelps('about')} />}
        {helps === 'about' && <AboutDialog onClose={() => setHelps(null)} onReport={() => setHelps('report')} />}
        {helps === 'report' && <ReportDialog onClose={() => setHelps(null)} />}
        <SignInDialog desk={desk} />
        <BeginAgainDialog />
      </div>
    </>
  );
}
