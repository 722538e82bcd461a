// `npm start -- …`: builds where needed and opens the program, on a virtual screen where there is none.
// Without --fleet the program opens the fleet it had open last, at first a copy of the sample fleet. Extra arguments go to the
// program. Ctrl-C ends everything that was started here.
import { spawn } from 'node:child_process';
import process from 'node:process';
import { prepareGround } from './ground.mjs';
import { fromCallersFolder } from './project-paths.mjs';

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

async function start() {
  const args = programArguments(process.argv.slice(2));
  const ground = await prepareGround();
  const child = spawn(ground.executablePath, [...ground.args, ...args], {
    stdio: 'inherit',
    env: { ...process.env, ...ground.env },
  });
  // Ctrl-C reaches the program by itself, a signal to this process alone does not; a second one insists.
  let asked = 0;
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.on(signal, () => child.kill(asked++ === 0 ? 'SIGTERM' : 'SIGKILL'));
  }
  child.on('error', (error) => console.error(`The program could not be started: ${error.message}`));
  child.on('close', (status, signal) => {
    ground.close();
    process.exit(status ?? (signal && asked > 0 ? 130 : 1));
  });
}

await start().catch((error) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
