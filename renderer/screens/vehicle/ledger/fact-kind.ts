// What a ledger has to know of the facts it lists: where they are kept, how they are judged, and how the form's draft differs from them.
import type { z } from 'zod';
import type { Stamp } from '../../../../app/domain/shared/fact.ts';
import type { Result } from '../../../../app/domain/shared/result.ts';
import type { PutChange } from '../../../../app/domain/vehicle/change.ts';
import type { ChangeProblem } from '../../../../app/domain/vehicle/change-problem.ts';
import type { Typed } from '../../../state/edit-draft.ts';

export type Identified = { readonly id: string };
export type Kept<Fact> = Fact & { readonly entered: Stamp };

export type FactKind<Fact extends Identified, Value extends Identified = Typed<Fact> & Identified> = {
  readonly list: PutChange['list'];
  readonly schema: z.ZodType<Fact>;
  readonly toChange: (fact: Fact) => PutChange;
  /** What the form shows for a fact. Without it, the fact itself. */
  readonly toValue: (fact: Fact) => Value;
  readonly finish?: (value: Value) => Result<unknown, readonly ChangeProblem[]>;
};

/** The fact as a person entered it, without the stamp that only the main process sets. */
export function withoutStamp<Fact extends Identified>(kept: Kept<Fact>): Fact {
  const { entered: _entered, ...fact } = kept;
  return fact as unknown as Fact;
}

/** For facts whose form needs nothing but blanks: the fact is its own draft. */
export function asTyped<Fact extends Identified>(fact: Fact): Typed<Fact> & Identified {
  return fact as unknown as Typed<Fact> & Identified;
}

/** The same for a section of the record, which has no identity. */
export function asTypedSection<Section extends object>(section: Section): Typed<Section> {
  return section as unknown as Typed<Section>;
}
