// The running program against its security list: a page that was taken over gets nowhere from inside the window.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, type Program, test } from './fixtures.ts';

test.use({
  fleet: 'empty',
  // What Chromium says when a policy holds, and what the main process says when it refuses.
  // One pattern: Playwright would take a list of two for something else.
  expectedErrors: [
    /Refused to|violates the .*Content Security Policy|URL scheme "app" is not|Not allowed to (load|navigate)|404 \(Not Found\)/,
  ],
});

/** Addresses that a page must not reach, whatever way it takes. */
const outside = [
  'http://example.invalid/',
  'https://example.invalid/',
  'file:///etc/hostname',
  'ws://example.invalid/',
];

/** Waits until the program has noted something in its log. */
async function expectInLog({ dataFolder }: Program, text: string): Promise<void> {
  await expect.poll(() => readFile(path.join(dataFolder, 'lotwright.log'), 'utf8').catch(() => '')).toContain(text);
}

test.describe('the page', () => {
  test('has no Node and nothing of Electron but its one frozen object', async ({ page }) => {
    const found = await page.evaluate(() => {
      const names = ['require', 'process', 'module', 'global', 'Buffer', '__dirname', 'electron', 'ipcRenderer'];
      const { lotwright } = window;
      const before = Object.keys(lotwright.ask).length;
      try {
        Object.assign(lotwright.ask, { more: 1 });
      } catch {
        // A frozen object refuses; what counts is what is there afterwards.
      }
      return {
        globals: names.filter((name) => name in globalThis),
        parts: Object.keys(lotwright),
        isFrozen: Object.isFrozen(lotwright) && Object.keys(lotwright.ask).length === before,
      };
    });
    expect(found).toEqual({ globals: [], parts: ['ask', 'on'], isFrozen: true });
  });

  test('runs in a process of its own with the rights of a page', async ({ program }) => {
    const preferences = await program.app.evaluate(({ BrowserWindow }) => {
      const [window] = BrowserWindow.getAllWindows();
      const contents = window?.webContents as unknown as { getLastWebPreferences(): Record<string, unknown> };
      return contents.getLastWebPreferences();
    });
    expect(preferences).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webviewTag: false,
    });
  });

  test('comes with its content security policy', async ({ program }) => {
    const headers = await program.app.evaluate(async ({ session }) => {
      const response = await session.defaultSession.fetch('app://lotwright/index.html');
      return Object.fromEntries(response.headers);
    });
    expect(headers['content-security-policy']).toContain("default-src 'none'; script-src 'self'; style-src 'self'");
    expect(headers['content-security-policy']).not.toContain('unsafe');
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  test('runs no script and no style that is written into it', async ({ page }) => {
    const ran = await page.evaluate(async () => {
      const found = { inlineScript: false, handler: false, color: '' };
      Object.assign(window, { note: (name: 'inlineScript' | 'handler') => (found[name] = true) });
      const script = document.createElement('script');
      script.textContent = 'window.note("inlineScript")';
      document.body.append(script);
      const image = document.createElement('img');
      image.setAttribute('onerror', 'window.note("handler")');
      image.src = 'none.png';
      document.body.append(image);
      const style = document.createElement('style');
      style.textContent = '#probe { color: rgb(1, 2, 3) }';
      const probe = document.createElement('p');
      probe.id = 'probe';
      document.body.append(style, probe);
      await new Promise((resolve) => image.addEventListener('error', resolve));
      found.color = getComputedStyle(probe).color;
      return { ...found, isStyled: found.color === 'rgb(1, 2, 3)' };
    });
    expect(ran).toMatchObject({ inlineScript: false, handler: false, isStyled: false });
  });
});

test.describe('leaving the page', () => {
  test('by a new window is refused', async ({ page, program }) => {
    expect(await page.evaluate(() => window.open('app://lotwright/index.html') === null)).toBe(true);
    expect(await page.evaluate(() => window.open('about:blank') === null)).toBe(true);
    expect(program.app.windows()).toHaveLength(1);
    await expectInLog(program, 'a new window was refused');
  });

  for (const address of [...outside.filter((one) => !one.startsWith('ws')), 'data:text/html,x', 'app://other/']) {
    test(`by going to ${address} is refused`, async ({ page }) => {
      const start = page.url();
      await page.evaluate((to) => {
        location.href = to;
      }, address);
      await page.evaluate((to) => {
        const link = document.createElement('a');
        link.href = to;
        document.body.append(link);
        link.click();
      }, address);
      await page.evaluate(() => window.lotwright.ask['desk:read']({}));
      expect(page.url()).toBe(start);
      expect(await page.evaluate(() => 'lotwright' in window)).toBe(true);
    });
  }

  test('by embedding another page or sending a form is refused', async ({ page }) => {
    const start = page.url();
    const embedded = await page.evaluate(async () => {
      const frame = document.createElement('iframe');
      frame.src = 'app://lotwright/index.html';
      const done = new Promise((resolve) => frame.addEventListener('load', resolve, { once: true }));
      document.body.append(frame);
      await done;
      const form = document.createElement('form');
      form.method = 'post';
      form.action = 'app://lotwright/index.html';
      document.body.append(form);
      form.submit();
      return frame.contentDocument?.querySelector('#page') !== null && frame.contentDocument !== null;
    });
    expect(embedded).toBe(false);
    expect(page.url()).toBe(start);
  });
});

test.describe('requests', () => {
  test('from the page to anything outside fail', async ({ page }) => {
    const reached = await page.evaluate(async (addresses) => {
      const open: string[] = [];
      for (const address of addresses) {
        const byFetch = fetch(address, { mode: 'no-cors' }).then(
          () => true,
          () => false,
        );
        const byImage = new Promise<boolean>((resolve) => {
          const image = new Image();
          image.onload = () => resolve(true);
          image.onerror = () => resolve(false);
          image.src = address;
        });
        if ((await byFetch) || (await byImage)) open.push(address);
      }
      return open;
    }, outside);
    expect(reached).toEqual([]);
  });

  test('that get past the page’s policy are refused by the session', async ({ program }) => {
    const answers = await program.app.evaluate(
      async ({ session }, addresses) => {
        const told: string[] = [];
        for (const address of addresses) {
          const answer = await session.defaultSession.fetch(address).then(
            (response) => `${response.status}`,
            (error: Error) => error.message,
          );
          told.push(answer);
        }
        return told;
      },
      outside.filter((one) => !one.startsWith('ws')),
    );
    for (const answer of answers) expect(answer).toMatch(/ERR_BLOCKED_BY_CLIENT|^403$/);
    await expectInLog(program, 'a https request (');
  });

  for (const [method, address, status] of [
    ['GET', 'app://lotwright/index.html', 200],
    ['GET', 'app://lotwright/..%2f..%2fpackage.json', 404],
    ['GET', 'app://lotwright/%2e%2e/%2e%2e/package.json', 404],
    ['GET', 'app://lotwright/../main.cjs', 404],
    ['GET', 'app://lotwright/..%5cmain.cjs', 404],
    ['GET', 'app://lotwright/nothing', 404],
    ['POST', 'app://lotwright/index.html', 405],
    ['PUT', 'app://lotwright/index.html', 405],
  ] as const) {
    test(`${method} ${address} is answered with ${status}`, async ({ program }) => {
      const answer = await program.app.evaluate(
        async ({ session }, call) => (await session.defaultSession.fetch(call.address, { method: call.method })).status,
        { method, address },
      );
      expect(answer).toBe(status);
    });
  }
});

test('no permission is granted', async ({ page }) => {
  const states = await page.evaluate(async () => {
    const names = ['geolocation', 'notifications', 'camera', 'microphone', 'clipboard-read', 'midi'];
    const told = await Promise.all(
      names.map(async (name) => (await navigator.permissions.query({ name: name as PermissionName })).state),
    );
    const notification = await Notification.requestPermission();
    return [...told, notification];
  });
  expect(new Set(states)).toEqual(new Set(['denied']));
});

test.describe('the bridge', () => {
  test('answers our page, and says of a bad call which field is wrong', async ({ page }) => {
    const answers = await page.evaluate(async () => {
      const { ask } = window.lotwright;
      return {
        good: await ask['desk:read']({}),
        extra: await ask['desk:read']({ path: '/etc' } as never),
        wrong: await ask['desk:set-theme']({ theme: 'purple' as never }),
        huge: await ask['sheet:open']({ fileName: 'a'.repeat(5_000_000) }),
      };
    });
    expect(answers.good.ok).toBe(true);
    expect(answers.extra).toMatchObject({ ok: false, error: { code: 'bad-request' } });
    expect(answers.wrong).toMatchObject({ ok: false, error: { code: 'bad-request', problems: [{ field: 'theme' }] } });
    expect(answers.huge).toMatchObject({ ok: false, error: { code: 'bad-request', problems: [] } });
  });

  test('does not open a sheet by a path', async ({ page }) => {
    for (const fileName of ['../shop.json', '/etc/hostname', '..%2fshop.json', 'C:\\Windows\\notepad.exe', '.pdf']) {
      const answer = await page.evaluate((name) => window.lotwright.ask['sheet:open']({ fileName: name }), fileName);
      expect(answer, fileName).toMatchObject({ ok: false, error: { code: 'not-found' } });
    }
  });

  test('does not answer another window, even one with the same preload', async ({ program }) => {
    const answer = await program.app.evaluate(async ({ BrowserWindow, app }) => {
      const preload = `${app.getAppPath()}/app/built/preload.cjs`;
      const other = new BrowserWindow({
        show: false,
        webPreferences: { preload, sandbox: true, contextIsolation: true },
      });
      try {
        await other.loadURL('app://lotwright/index.html');
        return await other.webContents.executeJavaScript('window.lotwright.ask["desk:read"]({})');
      } finally {
        other.destroy();
      }
    });
    expect(answer).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    await expectInLog(program, 'desk:read refused: not asked by our own page');
  });

  test('does not answer our own window when it shows something else', async ({ program }) => {
    const answer = await program.app.evaluate(async ({ BrowserWindow }) => {
      const [window] = BrowserWindow.getAllWindows();
      // Leaving while it still loads would end in the news that the loading was broken off.
      if (window?.webContents.isLoading())
        await new Promise<void>((resolve) => window.webContents.once('did-stop-loading', () => resolve()));
      await window?.loadURL('about:blank');
      return await window?.webContents.executeJavaScript('window.lotwright.ask["desk:read"]({})');
    });
    expect(answer).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
  });
});

test('a second start of the program shows the window of the first and ends', async ({ program }) => {
  await program.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.hide());
  const { spawnfile, spawnargs } = program.app.process();
  const args = spawnargs.slice(1).filter((arg) => !/^--(inspect|remote-debugging)/.test(arg));
  const second = spawn(spawnfile, args, { stdio: 'ignore' });
  const [status] = await once(second, 'exit');
  expect(status).toBe(0);
  const isVisible = () =>
    program.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().map((window) => window.isVisible()));
  await expect.poll(isVisible).toEqual([true]);
});
