// What stands against putting this code request over the one that is there: rules that need the old request, the VIN and the shop's kinds.
// Judges no code: none is ever in the record.
import type { ChangeProblem } from '../vehicle/change-problem.ts';
import { checkSerialForm, openWarnings } from './code-form.ts';
import type { CodeKindFacts } from './code-kinds.ts';
import { codeKindOf } from './code-name.ts';
import type { RequestFacts } from './request-facts.ts';
import { whyNotAskable } from './request-rules.ts';

export type RequestSetting = {
  readonly vin: string;
  /** Null: not known. */
  readonly modelYear: number | null;
  readonly codeKinds: readonly CodeKindFacts[];
};

/** What is unusual about the serial and has no reason beside it yet. */
function serialProblems(
  { deviceSerial, keptWarnings }: RequestFacts,
  kind: CodeKindFacts,
  modelYear: number | null,
): readonly ChangeProblem[] {
  return openWarnings(checkSerialForm(kind, deviceSerial, modelYear), keptWarnings).map(({ field, sentence }) => ({
    field,
    sentence,
  }));
}

/**
 * Problems of the change from `before` (null: a new request) to `after`. What must be there before a request is asked is judged on the day
 * it is first marked asked, not ever after: a serial corrected later, or a kind that the shop has made stricter, locks nobody out.
 */
export function requestChangeProblems(
  before: RequestFacts | null,
  after: RequestFacts,
  { vin, modelYear, codeKinds }: RequestSetting,
): readonly ChangeProblem[] {
  const kind = codeKindOf(codeKinds, after.kind);
  if (kind === null && after.kind !== before?.kind)
    return [{ field: 'kind', sentence: 'This kind of code is not among the shop’s kinds. Choose another one.' }];
  const isBeingAsked = after.askedOn !== null && (before === null || before.askedOn === null);
  if (isBeingAsked && kind !== null)
    return [...whyNotAskable(after, vin, kind), ...serialProblems(after, kind, modelYear)];
  if (after.askedOn !== null && after.proof === null && before !== null && before.proof !== null)
    return [
      {
        field: 'proof',
        sentence: 'The proof of ownership under which the code was asked for stays with it. Correct it, but keep one.',
      },
    ];
  return [];
}
