// The ways out of the program that a use case may take: the system's dialogs, its programs, the clipboard. Done by the shell.
import type { PackageLicence } from '../contract/program-channels.ts';
import type { Desk } from '../contract/views.ts';
import type { ProgramFacts } from './program-commands.ts';

export type Outside = {
  readonly chooseFolder: () => Promise<string | null>;
  readonly openFile: (path: string) => Promise<boolean>;
  /** The system's dialogs for where a PDF goes; null when the person thought better of it. */
  readonly chooseSheetFile: (suggestedName: string) => Promise<string | null>;
  readonly chooseSheetFolder: () => Promise<string | null>;
  /** Hands a finished PDF to the program that shows the system's print dialog for it; false when there is none. */
  readonly printPdf: (path: string) => Promise<boolean>;
  readonly showFolder: (path: string) => void;
  /** Where the archive of a fleet goes, and which one is opened; null when the person thought better of it. */
  readonly chooseArchiveToWrite: (suggestedName: string) => Promise<string | null>;
  readonly chooseArchiveToOpen: () => Promise<string | null>;
  readonly applyTheme: (theme: Desk['theme']) => void;
  /** Puts a code on the clipboard and clears it again after so many seconds, if it is still there. */
  readonly copyPassing: (text: string, seconds: number) => Promise<void>;
  /** Clears at once what `copyPassing` has put there. */
  readonly forgetCopied: () => Promise<void>;
  readonly programFacts: () => ProgramFacts;
  readonly readLicences: () => Promise<readonly PackageLicence[]>;
  /** Oldest first. */
  readonly lastLogLines: (count: number) => Promise<readonly string[]>;
};
