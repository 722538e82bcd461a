// Puts a secret on the system's clipboard for a while, and takes it off again if it is still there. Remembers its hash only, and never
// clears what a person has copied since. Knows no Electron: the clipboard is passed in.
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** Newer Electrons answer with promises, older ones at once. */
export type ClipboardLike = {
  readonly writeText: (text: string) => void | Promise<void>;
  readonly readText: () => string | Promise<string>;
  readonly clear: () => void | Promise<void>;
};

export type PassingClipboard = {
  /** Copies, and clears again after so many seconds. */
  readonly copyPassing: (text: string, seconds: number) => Promise<void>;
  /** Clears now, if it still holds what was copied. */
  readonly forgetCopied: () => Promise<void>;
};

/** @param onTrouble told when the system's clipboard could not be read or cleared */
export function createPassingClipboard(
  clipboard: ClipboardLike,
  onTrouble: (error: unknown) => void,
): PassingClipboard {
  const salt = randomBytes(16);
  let copied: Buffer | null = null;
  let timer: NodeJS.Timeout | null = null;
  const hashOf = (text: string) => createHash('sha256').update(salt).update(text).digest();

  async function forgetCopied(): Promise<void> {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    const mine = copied;
    copied = null;
    if (mine === null) return;
    try {
      if (timingSafeEqual(hashOf(await clipboard.readText()), mine)) await clipboard.clear();
    } catch (error) {
      onTrouble(error);
    }
  }

  return {
    copyPassing: async (text, seconds) => {
      await forgetCopied();
      copied = hashOf(text);
      timer = setTimeout(() => void forgetCopied(), seconds * 1000);
      timer.unref();
      await clipboard.writeText(text);
    },
    forgetCopied,
  };
}
