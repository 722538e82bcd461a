// Gives the menu to Electron. The page carries out what its entries say.
import { Menu } from 'electron';
import { type MenuActions, type MenuOptions, menuTemplate } from './menu-template.ts';

export function setMenu(actions: MenuActions, options: MenuOptions): void {
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(actions, options)));
}
