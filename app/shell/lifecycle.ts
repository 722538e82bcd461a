// Start and end of the program: the hardening that must come before Electron is ready, quitting that waits for what is
// being written, the change of day, and faults that nobody caught.
import { app, type BrowserWindow, dialog, powerMonitor } from 'electron';
import { guardContents } from './contents-guard.ts';
import type { Log } from './log.ts';
import { failureText } from './shell-text.ts';
import { within } from './within.ts';

/** Saving retries for some seconds where the system says busy; longer than this a gone share would hold the program up. */
const closingMilliseconds = 10_000;
const minute = 60_000;

/** To be called before Electron is ready. */
export function hardenProcess(): void {
  // Chromium cannot start its sandbox as root; whoever runs it so has to say so by this switch.
  if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
  // The program is offline: no name is ever looked up, not even by a hint in the page.
  app.commandLine.appendSwitch('host-resolver-rules', 'MAP * ~NOTFOUND');
}

/** Every page the program ever makes, also one made by mistake. To be called before the first. */
export function guardAllContents(log: Log): void {
  app.on('web-contents-created', (_event, contents) => guardContents(contents, log));
}

/** There is one program and one window: a second start shows them. */
export function focusOnSecondStart(window: BrowserWindow): void {
  app.on('second-instance', () => {
    if (window.isDestroyed()) return;
    if (window.isMinimized()) window.restore();
    window.show();
    window.focus();
  });
}

/** Lets the program end only when `close` is done, or has taken too long. Nothing that was shown as saved hangs on it. */
export function closeBeforeQuitting(window: BrowserWindow, close: () => Promise<void>, log: Log): void {
  let closing: Promise<void> | null = null;
  let isDone = false;
  function closeOnce(): Promise<void> {
    closing ??= within(closingMilliseconds, close()).then(
      (isInTime) => {
        if (!isInTime) log.error('program', 'closing took too long and was given up');
      },
      (error) => log.error('program', 'closing failed', error),
    );
    return closing;
  }
  app.on('window-all-closed', () => app.quit());
  app.on('will-quit', (event) => {
    if (isDone) return;
    event.preventDefault();
    void closeOnce().then(() => {
      isDone = true;
      // Closing may be done before this event is: while it still asks, Electron takes no other quit.
      setImmediate(() => app.quit());
    });
  });
  // Windows does not announce quitting when the person signs out or the computer shuts down; Linux and macOS ask.
  window.on('session-end', () => void closeOnce());
  powerMonitor.on('shutdown', (event?: { preventDefault: () => void }) => {
    event?.preventDefault();
    app.quit();
  });
}

/** Calls back every minute and after the computer was asleep: the day may be another one. */
export function watchTheDay(dayMayHaveChanged: () => void): void {
  setInterval(dayMayHaveChanged, minute).unref();
  powerMonitor.on('resume', dayMayHaveChanged);
}

/** Whatever nobody caught is logged and told, one box at a time; it never ends the program unseen. */
export function reportFailures(log: Log): void {
  let isTelling = false;
  function report(what: string, error: unknown): void {
    log.error('program', what, error);
    if (isTelling || !app.isReady()) return;
    isTelling = true;
    const { title, message, detail, close } = failureText;
    void dialog.showMessageBox({ type: 'error', title, message, detail, buttons: [close] }).finally(() => {
      isTelling = false;
    });
  }
  process.on('uncaughtException', (error) => report('Uncaught exception', error));
  process.on('unhandledRejection', (reason) => report('Unhandled rejection', reason));
}
