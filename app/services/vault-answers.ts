// The vault's refusals in the form the page gets, and what it may know of the vault. Passes no value on.

import type { AppError } from '../contract/app-error.ts';
import type { VaultState } from '../contract/vault-view.ts';
import type { Result } from '../domain/shared/result.ts';
import type { VaultProblem } from '../storage/vault/vault-problem.ts';
import { type DeskContext, refuse, refuseStorage } from './desk-context.ts';

export function refuseVaultProblem(problem: VaultProblem, field = ''): Result<never, AppError> {
  if (problem.storage !== null) return refuseStorage(problem.storage);
  return refuse('refused', problem.sentence, field === '' ? [] : [{ field, sentence: problem.sentence }]);
}

const nothingKnown = { sentence: '', hasKey: false, waitMilliseconds: 0, peopleIds: [], heldCodes: 0 } as const;

/** Where the vault stands for whoever is at the desk. */
export async function vaultState(context: DeskContext): Promise<VaultState> {
  const opened = await context.vault.vault();
  if (!opened.ok) {
    const { code, sentence } = opened.error;
    return code === 'no-vault' ? { ...nothingKnown, state: 'none' } : { ...nothingKnown, state: 'damaged', sentence };
  }
  const vault = opened.value;
  const personId = context.person().id;
  const [people, marks, wait] = [await vault.people(), await vault.marks(), await vault.waitFor(personId)];
  const failed = [people, marks, wait].find((read) => !read.ok);
  if (failed && !failed.ok) return { ...nothingKnown, state: 'damaged', sentence: failed.error.sentence };
  const peopleIds = people.ok ? people.value : [];
  return {
    state: vault.unlockedBy === null ? 'locked' : 'open',
    sentence: '',
    hasKey: peopleIds.includes(personId),
    waitMilliseconds: wait.ok ? wait.value : 0,
    peopleIds,
    heldCodes: marks.ok ? marks.value.filter((mark) => mark.state === 'held').length : 0,
  };
}
