// The system's own dialogs and programs: choosing a folder, showing a printed file, telling of trouble. A path comes from the
// person through the system or from the program itself, never from the page.
import { app, type BrowserWindow, dialog, type OpenDialogOptions, shell } from 'electron';
import type { AppError } from '../contract/app-error.ts';
import { chooseFolderText, noticeText, startFailedText, startTroubleSentence, startTroubleText } from './shell-text.ts';
import { type StartChoice, startChoices } from './start-choice.ts';

export async function chooseFolder(window: BrowserWindow | null): Promise<string | null> {
  const options: OpenDialogOptions = {
    title: chooseFolderText.title,
    message: chooseFolderText.message,
    buttonLabel: chooseFolderText.choose,
    defaultPath: app.getPath('documents'),
    properties: ['openDirectory', 'createDirectory', 'promptToCreate'],
  };
  const { filePaths } = await (window ? dialog.showOpenDialog(window, options) : dialog.showOpenDialog(options));
  return filePaths[0] ?? null;
}

/** Tells why the fleet could not be opened and asks what to do. Closing the box quits. */
export async function askAboutStartTrouble(folder: string, error: AppError): Promise<StartChoice> {
  const { response } = await dialog.showMessageBox({
    type: 'warning',
    title: startTroubleText.title,
    message: startTroubleText.message,
    detail: [
      startTroubleSentence(error.code, error.detail),
      startTroubleText.folder(folder),
      startTroubleText.untouched,
    ].join('\n\n'),
    buttons: [startTroubleText.tryAgain, startTroubleText.chooseAnother, startTroubleText.quit],
    defaultId: 0,
    cancelId: startChoices.indexOf('quit'),
    noLink: true,
  });
  return startChoices[response] ?? 'quit';
}

/** Tells something that need not be decided, without stopping the program. */
export function tellNotice(window: BrowserWindow, notice: string): void {
  void dialog.showMessageBox(window, {
    type: 'info',
    title: noticeText.title,
    message: notice,
    buttons: [noticeText.close],
  });
}

/** The last word when the program cannot even open its window. */
export function tellStartFailed(): void {
  dialog.showErrorBox(startFailedText.title, startFailedText.message);
}

/** Opens a file with the system's own program for it; false when there is none. */
export async function openFile(file: string): Promise<boolean> {
  return (await shell.openPath(file)) === '';
}

export function showFolder(folder: string): void {
  void shell.openPath(folder);
}
