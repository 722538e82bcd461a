// The window's own menu as data: words, keys and what each entry does. Pure; menu.ts gives it to Electron.
import type { MenuItemConstructorOptions } from 'electron';
import type { EventPayload } from '../contract/events.ts';
import { menuText } from './shell-text.ts';

export type MenuCommand = EventPayload<'menu:chosen'>['command'];

export type MenuActions = {
  /** Tells the page. */
  readonly send: (command: MenuCommand) => void;
  readonly zoom: (direction: 1 | -1 | 0) => void;
};

export type MenuOptions = { readonly isMac: boolean; readonly hasDeveloperTools: boolean };

const separator: MenuItemConstructorOptions = { type: 'separator' };

/** The same action on another key: keyboards differ in where they have + and -, and many have a number pad. */
function hiddenKeys(accelerators: readonly string[], click: () => void): MenuItemConstructorOptions[] {
  return accelerators.map((accelerator) => ({ label: accelerator, accelerator, click, visible: false }));
}

function developerItems({ hasDeveloperTools }: MenuOptions): MenuItemConstructorOptions[] {
  if (!hasDeveloperTools) return [];
  return [
    separator,
    { role: 'reload', label: menuText.reload },
    { role: 'toggleDevTools', label: menuText.developerTools },
  ];
}

function viewItems(actions: MenuActions, options: MenuOptions): MenuItemConstructorOptions[] {
  const { send, zoom } = actions;
  // With Alt, as in the page's own list of keys; on a Mac that would type another sign.
  const screenKey = options.isMac ? 'Command' : 'Alt';
  return [
    { label: menuText.lot, accelerator: `${screenKey}+1`, click: () => send('lot') },
    { label: menuText.nextJobs, accelerator: `${screenKey}+2`, click: () => send('next-jobs') },
    { label: menuText.waiting, accelerator: `${screenKey}+3`, click: () => send('waiting') },
    { label: menuText.money, accelerator: `${screenKey}+4`, click: () => send('money') },
    { label: menuText.sheets, accelerator: `${screenKey}+5`, click: () => send('sheets') },
    { label: menuText.setup, accelerator: `${screenKey}+6`, click: () => send('setup') },
    separator,
    { label: menuText.larger, accelerator: 'CommandOrControl+Plus', click: () => zoom(1) },
    ...hiddenKeys(['CommandOrControl+=', 'CommandOrControl+numadd'], () => zoom(1)),
    { label: menuText.smaller, accelerator: 'CommandOrControl+-', click: () => zoom(-1) },
    ...hiddenKeys(['CommandOrControl+numsub'], () => zoom(-1)),
    { label: menuText.usualSize, accelerator: 'CommandOrControl+0', click: () => zoom(0) },
    ...hiddenKeys(['CommandOrControl+num0'], () => zoom(0)),
    separator,
    { role: 'togglefullscreen', label: menuText.fullScreen },
    ...developerItems(options),
  ];
}

function editItems({ send }: MenuActions, { isMac }: MenuOptions): MenuItemConstructorOptions[] {
  return [
    { role: 'undo', label: menuText.undoTyping, accelerator: 'CommandOrControl+Z' },
    { role: 'redo', label: menuText.redoTyping, accelerator: isMac ? 'Command+Shift+Z' : 'Control+Y' },
    separator,
    { role: 'cut', label: menuText.cut },
    { role: 'copy', label: menuText.copy },
    { role: 'paste', label: menuText.paste },
    { role: 'selectAll', label: menuText.selectAll },
    separator,
    { label: menuText.find, accelerator: 'CommandOrControl+F', click: () => send('find') },
    separator,
    // Keys that no text field wants, on any keyboard layout: a saved change is not a typed letter.
    { label: menuText.undoChange, accelerator: 'F9', click: () => send('undo') },
    { label: menuText.redoChange, accelerator: 'Shift+F9', click: () => send('redo') },
  ];
}

export function menuTemplate(actions: MenuActions, options: MenuOptions): MenuItemConstructorOptions[] {
  const { send } = actions;
  return [
    // On a Mac the first menu is always the program's own; the system words it.
    ...(options.isMac ? [{ role: 'appMenu' } as const] : []),
    {
      label: menuText.file,
      submenu: [
        { label: menuText.takeIn, accelerator: 'CommandOrControl+N', click: () => send('take-in') },
        separator,
        { label: menuText.chooseFleet, accelerator: 'CommandOrControl+O', click: () => send('choose-fleet') },
        separator,
        { label: menuText.lock, accelerator: 'CommandOrControl+L', click: () => send('lock') },
        separator,
        { role: 'quit', label: menuText.quit, accelerator: 'CommandOrControl+Q' },
      ],
    },
    { label: menuText.edit, submenu: editItems(actions, options) },
    { label: menuText.view, submenu: viewItems(actions, options) },
    {
      label: menuText.help,
      submenu: [
        { label: menuText.about, accelerator: 'F1', click: () => send('about') },
        { label: menuText.report, accelerator: 'Shift+F1', click: () => send('report') },
      ],
    },
  ];
}
