// What the page's process may do, as data that a test asserts one by one. Do not change an entry without reading Electron's
// security guide: the page gets a page's rights and none more.

export const webPreferences = {
  sandbox: true,
  contextIsolation: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  plugins: false,
  webgl: false,
  navigateOnDragDrop: false,
  // Fetches dictionaries from the network where it is on.
  spellcheck: false,
  // The page's own dialogs are used instead; the system's leave fields without focus on Windows.
  disableDialogs: true,
} as const;
