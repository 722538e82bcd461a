// A code request as its form holds it: a proof of ownership that may still be blank. Pure.
import type { CodeRequestDraft, ProofOfOwnership } from '../../../../app/domain/codes/code-request.ts';
import { ok } from '../../../../app/domain/shared/result.ts';
import type { Typed } from '../../../state/edit-draft.ts';

export type CodeRequestValue = Omit<Typed<CodeRequestDraft>, 'proof'> & {
  readonly id: string;
  readonly proof: Typed<ProofOfOwnership>;
};

export function codeRequestValue(request: CodeRequestDraft): CodeRequestValue {
  return { ...request, proof: request.proof ?? { document: '', checkedOn: null, checkedBy: '' } };
}

/** Without a document there is no proof, whatever day stands beside it; a right code leaves no tries to count and no lock. */
export function finishCodeRequest(value: CodeRequestValue) {
  return ok({
    ...value,
    proof: value.proof.document.trim() === '' ? null : value.proof,
    tries: value.tries.map((attempt) =>
      attempt.result === 'right' ? { ...attempt, triesLeft: null, lockedUntil: null } : attempt,
    ),
  });
}
