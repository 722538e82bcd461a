// Chooses the Electron that runs the built program in development and in tests, and says which and why.
// Must not build the program, and must not install system packages.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fallbackRuntime, fallbackVersion } from './fallback-runtime.mjs';
import { fetchOfficialRuntime, findOfficialRuntime } from './official-runtime.mjs';
import { projectFolder } from './project-paths.mjs';
import { isRoot } from './run-command.mjs';

/**
 * @typedef {object} Runtime
 * @property {string} executablePath
 * @property {string[]} args what the runtime itself needs, before the program's own arguments
 * @property {string} reason one line for a person: which runtime this is and why
 */

/**
 * A runtime with Electron's default app is told by an argument which program to run; one without runs the
 * program that lies inside it.
 * @param {string} executablePath
 * @returns {string[]}
 */
function programArgs(executablePath) {
  const beside = path.dirname(executablePath);
  const resources = [path.join(beside, 'resources'), path.join(beside, '..', 'Resources')];
  if (resources.some((folder) => existsSync(path.join(folder, 'default_app.asar')))) return [projectFolder];
  if (resources.some((folder) => existsSync(path.join(folder, 'app')))) return [];
  throw new Error(`${executablePath} carries neither Electron's default app nor a program at resources/app.`);
}

/**
 * @param {string} executablePath
 * @param {string} reason
 * @returns {Runtime}
 */
function runtimeAt(executablePath, reason) {
  // Chromium refuses to run sandboxed as root; everywhere else its sandbox stays on.
  const switches = process.platform === 'linux' && isRoot() ? ['--no-sandbox'] : [];
  return { executablePath, args: [...programArgs(executablePath), ...switches], reason };
}

/**
 * Finds an Electron to run: the one named by LOTWRIGHT_ELECTRON, else the official binary, else on Linux x64
 * the fallback of the development tools.
 * @returns {Promise<Runtime>}
 * @throws where there is none, saying what to do
 */
export async function electronRuntime() {
  const named = process.env.LOTWRIGHT_ELECTRON;
  if (named) {
    if (!existsSync(named)) throw new Error(`LOTWRIGHT_ELECTRON names ${named}, which does not exist.`);
    return runtimeAt(path.resolve(named), `Electron runtime: ${named}, because LOTWRIGHT_ELECTRON names it.`);
  }
  const present = findOfficialRuntime();
  const { runtime, reason } = present ? { runtime: present, reason: '' } : await fetchOfficialRuntime();
  if (runtime !== null) {
    const line = `Electron runtime: the official ${runtime.version}, because the npm package electron has its binary.`;
    return runtimeAt(runtime.executablePath, line);
  }
  if (process.platform === 'linux' && process.arch === 'x64') {
    const line = `Electron runtime: ${fallbackVersion}, the fallback for development, because ${reason}.`;
    return runtimeAt(await fallbackRuntime(), line);
  }
  throw new Error(
    `There is no Electron to run: ${reason}. Run "npx install-electron" with a connection that reaches its ` +
      'download, or set LOTWRIGHT_ELECTRON to the path of an Electron executable.',
  );
}
