// Makes ready what the program needs to run from here: the build, a runtime, the system libraries and a screen.
// For every tool that starts the program: start, end-to-end tests, bench, screenshots.
import process from 'node:process';
import { buildIfStale } from './build.mjs';
import { hasDisplay, openDisplay } from './display.mjs';
import { electronRuntime } from './electron-runtime.mjs';
import { ensureSystemLibraries } from './system-libraries.mjs';

/**
 * @typedef {object} Ground
 * @property {string} executablePath
 * @property {string[]} args what comes before the program's own arguments
 * @property {Record<string, string>} env what comes into the environment besides what is there
 * @property {() => void} close to be called when the last program has ended
 */

/**
 * @param {{needsPdfTools?: boolean}} [options]
 * @returns {Promise<Ground>}
 * @throws where something is missing and cannot be had, saying what to do
 */
export async function prepareGround({ needsPdfTools = false } = {}) {
  await buildIfStale();
  const { executablePath, args, reason } = await electronRuntime();
  console.log(reason);
  await ensureSystemLibraries({ executablePath, needsDisplay: !hasDisplay(), needsPdfTools });
  const display = await openDisplay();
  if (display.isVirtual) {
    console.log(`No screen here: the program opens on a virtual one (DISPLAY=${display.env.DISPLAY}).`);
  }
  // A process that ends early must not leave its screen behind.
  process.once('exit', display.close);
  return { executablePath, args: [...args, ...display.args], env: display.env, close: display.close };
}
