// Chapters that are planned in any order and told in the order of their days, so that several repairs can run beside each other.
import type { Day } from '../../domain/shared/day.ts';
import type { Story } from './story.ts';

export class ToldLater {
  readonly #chapters: { readonly day: Day; readonly tell: (story: Story) => void }[] = [];

  at(day: Day, tell: (story: Story) => void): void {
    this.#chapters.push({ day, tell });
  }

  /** Of one day, in the order in which they were planned. */
  tell(story: Story): void {
    const inOrder = this.#chapters.map((chapter, index) => ({ ...chapter, index }));
    inOrder.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.index - b.index));
    for (const { day, tell } of inOrder) tell(story.on(day));
  }
}
