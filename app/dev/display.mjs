// Gives the program a screen to open on: the person's own, or a virtual one (Xvfb) where there is none.
import { spawn } from 'node:child_process';

/**
 * @typedef {object} Display
 * @property {boolean} isVirtual
 * @property {Record<string, string>} env what the program needs in its environment to find the screen
 * @property {string[]} args what the program needs on its command line
 * @property {() => void} close
 */

/** Whether this machine shows windows by itself. */
export function hasDisplay() {
  return process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

/** @returns {Promise<Display>} */
export async function openDisplay() {
  if (hasDisplay()) return { isVirtual: false, env: {}, args: [], close: () => {} };
  // Its own process group: Ctrl-C in the terminal must end the program before its screen. The server picks a
  // free number itself and tells it on the fourth channel, so that any number of runs may go side by side.
  const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1600x1000x24', '-nolisten', 'tcp', '-noreset'], {
    stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
    detached: true,
  });
  const close = () => void server.kill('SIGTERM');
  const number = await new Promise((resolve, reject) => {
    let complaints = '';
    server.stderr?.on('data', (chunk) => {
      complaints += chunk;
    });
    server.stdio[3]?.on('data', (chunk) => resolve(String(chunk).trim()));
    server.on('error', (error) => reject(new Error(`Xvfb could not be started: ${error.message}`)));
    server.on('exit', () => reject(new Error(`Xvfb ended before it had a screen. ${complaints.trim()}`)));
  });
  server.stderr?.removeAllListeners('data');
  server.stderr?.resume();
  // Neither the server nor its channels may keep a tool from ending.
  server.unref();
  for (const channel of [server.stderr, server.stdio[3]]) {
    if (channel && 'unref' in channel && typeof channel.unref === 'function') channel.unref();
  }
  return { isVirtual: true, env: { DISPLAY: `:${number}` }, args: ['--disable-gpu'], close };
}
