// What can be taken back and done again, in this run of the program and for the person at the desk. Holds records, never writes them.
import type { Vehicle } from '../domain/vehicle/vehicle.ts';

/** What one act did to one vehicle. `before` null: it was taken in. `after` null: it was withdrawn. */
export type StepPart = {
  readonly vehicleId: string;
  readonly before: Vehicle | null;
  readonly after: Vehicle | null;
};

/** One acknowledged act, of one vehicle or, with `further`, of several at once. */
export type Step = StepPart & {
  readonly label: string;
  /** What was done, without the vehicle's name: for its own history. */
  readonly what: string;
  readonly further?: readonly StepPart[];
};

const mostSteps = 200;

export class UndoStack {
  #done: Step[] = [];
  #undone: Step[] = [];

  push(step: Step): void {
    this.#done = [...this.#done.slice(1 - mostSteps), step];
    this.#undone = [];
  }

  clear(): void {
    this.#done = [];
    this.#undone = [];
  }

  nextUndo(): Step | null {
    return this.#done[this.#done.length - 1] ?? null;
  }

  nextRedo(): Step | null {
    return this.#undone[this.#undone.length - 1] ?? null;
  }

  /** To be called once the earlier state has been saved. */
  wasUndone(): void {
    const step = this.#done.pop();
    if (step) this.#undone.push(step);
  }

  wasRedone(): void {
    const step = this.#undone.pop();
    if (step) this.#done.push(step);
  }
}
