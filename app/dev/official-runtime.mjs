// Finds the binary of the npm package electron and lets that package fetch it once. A machine that
// cannot reach the download must notice within seconds, and not again before the next day.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { cacheFolder } from './project-paths.mjs';

const retryAfterMs = 24 * 60 * 60 * 1000;
const firstBytesWithinMs = 10_000;
const stalledAfterMs = 30_000;

/**
 * @typedef {{executablePath: string, version: string}} OfficialRuntime
 */

/** The folder of the npm package, or null where it is not installed. */
function packageFolder() {
  try {
    return path.dirname(createRequire(import.meta.url).resolve('electron/package.json'));
  } catch {
    return null;
  }
}

/**
 * The official binary that is already on this disk.
 * @returns {OfficialRuntime | null}
 */
export function findOfficialRuntime() {
  const folder = packageFolder();
  if (folder === null) return null;
  try {
    const dist = path.join(folder, 'dist');
    const executablePath = path.join(dist, readFileSync(path.join(folder, 'path.txt'), 'utf8').trim());
    const version = readFileSync(path.join(dist, 'version'), 'utf8').trim().replace(/^v/, '');
    return existsSync(executablePath) ? { executablePath, version } : null;
  } catch {
    return null;
  }
}

/** @param {string} folder */
function bytesIn(folder) {
  let bytes = 0;
  try {
    for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
      const entry = statSync(path.join(folder, name), { throwIfNoEntry: false });
      if (entry?.isFile()) bytes += entry.size;
    }
  } catch {
    // The downloader may remove a folder while it is being counted; the next look counts again.
  }
  return bytes;
}

/**
 * Runs the package's own installer, ending it when nothing has come or nothing comes any more.
 * @param {string} installer
 * @param {string} temporaryFolder
 * @returns {Promise<boolean>}
 */
function runInstaller(installer, temporaryFolder) {
  return new Promise((resolve) => {
    const env = { ...process.env, TMPDIR: temporaryFolder, TEMP: temporaryFolder, TMP: temporaryFolder };
    const child = spawn(process.execPath, [installer], { stdio: 'ignore', env });
    let seenBytes = 0;
    let lastProgressAt = Date.now();
    const watch = setInterval(() => {
      const bytes = bytesIn(temporaryFolder);
      if (bytes > seenBytes) {
        seenBytes = bytes;
        lastProgressAt = Date.now();
      }
      if (Date.now() - lastProgressAt > (seenBytes > 0 ? stalledAfterMs : firstBytesWithinMs)) child.kill('SIGKILL');
    }, 500);
    child.on('error', () => resolve(false));
    child.on('close', (status) => {
      clearInterval(watch);
      resolve(status === 0);
    });
  });
}

/**
 * Lets the npm package electron fetch its own binary, unless that failed within the last day.
 * @returns {Promise<{runtime: OfficialRuntime | null, reason: string}>} the reason tells why there is none
 */
export async function fetchOfficialRuntime() {
  const folder = packageFolder();
  if (folder === null) return { runtime: null, reason: 'the npm package electron is not installed' };
  const memory = path.join(cacheFolder, 'official-runtime-not-fetched');
  const failedAt = statSync(memory, { throwIfNoEntry: false })?.mtimeMs;
  const reason = 'the official binary is not here and could not be fetched';
  if (failedAt !== undefined && Date.now() - failedAt < retryAfterMs) {
    return { runtime: null, reason: `${reason} when last tried, less than a day ago` };
  }
  const temporaryFolder = path.join(cacheFolder, `official-runtime-${process.pid}`);
  mkdirSync(temporaryFolder, { recursive: true });
  const fetched = await runInstaller(path.join(folder, 'install.js'), temporaryFolder);
  rmSync(temporaryFolder, { recursive: true, force: true });
  const runtime = fetched ? findOfficialRuntime() : null;
  if (runtime === null) writeFileSync(memory, 'Delete this file to try the download again at once.\n');
  else rmSync(memory, { force: true });
  return { runtime, reason };
}
