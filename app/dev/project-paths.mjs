// Where things lie in this project, for the development tools. Names paths only; must not touch the disk.
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectFolder = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');
export const builtFolder = path.join(projectFolder, 'app', 'built');
export const cacheFolder = path.join(projectFolder, '.cache');
export const reportFolder = path.join(cacheFolder, 'reports');
export const viteConfigFile = path.join(projectFolder, 'app', 'vite.config.ts');

/**
 * A path a person typed, seen from the folder they typed it in: npm runs every script from the
 * project's folder and leaves the person's own in INIT_CWD.
 * @param {string} typed
 */
export function fromCallersFolder(typed) {
  return path.resolve(process.env.INIT_CWD ?? process.cwd(), typed);
}
