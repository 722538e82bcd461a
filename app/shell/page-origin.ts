// The one origin that the program's page has. Compared part by part after parsing, never as a piece of text.

export const pageScheme = 'app';
export const pageHost = 'lotwright';
export const pageAddress = `${pageScheme}://${pageHost}/index.html`;

/** The parts of an address, or null for text that is none. */
export function parseAddress(address: string): URL | null {
  try {
    return new URL(address);
  } catch {
    return null;
  }
}

/** Whether an address belongs to exactly `app://lotwright`: no other host, no port, no name before an @. */
export function isPageOrigin(address: string): boolean {
  const url = parseAddress(address);
  if (url === null || url.username !== '' || url.password !== '') return false;
  return url.protocol === `${pageScheme}:` && url.host === pageHost;
}
