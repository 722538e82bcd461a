// Gives the menu to Electron, and carries out what it does to the window itself. The page carries out the rest.
import { app, type BrowserWindow, dialog, Menu } from 'electron';
import { type MenuActions, type MenuOptions, menuTemplate } from './menu-template.ts';
import { aboutText } from './shell-text.ts';

function showAbout(window: BrowserWindow): void {
  void dialog.showMessageBox(window, {
    type: 'info',
    title: aboutText.title,
    message: aboutText.message(app.getVersion()),
    detail: aboutText.detail,
    buttons: [aboutText.close],
  });
}

export function setMenu(window: BrowserWindow, actions: Omit<MenuActions, 'showAbout'>, options: MenuOptions): void {
  const template = menuTemplate({ ...actions, showAbout: () => showAbout(window) }, options);
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}
