// What a person waits for goes before what the program does of its own accord: the backup of the day, rows and forecasts of a long ledger.
import { setImmediate } from 'node:timers';

/** Longest that background work stands still for one stretch of calls: a call that itself waits for that work must not hold it up. */
const longestPauseMs = 2000;

export class Foreground {
  #busy = 0;
  #busySince = 0;
  #waiting: (() => void)[] = [];

  /** From now on until the returned function is called, background work stands still. */
  begin(): () => void {
    if (this.#busy === 0) this.#busySince = performance.now();
    this.#busy += 1;
    let isOver = false;
    return () => {
      if (isOver) return;
      isOver = true;
      this.#busy -= 1;
      if (this.#busy === 0) this.#letGo();
    };
  }

  /** To be awaited by background work between its pieces. Always lets the program answer something else before it goes on. */
  pause(): Promise<void> {
    return new Promise((resolve) => {
      const left = longestPauseMs - (performance.now() - this.#busySince);
      if (this.#busy === 0 || left <= 0) {
        setImmediate(resolve);
        return;
      }
      const goOn = () => {
        clearTimeout(timer);
        setImmediate(resolve);
      };
      const timer = setTimeout(goOn, left);
      this.#waiting.push(goOn);
    });
  }

  #letGo(): void {
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const goOn of waiting) goOn();
  }
}
