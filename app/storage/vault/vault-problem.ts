// Why the vault refuses something, as a closed list of codes with a sentence each. No sentence repeats a code or a pass phrase.
import { waitSentence } from '../../domain/people/try-delay.ts';
import { fail } from '../../domain/shared/result.ts';
import { type StorageProblem, storageSentence } from '../storage-problem.ts';

const sentences = {
  'no-vault': 'There is no vault for codes yet. The manager sets it up first.',
  'vault-there': 'There is a vault already. It was not replaced.',
  locked: 'The vault is locked. Enter your pass phrase for codes first.',
  'not-admitted': 'This person has no key to the vault. Somebody who has one adds them.',
  'already-admitted': 'This person has a key to the vault already.',
  'wrong-pass-phrase': 'This is not the pass phrase.',
  wait: 'Too many wrong tries.',
  'weak-pass-phrase': 'This pass phrase is too weak.',
  'damaged-key':
    'The key of this person in the vault has been damaged. Let somebody else with a key remove and add them, or use the recovery key.',
  'damaged-recovery':
    'The recovery key’s part of the vault has been damaged. Open the vault with a pass phrase and make a new recovery key.',
  'damaged-code':
    'The code kept for this request has been changed by something else, or belongs to another request. It is not shown. All other codes are untouched. Ask for it again.',
  'damaged-vault': 'The vault cannot be read.',
  'not-vouched':
    'A key in the vault was put there by something other than this program. Nothing was changed. Remove that person first.',
  'recovery-mistyped': 'The recovery key is not typed as it was printed.',
  'wrong-recovery-key': 'This is not the present recovery key of this vault.',
  'last-person': 'This is the last person with a key. Add another one first, or nobody could open the vault.',
  'no-code': 'No code is kept for this request.',
  'code-there': 'A code is kept for this request already. Say that it shall be replaced.',
  destroyed: 'There was a code for this request. It has been destroyed.',
  'other-kind': 'The code was kept for another kind of request. Enter it again under the right kind.',
  'bad-value': 'A code is one line of at most 200 characters and not empty.',
  storage: '',
} as const;

export type VaultProblemCode = keyof typeof sentences;

export type VaultProblem = {
  readonly code: VaultProblemCode;
  /** What is wrong and what to do. */
  readonly sentence: string;
  /** How long the next try must wait; 0 where that is not the point. */
  readonly waitMilliseconds: number;
  /** Behind 'storage': what the disk said. */
  readonly storage: StorageProblem | null;
};

/** `more` is added to the code's own sentence. */
export function refuseVault(code: Exclude<VaultProblemCode, 'storage'>, more = '', waitMilliseconds = 0) {
  const sentence = [sentences[code], more, waitSentence(waitMilliseconds)].filter((part) => part !== '').join(' ');
  return fail<VaultProblem>({ code, sentence, waitMilliseconds, storage: null });
}

export function refuseVaultStorage(storage: StorageProblem) {
  return fail<VaultProblem>({
    code: 'storage',
    sentence: storageSentence(storage.code),
    waitMilliseconds: 0,
    storage,
  });
}
