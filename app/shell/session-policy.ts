// What the page's session may do with the outside world: nothing. The program is offline, so every request but those for
// its own files is refused, and so is every permission and every download.
import type { Session } from 'electron';
import type { Log } from './log.ts';
import { isPageOrigin } from './page-origin.ts';

/**
 * Whether the session may load this. Our own files; pictures that the page itself made; the developer tools' own files
 * where they may be opened.
 */
export function isAllowedRequest(address: string, resourceType: string, hasDeveloperTools: boolean): boolean {
  if (isPageOrigin(address)) return true;
  if (address.startsWith('blob:')) return isPageOrigin(address.slice('blob:'.length));
  if (address.startsWith('data:')) return resourceType === 'image';
  return hasDeveloperTools && address.startsWith('devtools:');
}

export function applySessionPolicy(session: Session, log: Log, hasDeveloperTools: boolean): void {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setSpellCheckerEnabled(false);
  session.on('will-download', (event) => {
    event.preventDefault();
    log.warn('session', 'a download was refused');
  });
  session.webRequest.onBeforeRequest((details, decide) => {
    const isAllowed = isAllowedRequest(details.url, details.resourceType, hasDeveloperTools);
    // Only the scheme: an address could carry what a person typed.
    if (!isAllowed)
      log.warn('session', `a ${details.url.split(':', 1)[0]} request (${details.resourceType}) was refused`);
    decide({ cancel: !isAllowed });
  });
}
