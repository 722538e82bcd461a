// A story whose stock number is given later: numbers run in the order in which the vehicles were bought.
import type { Day } from '../../domain/shared/day.ts';
import type { Told } from './ruled-record.ts';
import { Story } from './story.ts';
import type { Beginning } from './take-in-of.ts';

export type Untold = {
  readonly boughtOn: Day;
  readonly tell: (stockNumber: string, serial: number) => Told;
};

export function untold(beginning: Beginning, chapters: (story: Story) => void): Untold {
  return {
    boughtOn: beginning.boughtOn,
    tell: (stockNumber, serial) => {
      const story = new Story(stockNumber, serial, beginning);
      chapters(story);
      return story.told();
    },
  };
}
