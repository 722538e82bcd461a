// The start of the program: takes the lock, declares the scheme, waits until Electron is ready, and puts the parts together.
// No logic of its own: each part is in app/shell, app/services or app/storage.
import { randomUUID } from 'node:crypto';
import { hostname, userInfo } from 'node:os';
import { app, clipboard, session } from 'electron';
import { openDeskSession } from './services/desk-session.ts';
import { archiveDialogs } from './shell/archive-dialogs.ts';
import { awaitDriverSwitch, driverAttached } from './shell/await-driver.ts';
import { localToday, presentInstant } from './shell/clock.ts';
import {
  askAboutStartTrouble,
  chooseFolder,
  openFile,
  showFolder,
  tellNotice,
  tellStartFailed,
} from './shell/dialogs.ts';
import { firstFolder } from './shell/first-folder.ts';
import { registerChannels } from './shell/ipc.ts';
import {
  closeBeforeQuitting,
  focusOnSecondStart,
  guardAllContents,
  hardenProcess,
  reportFailures,
  watchTheDay,
} from './shell/lifecycle.ts';
import { openLog } from './shell/log.ts';
import { setMenu } from './shell/menu.ts';
import { openDesk } from './shell/open-desk.ts';
import { listPageFiles } from './shell/page-files.ts';
import { createPassingClipboard } from './shell/passing-clipboard.ts';
import { fleetArgument, programPaths } from './shell/paths.ts';
import { programOutside } from './shell/program-facts.ts';
import { declareScheme, serveScheme } from './shell/scheme.ts';
import { eventSender } from './shell/send-event.ts';
import { applySessionPolicy } from './shell/session-policy.ts';
import { sheetDialogs } from './shell/sheet-dialogs.ts';
import { applyTheme, changeZoom, openWindow, showWhenDrawn } from './shell/window.ts';
import { loadDeskStoreClass, openDeskSettings } from './storage/desk-settings.ts';

const isDevelopment = !app.isPackaged;
const hasDeveloperTools = isDevelopment && app.commandLine.hasSwitch('developer');
const mayStart = app.commandLine.hasSwitch(awaitDriverSwitch) ? driverAttached() : Promise.resolve();
const dataFolder = app.getPath('userData');
const paths = programPaths({ built: import.meta.dirname, data: dataFolder, resources: process.resourcesPath });
const log = openLog({ file: paths.logFile, clock: presentInstant, echo: isDevelopment });

async function startProgram(): Promise<void> {
  const StoreClass = await loadDeskStoreClass();
  await Promise.all([app.whenReady(), mayStart]);
  applySessionPolicy(session.defaultSession, log, hasDeveloperTools);
  serveScheme(session.defaultSession.protocol, await listPageFiles(paths.pageFolder, hasDeveloperTools));

  const deskSettings = openDeskSettings({ folder: dataFolder, clock: presentInstant, StoreClass });
  const window = openWindow({ preloadFile: paths.preloadFile, settings: deskSettings, hasDeveloperTools, log });
  const emit = eventSender(window, { checksOutput: isDevelopment, log });
  const passingClipboard = createPassingClipboard(clipboard, (error) => log.warn('clipboard', 'not cleared', error));
  const { lastFleetFolder } = deskSettings.get();
  const told = fleetArgument(process.argv, process.cwd());

  // The page loads while the fleet is being read; what it asks meanwhile is answered when the fleet is open.
  const opening = openDesk(
    await firstFolder(told, lastFleetFolder, paths, log),
    (fleetFolder) =>
      openDeskSession({
        fleetFolder,
        clock: presentInstant,
        today: localToday,
        newIdentifier: randomUUID,
        owner: { user: userInfo().username, host: hostname(), processId: process.pid },
        deskSettings,
        sample: { shipped: paths.shippedSample, copy: paths.sampleCopy },
        fontsFolder: paths.fontsFolder,
        appVersion: app.getVersion(),
        outside: {
          ...sheetDialogs(window),
          ...archiveDialogs(window),
          chooseFolder: () => chooseFolder(window),
          openFile,
          showFolder,
          applyTheme,
          ...passingClipboard,
          ...programOutside(import.meta.dirname, paths.logFile),
        },
        emit,
        report: (what, error) => log.error('desk', what, error),
      }),
    askAboutStartTrouble,
    () => chooseFolder(null),
  );
  registerChannels({ window, desk: opening, log, checksOutput: isDevelopment });
  focusOnSecondStart(window);
  setMenu(
    {
      send: (command) => emit('menu:chosen', { command }),
      zoom: (direction) => changeZoom(window, deskSettings, direction),
    },
    { isMac: process.platform === 'darwin', hasDeveloperTools },
  );
  const drawn = showWhenDrawn(window, opening);
  const desk = await opening;
  if (desk === null) return app.quit();
  closeBeforeQuitting(window, desk.session.close, log);
  if (desk.isNamed && desk.folder !== told) deskSettings.change({ lastFleetFolder: desk.folder });
  watchTheDay(desk.session.dayMayHaveChanged);
  log.info('program', `started: ${app.getVersion()}, Electron ${process.versions.electron}, ${process.platform}`);
  await drawn;
  if (deskSettings.notice) tellNotice(window, deskSettings.notice);
}

if (app.requestSingleInstanceLock()) {
  hardenProcess();
  declareScheme();
  reportFailures(log);
  guardAllContents(log);
  startProgram().catch((error) => {
    log.error('program', 'Uncaught exception at the start', error);
    tellStartFailed();
    app.exit(1);
  });
} else {
  app.quit();
}
