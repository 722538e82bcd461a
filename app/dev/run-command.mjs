// Runs another program and tells how it ended. Must not use a shell: arguments stay as they are given.
import { spawn, spawnSync } from 'node:child_process';
import process from 'node:process';

/**
 * Runs a command to its end with this terminal's input and output.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{cwd?: string, env?: NodeJS.ProcessEnv}} [options]
 * @returns {Promise<number>} its exit status; 1 where it could not be started or was ended by a signal
 */
export function runCommand(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { stdio: 'inherit', ...options });
    child.on('error', (error) => {
      console.error(`${command} could not be started: ${error.message}`);
      resolve(1);
    });
    child.on('close', (status) => resolve(status ?? 1));
  });
}

/**
 * Runs a command that only answers a question.
 * @param {string} command
 * @param {readonly string[]} args
 * @returns {{status: number, output: string}} status 127 where the command does not exist
 */
export function askCommand(command, args) {
  const answer = spawnSync(command, args, { encoding: 'utf8', env: { ...process.env, LC_ALL: 'C' } });
  if (answer.error) return { status: 127, output: '' };
  return { status: answer.status ?? 1, output: answer.stdout };
}

/** Whether this process runs as root (never on Windows). */
export function isRoot() {
  return process.getuid?.() === 0;
}
