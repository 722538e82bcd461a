// The one window: opened where it was, in the colour of the theme, shown when there is something to see. Draws nothing itself.
import { app, BrowserWindow, nativeTheme, screen } from 'electron';
import type { Theme } from '../contract/views.ts';
import type { DeskSettings } from '../storage/desk-settings.ts';
import type { Log } from './log.ts';
import { pageAddress } from './page-origin.ts';
import { placeWindow, smallestWindow } from './place-window.ts';
import { webPreferences } from './web-preferences.ts';
import { backgroundOf } from './window-background.ts';
import { nextZoomPercent } from './zoom.ts';

/** Chromium's net error for loading that was given up, not failed. */
const aborted = -3;

export type WindowOptions = {
  readonly preloadFile: string;
  readonly settings: { readonly get: () => DeskSettings; readonly change: (part: Partial<DeskSettings>) => unknown };
  readonly hasDeveloperTools: boolean;
  readonly log: Log;
};

export function workAreas(): [Electron.Rectangle, ...Electron.Rectangle[]] {
  const main = screen.getPrimaryDisplay();
  const others = screen.getAllDisplays().filter((display) => display.id !== main.id);
  return [main.workArea, ...others.map((display) => display.workArea)];
}

/** Makes the window without showing it, so that a page on a slow disk is never seen half drawn. */
export function openWindow({ preloadFile, settings, hasDeveloperTools, log }: WindowOptions): BrowserWindow {
  const { window: saved, theme, zoomPercent } = settings.get();
  nativeTheme.themeSource = theme;
  const window = new BrowserWindow({
    ...placeWindow(saved, workAreas()),
    minWidth: smallestWindow.width,
    minHeight: smallestWindow.height,
    show: false,
    title: 'Lotwright',
    // Opaque, or text is drawn blurred; and no white flash before the page is there.
    backgroundColor: backgroundOf(nativeTheme.shouldUseDarkColors),
    webPreferences: {
      ...webPreferences,
      preload: preloadFile,
      devTools: hasDeveloperTools,
      zoomFactor: zoomPercent / 100,
    },
  });
  if (saved?.isMaximised) window.maximize();
  keepPlace(window, settings);
  const { webContents } = window;
  webContents.on('did-finish-load', () => webContents.setZoomFactor(settings.get().zoomPercent / 100));
  webContents.on('zoom-changed', (_event, way) => changeZoom(window, settings, way === 'in' ? 1 : -1));
  nativeTheme.on('updated', () => {
    if (!window.isDestroyed()) window.setBackgroundColor(backgroundOf(nativeTheme.shouldUseDarkColors));
  });
  reloadAfterCrash(window, log);
  return window;
}

export function applyTheme(theme: Theme): void {
  nativeTheme.themeSource = theme;
}

export function changeZoom(window: BrowserWindow, settings: WindowOptions['settings'], direction: 1 | -1 | 0): void {
  const zoomPercent = nextZoomPercent(settings.get().zoomPercent, direction);
  window.webContents.setZoomFactor(zoomPercent / 100);
  settings.change({ zoomPercent });
}

/** Loads the page at once; shows it when it is drawn and the fleet is open. Never shown when `desk` ends in null. */
export async function showWhenDrawn(window: BrowserWindow, desk: Promise<unknown>): Promise<void> {
  const isDrawn = new Promise<void>((resolve) => window.once('ready-to-show', () => resolve()));
  await Promise.all([isDrawn, loadPage(window)]);
  const isOpen = (await desk) !== null;
  if (isOpen && !window.isDestroyed()) window.show();
}

/** Fails only where the page itself cannot be had. Loading ends early too when the program is quit or a navigation refused. */
async function loadPage(window: BrowserWindow): Promise<void> {
  let failure = '';
  window.webContents.on('did-fail-load', (_event, code, description, address, isMainFrame) => {
    if (isMainFrame && address === pageAddress && code !== aborted) failure = description;
  });
  let isQuitting = false;
  app.once('before-quit', () => {
    isQuitting = true;
  });
  await window.loadURL(pageAddress).catch(() => undefined);
  if (failure !== '' && !isQuitting) throw new Error(`The page did not load: ${failure}`);
}

function keepPlace(window: BrowserWindow, settings: WindowOptions['settings']): void {
  function keep(): void {
    settings.change({ window: { ...window.getNormalBounds(), isMaximised: window.isMaximized() } });
  }
  window.on('close', keep);
  // On Windows neither quitting nor closing is announced when the person signs out.
  window.on('query-session-end', keep);
}

/** Loads the page again when its process has ended, but not over and over. */
function reloadAfterCrash(window: BrowserWindow, log: Log): void {
  const calmMilliseconds = 10_000;
  let lastAt = Number.NEGATIVE_INFINITY;
  window.webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit') return;
    const now = performance.now();
    const isFirst = now - lastAt > calmMilliseconds;
    lastAt = now;
    log.error('page', `the process of the page has ended: ${reason}`);
    if (isFirst && !window.isDestroyed()) void window.loadURL(pageAddress);
  });
}
