// Gives the program its own scheme, app://lotwright, so that the page never runs from file:. Must be declared before
// Electron is ready and served after.
import { type Protocol, protocol } from 'electron';
import { answerPageRequest, type PageFiles } from './page-files.ts';
import { pageScheme } from './page-origin.ts';

/** Standard and secure, so that the page has an origin and a CSP that holds; no other privilege is needed. */
export const schemePrivileges = {
  standard: true,
  secure: true,
  bypassCSP: false,
  allowServiceWorkers: false,
  supportFetchAPI: false,
  corsEnabled: false,
  stream: false,
} as const;

export function declareScheme(): void {
  protocol.registerSchemesAsPrivileged([{ scheme: pageScheme, privileges: schemePrivileges }]);
}

export function serveScheme(served: Protocol, files: PageFiles): void {
  served.handle(pageScheme, (request) => answerPageRequest(request.method, request.url, files));
  // Files are read by the main process alone. Chromium's own way to them goes past the session's refusals.
  served.handle('file', () => new Response(null, { status: 403 }));
}
