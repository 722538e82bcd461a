// One thing at a time, in the order asked. Nothing is dropped: closing waits for what was asked before.

export type WriteQueue = {
  /** Runs the job after all earlier ones. Null when the queue has been closed: the job will not run. */
  readonly run: <Outcome>(job: () => Promise<Outcome>) => Promise<Outcome> | null;
  readonly close: () => Promise<void>;
};

export function createWriteQueue(): WriteQueue {
  let last: Promise<unknown> = Promise.resolve();
  let isClosed = false;
  return {
    run: (job) => {
      if (isClosed) return null;
      const outcome = last.then(job);
      last = outcome.catch(() => undefined);
      return outcome;
    },
    close: async () => {
      isClosed = true;
      await last;
    },
  };
}
