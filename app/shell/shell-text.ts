// Every word that the shell itself shows: menu, native dialogs, start troubles. The page's words are in renderer/text.
import type { AppErrorCode } from '../contract/app-error.ts';

export const menuText = {
  file: '&File',
  takeIn: 'Take a vehicle in',
  chooseFleet: 'Open another fleet folder…',
  lock: 'Lock the desk',
  quit: 'Quit',
  edit: '&Edit',
  undoTyping: 'Undo typing',
  redoTyping: 'Redo typing',
  cut: 'Cut',
  copy: 'Copy',
  paste: 'Paste',
  selectAll: 'Select all',
  find: 'Find',
  undoChange: 'Undo change',
  redoChange: 'Redo change',
  view: '&View',
  lot: 'Lot',
  nextJobs: 'Next jobs',
  waiting: 'Waiting',
  money: 'Money',
  sheets: 'Sheets',
  setup: 'Setup',
  larger: 'Larger',
  smaller: 'Smaller',
  usualSize: 'Usual size',
  fullScreen: 'Full screen',
  developerTools: 'Developer tools',
  reload: 'Load the page again',
  help: '&Help',
  about: 'About Lotwright',
  report: 'Report of a fault…',
} as const;

export const chooseFolderText = {
  title: 'Choose the fleet folder',
  message: 'Choose the folder with the fleet, or an empty one for a new fleet.',
  choose: 'Use this folder',
} as const;

export const archiveDialogText = {
  saveTitle: 'Save the whole fleet as one file',
  openTitle: 'Choose the archive of a fleet',
  open: 'Open this archive',
  kind: 'Archive of a fleet',
} as const;

export const startTroubleText = {
  title: 'Lotwright',
  message: 'The fleet could not be opened.',
  folder: (folder: string) => `Folder: ${folder}`,
  untouched: 'Nothing in the folder has been changed.',
  tryAgain: 'Try again',
  chooseAnother: 'Choose another folder…',
  quit: 'Quit',
} as const;

/** What is wrong with the folder and what to do about it, by the code that opening it ended with. */
const startTroubles: Partial<Record<AppErrorCode, string>> = {
  'no-space': 'The disk is full. Free some space, then try again.',
  'no-permission':
    'The folder may not be read or written. Ask whoever looks after this computer for the right to it, or choose another folder.',
  'folder-gone': 'The folder cannot be reached. Connect the drive or the share, then try again.',
  'newer-version': 'The fleet was written by a newer version of the program. Update the program on this computer.',
  'read-only': 'The folder cannot be written. Choose a folder that can.',
  busy: 'Another program holds the folder. Wait a moment, then try again.',
};

export function startTroubleSentence(code: AppErrorCode, detail: string): string {
  return startTroubles[code] ?? (detail || 'The reason is unknown. Try again, or choose another folder.');
}

export const failureText = {
  title: 'Lotwright',
  message: 'Something went wrong inside the program.',
  detail:
    'What was shown as saved is saved. Close the program and open it again. If this comes back, send the file lotwright.log to whoever looks after the program; it holds no codes, prices or names.',
  close: 'Go on',
} as const;

export const noticeText = { title: 'Lotwright', close: 'Go on' } as const;

export const startFailedText = {
  title: 'Lotwright',
  message:
    'The program could not start. No fleet data has been changed. Install it again; if that does not help, send the file lotwright.log to whoever looks after the program.',
} as const;

export const sheetDialogText = {
  saveTitle: 'Save the sheets as PDF',
  pdf: 'PDF',
  folderTitle: 'Choose where the sheets go',
  chooseFolder: 'Put them here',
} as const;
