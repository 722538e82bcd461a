// Opens the fleet at the start, and asks the person what to do as long as it cannot be opened. Knows no Electron.
import type { AppError } from '../contract/app-error.ts';
import type { Result } from '../domain/shared/result.ts';
import type { StartChoice } from './start-choice.ts';

export type OpenedDesk<Session> = {
  readonly session: Session;
  readonly folder: string;
  /** True when a person named the folder just now, so that it is worth remembering. */
  readonly isChosen: boolean;
};

/**
 * @param open tries one folder
 * @param askAbout tells what is wrong and asks
 * @returns null when the person would rather quit
 */
export async function openDesk<Session>(
  firstFolder: string,
  open: (folder: string) => Promise<Result<Session, AppError>>,
  askAbout: (folder: string, error: AppError) => Promise<StartChoice>,
  chooseFolder: () => Promise<string | null>,
): Promise<OpenedDesk<Session> | null> {
  let folder = firstFolder;
  let isChosen = false;
  for (;;) {
    const opened = await open(folder);
    if (opened.ok) return { session: opened.value, folder, isChosen };
    const choice = await askAbout(folder, opened.error);
    if (choice === 'quit') return null;
    const chosen = choice === 'choose-another' ? await chooseFolder() : null;
    if (chosen !== null) {
      folder = chosen;
      isChosen = true;
    }
  }
}
