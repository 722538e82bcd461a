// The window's menu: each entry does its one thing, by mouse and by key.
import type { MenuItemConstructorOptions } from 'electron';
import { describe, expect, it } from 'vitest';
import { events } from '../../app/contract/events.ts';
import { menuTemplate } from '../../app/shell/menu-template.ts';

function build({ isMac = false, hasDeveloperTools = false } = {}) {
  const done: string[] = [];
  const actions = {
    send: (command: string) => void done.push(command),
    zoom: (direction: number) => void done.push(`zoom ${direction}`),
  };
  const items = menuTemplate(actions, { isMac, hasDeveloperTools }).flatMap(
    (menu) => (menu.submenu ?? []) as MenuItemConstructorOptions[],
  );
  function choose(find: (item: MenuItemConstructorOptions) => boolean): string | undefined {
    const item = items.find(find);
    (item?.click as (() => void) | undefined)?.();
    return done.pop();
  }
  return { items, choose };
}

function byKey(key: string) {
  return (item: MenuItemConstructorOptions) => item.accelerator === key;
}

describe('the menu', () => {
  it('sends every command that the page listens for, by a key of its own', () => {
    const { items, choose } = build();
    const sent = items
      .filter((item) => item.click && item.accelerator)
      .map((item) => choose((other) => other === item));
    const commands = events['menu:chosen'].shape.command.options;
    expect(sent.filter((what) => !what?.startsWith('zoom')).sort()).toEqual([...commands].sort());
  });

  it.each([
    ['Take a vehicle in', 'take-in'],
    ['Open another fleet folder…', 'choose-fleet'],
    ['Undo change', 'undo'],
    ['Redo change', 'redo'],
    ['Lot', 'lot'],
    ['Next jobs', 'next-jobs'],
    ['Waiting', 'waiting'],
    ['Sheets', 'sheets'],
    ['Setup', 'setup'],
    ['Money', 'money'],
    ['Find', 'find'],
    ['About Lotwright', 'about'],
    ['Report of a fault…', 'report'],
  ])('%s does %s', (label, command) => {
    expect(build().choose((item) => item.label === label)).toBe(command);
  });

  it.each([
    ['CommandOrControl+Plus', 'zoom 1'],
    ['CommandOrControl+=', 'zoom 1'],
    ['CommandOrControl+numadd', 'zoom 1'],
    ['CommandOrControl+-', 'zoom -1'],
    ['CommandOrControl+numsub', 'zoom -1'],
    ['CommandOrControl+0', 'zoom 0'],
    ['CommandOrControl+num0', 'zoom 0'],
  ])('%s is %s', (key, what) => {
    expect(build().choose(byKey(key))).toBe(what);
  });

  it.each([true, false])('gives no key twice (on a Mac: %s)', (isMac) => {
    const { items } = build({ isMac, hasDeveloperTools: true });
    const keys = items.flatMap((item) => item.accelerator ?? []);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('leaves typed text to the text field: cut, copy, paste and taking typing back', () => {
    const roles = build().items.map((item) => item.role);
    expect(roles).toEqual(expect.arrayContaining(['undo', 'redo', 'cut', 'copy', 'paste', 'selectAll', 'quit']));
  });

  it('has developer tools only where it is told to', () => {
    const roles = (hasDeveloperTools: boolean) => build({ hasDeveloperTools }).items.map((item) => item.role);
    expect(roles(false)).not.toContain('toggleDevTools');
    expect(roles(false)).not.toContain('reload');
    expect(roles(true)).toContain('toggleDevTools');
  });

  it('has a word for every entry that is shown', () => {
    const shown = build({ hasDeveloperTools: true }).items.filter((item) => item.type !== 'separator');
    for (const item of shown.filter((entry) => entry.visible !== false)) expect(item.label, item.role).toBeTruthy();
  });
});
