// For end-to-end tests only: holds the start until the tool that drives the program has attached to it. Attaching to a page
// in the very moment in which it first loads makes Playwright wait for ever for an event that has passed.

/** The switch of the command line. It lets nobody in: the packed program's fuses refuse every tool that would drive it. */
export const awaitDriverSwitch = 'await-driver';

/** Resolves when Playwright says, by the one function it always calls, that it has attached. To be called at once. */
export function driverAttached(): Promise<void> {
  return new Promise((resolve) => {
    Object.assign(globalThis, { __playwright_run: resolve });
  });
}
