// What can go wrong when the fleet folder is read or written, as a closed list, and the sentence a person gets for each.
import { assertNever } from '../domain/shared/assert-never.ts';

export const storageProblemCodes = [
  'no-space',
  'no-permission',
  'folder-gone',
  'busy',
  'stale-revision',
  'newer-version',
  'read-only',
  'not-found',
  'damaged',
  'invalid',
  'unknown',
] as const;
export type StorageProblemCode = (typeof storageProblemCodes)[number];

/** `detail` is for the person who looks into it: the file concerned and the system's own words. */
export type StorageProblem = { readonly code: StorageProblemCode; readonly detail: string };

const codeOfSystemError: Readonly<Record<string, StorageProblemCode>> = {
  ENOSPC: 'no-space',
  EDQUOT: 'no-space',
  EFBIG: 'no-space',
  EACCES: 'no-permission',
  EPERM: 'no-permission',
  EROFS: 'read-only',
  ENOENT: 'folder-gone',
  ENOTDIR: 'folder-gone',
  ENODEV: 'folder-gone',
  ENXIO: 'folder-gone',
  ESTALE: 'folder-gone',
  ENOTCONN: 'folder-gone',
  EHOSTDOWN: 'folder-gone',
  EHOSTUNREACH: 'folder-gone',
  EBUSY: 'busy',
  EAGAIN: 'busy',
  EMFILE: 'busy',
  ENFILE: 'busy',
  ETXTBSY: 'busy',
};

/** The system's code of a caught error ('ENOSPC'), or null. */
export function systemCode(error: unknown): string | null {
  if (!(error instanceof Error) || !('code' in error)) return null;
  return typeof error.code === 'string' ? error.code : null;
}

export function problemFromError(error: unknown, doing: string): StorageProblem {
  const code = codeOfSystemError[systemCode(error) ?? ''] ?? 'unknown';
  return { code, detail: `${doing}: ${error instanceof Error ? error.message : String(error)}` };
}

/** What is wrong, that nothing was lost, and what to do. */
export function storageSentence(code: StorageProblemCode): string {
  switch (code) {
    case 'no-space':
      return 'Not saved: the disk is full. The last saved state is untouched. Free some space, then save again.';
    case 'no-permission':
      return 'Not saved: the fleet folder may not be written, or another program holds the file. The last saved state is untouched. Check who may write there, then save again.';
    case 'folder-gone':
      return 'Not saved: the fleet folder cannot be reached any more. Connect the drive or share again, then save again.';
    case 'busy':
      return 'Not saved: another program (a virus scanner or a copying service, perhaps) is holding the file. The last saved state is untouched. Wait a moment, then save again.';
    case 'stale-revision':
      return 'Not saved: this record has changed since you opened it. Look at the present state, then enter your change again.';
    case 'newer-version':
      return 'Not saved: this was written by a newer version of the program and has not been touched. Update the program on this desk.';
    case 'read-only':
      return 'Not saved: the fleet is open for reading only on this desk.';
    case 'not-found':
      return 'There is no such record or copy any more.';
    case 'damaged':
      return 'This copy does not read as it was written. Nothing has been changed. Choose another copy.';
    case 'invalid':
      return 'Not saved: the record would not read back as it should. The last saved state is untouched.';
    case 'unknown':
      return 'Not saved, for a reason this program does not know. The last saved state is untouched. Try again; if it stays, look at the details.';
    default:
      return assertNever(code, 'storage problem');
  }
}
