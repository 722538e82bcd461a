// The window of the running program: opens as it was left, follows its menu, and comes back when its page has crashed.
import { expect, type Program, test } from './fixtures.ts';

test.use({ fleet: 'empty' });

/** What Electron says of the one window. */
function look({ app }: Program) {
  return app.evaluate(({ BrowserWindow }) => {
    const [window] = BrowserWindow.getAllWindows();
    if (!window) throw new Error('There is no window.');
    return {
      bounds: window.getBounds(),
      isVisible: window.isVisible(),
      background: window.getBackgroundColor(),
      zoom: Math.round(window.webContents.getZoomFactor() * 100),
    };
  });
}

/** Chooses an entry of the window's menu by its words. */
function choose({ app }: Program, label: string): Promise<void> {
  return app.evaluate(({ Menu }, words) => {
    const menus = Menu.getApplicationMenu()?.items ?? [];
    const entry = menus.flatMap((menu) => menu.submenu?.items ?? []).find((item) => item.label === words);
    if (!entry) throw new Error(`The menu has no ${words}.`);
    entry.click();
  }, label);
}

test('opens again where it was, in the same theme and size', async ({ program }) => {
  const bounds = { x: 40, y: 60, width: 1200, height: 760 };
  await expect.poll(async () => (await look(program)).isVisible).toBe(true);
  await program.app.evaluate(({ BrowserWindow }, to) => BrowserWindow.getAllWindows()[0]?.setBounds(to), bounds);
  await choose(program, 'Larger');
  await program.page.evaluate(() => window.lotwright.ask['desk:set-theme']({ theme: 'dark' }));
  await program.close();
  await program.start();
  await expect.poll(() => look(program)).toEqual({ bounds, isVisible: true, background: '#16191B', zoom: 110 });
});

test('keeps its size when the zoom has come to its end', async ({ program }) => {
  for (let step = 0; step < 12; step++) await choose(program, 'Larger');
  await expect.poll(async () => (await look(program)).zoom).toBe(200);
  for (let step = 0; step < 12; step++) await choose(program, 'Smaller');
  await expect.poll(async () => (await look(program)).zoom).toBe(75);
  await choose(program, 'Usual size');
  await expect.poll(async () => (await look(program)).zoom).toBe(100);
});

test('goes to the screen that its menu names', async ({ program, page }) => {
  await expect(page.getByRole('link', { name: 'Lot', exact: true })).toBeVisible();
  for (const screen of ['Setup', 'Sheets', 'Lot']) {
    await choose(program, screen);
    await expect(page.getByRole('heading', { name: screen, level: 1 })).toBeVisible();
  }
});

test.describe('when the page has crashed', () => {
  test.use({ expectedErrors: [/its process crashed/] });

  test('loads it again', async ({ program }) => {
    await expect.poll(async () => (await look(program)).isVisible).toBe(true);
    const isBack = await program.app.evaluate(async ({ BrowserWindow }) => {
      const contents = BrowserWindow.getAllWindows()[0]?.webContents;
      const loaded = new Promise((resolve) => contents?.once('did-finish-load', () => resolve(true)));
      contents?.forcefullyCrashRenderer();
      await loaded;
      return contents?.executeJavaScript('window.lotwright.ask["desk:read"]({}).then((answer) => answer.ok)');
    });
    expect(isBack).toBe(true);
  });
});
