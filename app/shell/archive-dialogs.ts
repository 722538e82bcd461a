// The system's dialogs for the archive of a whole fleet. A path comes from the person through the system, never from the page.
import { join } from 'node:path';
import { app, type BrowserWindow, dialog } from 'electron';
import { archiveDialogText } from './shell-text.ts';

export type ArchiveDialogs = {
  readonly chooseArchiveToWrite: (suggestedName: string) => Promise<string | null>;
  readonly chooseArchiveToOpen: () => Promise<string | null>;
};

const filters = [{ name: archiveDialogText.kind, extensions: ['zip'] }];

export function archiveDialogs(window: BrowserWindow): ArchiveDialogs {
  return {
    chooseArchiveToWrite: async (suggestedName) => {
      const { filePath } = await dialog.showSaveDialog(window, {
        title: archiveDialogText.saveTitle,
        defaultPath: join(app.getPath('documents'), suggestedName),
        filters,
        properties: ['createDirectory', 'showOverwriteConfirmation'],
      });
      if (!filePath) return null;
      return filePath.toLowerCase().endsWith('.zip') ? filePath : `${filePath}.zip`;
    },
    chooseArchiveToOpen: async () => {
      const { filePaths } = await dialog.showOpenDialog(window, {
        title: archiveDialogText.openTitle,
        buttonLabel: archiveDialogText.open,
        filters,
        properties: ['openFile'],
      });
      return filePaths[0] ?? null;
    },
  };
}
