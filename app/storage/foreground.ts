// What a person waits for goes before what the program does of its own accord: the backup of the day, rows and forecasts of a long ledger.
import { setImmediate } from 'node:timers';

/** Longest that background work stands still for one stretch of calls: a call that itself waits for that work must not hold it up. */
const longestPauseMs = 2000;

/** A call seldom comes alone: the page reads what has changed, a person types on. So long after the last one nothing begins. */
const lingerMs = 100;

export class Foreground {
  #calls = 0;
  #isBusy = false;
  #busySince = 0;
  #lingering: NodeJS.Timeout | null = null;
  #waiting: (() => void)[] = [];

  get isBusy(): boolean {
    return this.#isBusy;
  }

  /** From now on until a moment after the returned function is called, background work stands still. */
  begin(): () => void {
    if (!this.#isBusy) this.#busySince = performance.now();
    this.#isBusy = true;
    this.#calls += 1;
    if (this.#lingering !== null) clearTimeout(this.#lingering);
    let isOver = false;
    return () => {
      if (isOver) return;
      isOver = true;
      this.#calls -= 1;
      if (this.#calls === 0) this.#lingering = setTimeout(() => this.#letGo(), lingerMs);
    };
  }

  /** To be awaited by background work between its pieces. Always lets the program answer something else before it goes on. */
  pause(): Promise<void> {
    return new Promise((resolve) => {
      const left = longestPauseMs - (performance.now() - this.#busySince);
      if (!this.#isBusy || left <= 0) {
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
    this.#isBusy = false;
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const goOn of waiting) goOn();
  }
}
