// Waits for something, but not for ever. No Electron.

/** Resolves to true when `work` is done in time, to false when not; rejects as `work` does. The work itself goes on. */
export async function within(milliseconds: number, work: Promise<unknown>): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<false>((resolve) => {
    timer = setTimeout(() => resolve(false), milliseconds);
  });
  try {
    return await Promise.race([work.then(() => true), tooLong]);
  } finally {
    clearTimeout(timer);
  }
}
