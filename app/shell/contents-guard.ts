// Keeps every page of the program where it is: no navigation, no redirect, no new window, no embedded page. The program
// itself loads its one address; that does not pass through here.
import type { WebContents } from 'electron';
import type { Log } from './log.ts';

export function guardContents(contents: WebContents, log: Log): void {
  function refuse(what: string): (event: { preventDefault: () => void }) => void {
    return (event) => {
      event.preventDefault();
      log.warn('page', `${what} was refused`);
    };
  }
  contents.on('will-navigate', refuse('a navigation'));
  contents.on('will-frame-navigate', refuse('a navigation of a frame'));
  contents.on('will-redirect', refuse('a redirect'));
  contents.on('will-attach-webview', refuse('an embedded page'));
  contents.setWindowOpenHandler(() => {
    log.warn('page', 'a new window was refused');
    return { action: 'deny' };
  });
  // What the page cannot send through requests it must not send past them either.
  contents.setWebRTCIPHandlingPolicy('disable_non_proxied_udp');
}
