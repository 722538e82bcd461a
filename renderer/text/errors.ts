// The words for each error code of the contract: what is wrong, and what to do. The detail of an error comes after them.
import type { AppError, AppErrorCode } from '../../app/contract/app-error.ts';
import { sayWholeDaysIn } from './say-day.ts';

const sentences: Readonly<Record<AppErrorCode, string>> = {
  'bad-request': 'The program did not understand this entry. Correct the fields that are marked.',
  'not-allowed': 'Whoever is at the desk may not do this. Choose another person at the top, or ask a manager.',
  'sign-in': 'This needs signing in.',
  'not-found': 'This is no longer in the fleet. Go back to the Lot and look for it there.',
  refused: 'This was not saved. Correct what is marked and save again.',
  'stale-revision':
    'Somebody changed this in the meantime, so it was not saved. What you typed is still here; look at it once more and save again.',
  'read-only': 'The fleet is open for reading only, so nothing was saved. The line at the foot of the window says why.',
  'newer-version':
    'A newer version of the program wrote this. It can be read here and not changed; use the newer version.',
  'no-space':
    'There is no room left on the disk, so it was not saved. Make room, then save again; what you typed is still here.',
  'no-permission':
    'This computer does not let the program write into the fleet folder, so it was not saved. Ask whoever looks after the computer; what you typed is still here.',
  'folder-gone':
    'The fleet folder cannot be reached, so it was not saved. Is its drive connected? What you typed is still here; save again then.',
  busy: 'The file is in use by another program, so it was not saved. Wait a moment and save again; what you typed is still here.',
  'nothing-to-undo': 'There is nothing to undo.',
  'printing-failed':
    'The sheet could not be written. Look whether the folder for sheets can be reached, and print again.',
  'no-sheet': 'This sheet cannot be made yet.',
  'bad-archive': 'This archive was not opened.',
  'bad-attachment': 'This photograph or document cannot be shown.',
  'not-done': 'This was not done.',
  'bad-list': 'This list cannot be read.',
  unexpected:
    'Something went wrong inside the program. What was saved before is safe; what you typed is still here. Try again, and start the program anew if it happens again.',
};

/** The sentence for an error, with its detail where it has one. */
export function errorSentence({ code, detail }: Pick<AppError, 'code' | 'detail'>): string {
  return detail.trim() === '' ? sentences[code] : `${sentences[code]} ${sayWholeDaysIn(detail.trim())}`;
}
