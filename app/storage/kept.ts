// A record as the store holds it: what was last written and acknowledged.

export type Kept<Data> = {
  readonly data: Data;
  /** Counts the saves, from 1. A save names the revision it was based on. */
  readonly revision: number;
  /** ISO instant. */
  readonly savedAt: string;
  readonly isReadOnly: boolean;
};
