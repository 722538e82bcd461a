// Why a change is refused: which field, what is wrong with it, what to do. Pure sentences, no screen.

export type ChangeProblem = {
  /** Path of the field inside the section or fact, for example 'receivedOn' or 'proof'. Empty: the change as a whole. */
  readonly field: string;
  readonly sentence: string;
};
