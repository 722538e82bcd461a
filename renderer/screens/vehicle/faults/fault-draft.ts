// A fault as its form holds it: codes as text, and a decision that may still be none. Pure.
import type { Decision, DecisionKind, FaultDraft } from '../../../../app/domain/diagnosis/fault.ts';
import { ok, type Result } from '../../../../app/domain/shared/result.ts';
import type { ChangeProblem } from '../../../../app/domain/vehicle/change-problem.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import { scanText } from '../../../text/scans.ts';
import { readCodeText } from '../scans/code-text.ts';

export type DecisionDraft = Omit<Typed<Decision>, 'kind'> & { readonly kind: DecisionKind | '' };

export type FaultValue = Omit<Typed<FaultDraft>, 'codes' | 'decision'> & {
  readonly id: string;
  readonly codes: string;
  readonly decision: DecisionDraft;
};

const undecided: DecisionDraft = { kind: '', decidedOn: null, reason: '', estimateMinutes: null };

export function faultValue(fault: FaultDraft): FaultValue {
  return { ...fault, codes: fault.codes.join(' '), decision: fault.decision ?? undecided };
}

/** The fact to judge and save, or what cannot be read as a trouble code. */
export function finishFault(value: FaultValue): Result<unknown, readonly ChangeProblem[]> {
  const { codes, notUnderstood } = readCodeText(value.codes);
  const leftOver = [...notUnderstood, ...codes.flatMap((code) => (code.words === '' ? [] : [code.words]))];
  if (leftOver.length > 0)
    return { ok: false, error: [{ field: 'codes', sentence: scanText.notUnderstood(leftOver) }] };
  return ok({
    ...value,
    codes: [...new Set(codes.map(({ code }) => code))],
    decision: value.decision.kind === '' ? null : value.decision,
  });
}
