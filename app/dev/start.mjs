// `npm start -- …`: builds where needed and opens the program, on a virtual screen where there is none.
// Extra arguments go to the program. Ctrl-C ends everything that was started here.
import { spawn } from 'node:child_process';
import { cpSync, existsSync, renameSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { buildIfStale } from './build.mjs';
import { hasDisplay, openDisplay } from './display.mjs';
import { electronRuntime } from './electron-runtime.mjs';
import { cacheFolder, fromCallersFolder, projectFolder } from './project-paths.mjs';
import { ensureSystemLibraries } from './system-libraries.mjs';

/**
 * The program reads `--fleet=DIR` with a full path; people also type `--fleet DIR` and paths from where they are.
 * @param {readonly string[]} typed
 */
function programArguments(typed) {
  const given = [...typed];
  /** @type {string[]} */
  const args = [];
  while (given.length > 0) {
    const next = given.shift() ?? '';
    const fleet = next === '--fleet' ? given.shift() : next.startsWith('--fleet=') ? next.slice(8) : null;
    if (fleet === null) args.push(next);
    else if (!fleet) throw new Error('--fleet wants a folder: npm start -- --fleet DIR');
    else args.push(`--fleet=${fromCallersFolder(fleet)}`);
  }
  return args;
}

/** A copy of the sample fleet that may be changed at will and stays until somebody deletes it. */
function sampleCopy() {
  const copy = path.join(cacheFolder, 'sample-fleet');
  if (!existsSync(copy)) {
    const unfinished = `${copy}-${process.pid}`;
    cpSync(path.join(projectFolder, 'sample-fleet', 'current'), unfinished, { recursive: true });
    renameSync(unfinished, copy);
  }
  return copy;
}

async function start() {
  const args = programArguments(process.argv.slice(2));
  if (!args.some((arg) => arg.startsWith('--fleet='))) {
    const fleet = sampleCopy();
    console.log(
      `Fleet: ${path.relative(projectFolder, fleet)}, a copy of the sample fleet (another: npm start -- --fleet DIR).`,
    );
    args.push(`--fleet=${fleet}`);
  }
  await buildIfStale();
  const runtime = await electronRuntime();
  console.log(runtime.reason);
  await ensureSystemLibraries({ executablePath: runtime.executablePath, needsDisplay: !hasDisplay() });
  const display = await openDisplay();
  if (display.isVirtual)
    console.log(`No screen here: the program opens on a virtual one (DISPLAY=${display.env.DISPLAY}).`);

  const child = spawn(runtime.executablePath, [...runtime.args, ...display.args, ...args], {
    stdio: 'inherit',
    env: { ...process.env, ...display.env },
  });
  // Ctrl-C reaches the program by itself, a signal to this process alone does not; a second one insists.
  let asked = 0;
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.on(signal, () => child.kill(asked++ === 0 ? 'SIGTERM' : 'SIGKILL'));
  }
  child.on('error', (error) => console.error(`The program could not be started: ${error.message}`));
  child.on('close', (status, signal) => {
    display.close();
    process.exit(status ?? (signal && asked > 0 ? 130 : 1));
  });
}

await start().catch((error) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
