// Made ready once before the end-to-end tests: the build, a runtime, the system libraries and a screen.
// Playwright runs it in its own process; the tests read what was found from their environment.
import process from 'node:process';
import { buildIfStale } from './build.mjs';
import { hasDisplay, openDisplay } from './display.mjs';
import { electronRuntime } from './electron-runtime.mjs';
import { projectFolder } from './project-paths.mjs';
import { ensureSystemLibraries } from './system-libraries.mjs';

/** @returns {Promise<() => void>} what to do after the last test */
// biome-ignore lint/style/noDefaultExport: Playwright takes a global setup by its default export.
export default async function prepareGround() {
  await buildIfStale();
  const runtime = await electronRuntime();
  console.log(runtime.reason);
  await ensureSystemLibraries({
    executablePath: runtime.executablePath,
    needsDisplay: !hasDisplay(),
    needsPdfTools: true,
  });
  const display = await openDisplay();
  Object.assign(process.env, display.env);
  process.env.LOTWRIGHT_E2E = JSON.stringify({
    executablePath: runtime.executablePath,
    args: [...runtime.args, ...display.args],
    projectFolder,
  });
  return display.close;
}
