// The system's dialogs for printed sheets: where a PDF is saved, and printing it. A path comes from the person through the system, never
// from the page.
import { join } from 'node:path';
import { app, type BrowserWindow, dialog, shell } from 'electron';
import { sheetDialogText } from './shell-text.ts';

export type SheetDialogs = {
  readonly chooseSheetFile: (suggestedName: string) => Promise<string | null>;
  readonly chooseSheetFolder: () => Promise<string | null>;
  readonly printPdf: (path: string) => Promise<boolean>;
};

export function sheetDialogs(window: BrowserWindow): SheetDialogs {
  return {
    chooseSheetFile: async (suggestedName) => {
      const { filePath } = await dialog.showSaveDialog(window, {
        title: sheetDialogText.saveTitle,
        defaultPath: join(app.getPath('documents'), suggestedName),
        filters: [{ name: sheetDialogText.pdf, extensions: ['pdf'] }],
        properties: ['createDirectory', 'showOverwriteConfirmation'],
      });
      if (!filePath) return null;
      return filePath.toLowerCase().endsWith('.pdf') ? filePath : `${filePath}.pdf`;
    },
    chooseSheetFolder: async () => {
      const { filePaths } = await dialog.showOpenDialog(window, {
        title: sheetDialogText.folderTitle,
        buttonLabel: sheetDialogText.chooseFolder,
        defaultPath: app.getPath('documents'),
        properties: ['openDirectory', 'createDirectory', 'promptToCreate'],
      });
      return filePaths[0] ?? null;
    },
    /**
     * Opens it with the system's own program for PDF files, whose print dialog is the system's. Printing from a window of ours would need
     * the built-in viewer, that is plugins and an extension's pages in a window that allows neither; and until Electron 32 it printed
     * empty pages (electron/electron#43309).
     */
    printPdf: async (path) => (await shell.openPath(path)) === '',
  };
}
