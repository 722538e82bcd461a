// Opens the fleet at the start, and asks the person what to do as long as it cannot be opened. Knows no Electron.
import type { AppError } from '../contract/app-error.ts';
import type { Result } from '../domain/shared/result.ts';
import { isFleetFolder, isFolder } from '../storage/fleet-folder.ts';
import { systemCode } from '../storage/storage-problem.ts';
import type { StartChoice } from './start-choice.ts';

export type StartFolder = {
  readonly folder: string;
  /** True when a person has just named it; false when it is remembered from an earlier start. */
  readonly isNamed: boolean;
};

export type OpenedDesk<Session> = StartFolder & { readonly session: Session };

/**
 * Opening makes a new fleet where there is none. A remembered fleet that is not there any more (a drive that is not
 * connected) must not be taken for a new one, so this looks first.
 */
async function whyNotOpen({ folder, isNamed }: StartFolder): Promise<AppError | null> {
  const problem = (code: AppError['code']): AppError => ({ code, detail: '', problems: [] });
  try {
    const isThere = (await isFolder(folder)) && (isNamed || (await isFleetFolder(folder)));
    return isThere ? null : problem('folder-gone');
  } catch (error) {
    const isForbidden = ['EACCES', 'EPERM'].includes(systemCode(error) ?? '');
    return problem(isForbidden ? 'no-permission' : 'folder-gone');
  }
}

/**
 * @param open tries one folder
 * @param askAbout tells what is wrong and asks
 * @returns null when the person would rather quit
 */
export async function openDesk<Session>(
  first: StartFolder,
  open: (folder: string) => Promise<Result<Session, AppError>>,
  askAbout: (folder: string, error: AppError) => Promise<StartChoice>,
  chooseFolder: () => Promise<string | null>,
): Promise<OpenedDesk<Session> | null> {
  let place = first;
  for (;;) {
    let problem = await whyNotOpen(place);
    if (problem === null) {
      const opened = await open(place.folder);
      if (opened.ok) return { ...place, session: opened.value };
      problem = opened.error;
    }
    const choice = await askAbout(place.folder, problem);
    if (choice === 'quit') return null;
    const chosen = choice === 'choose-another' ? await chooseFolder() : null;
    if (chosen !== null) place = { folder: chosen, isNamed: true };
  }
}
