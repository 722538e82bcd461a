// `npm run package`: packs the program for Linux as a folder and a tar.gz, offline, with the runtime that is at hand. AppImage,
// deb and the packages of other systems need tools that electron-builder fetches; `npx electron-builder` makes them where it can.
import { cpSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { Arch, build, Platform } from 'electron-builder';
import { buildIfStale } from './build.mjs';
import { electronRuntime } from './electron-runtime.mjs';
import { fallbackVersion } from './fallback-runtime.mjs';
import { findOfficialRuntime } from './official-runtime.mjs';
import { cacheFolder, fromCallersFolder, projectFolder } from './project-paths.mjs';
import { runCommand } from './run-command.mjs';

/** The only fuse that the older runtime of the development tools does not have yet. */
const fuseSinceVersion29 = 'grantFileProtocolExtraPrivileges';

/**
 * @typedef {object} Package
 * @property {string} folder the program as it is unpacked
 * @property {string} executablePath
 * @property {string | null} archive the tar.gz, where one was asked for
 */

/**
 * The runtime without any program in it, where the packer may copy from.
 * @param {string} from
 * @param {string} workFolder
 */
function bareRuntime(from, workFolder) {
  const bare = path.join(workFolder, 'runtime');
  const program = path.join(from, 'resources', 'app');
  cpSync(from, bare, { recursive: true, filter: (source) => source !== program, verbatimSymlinks: true });
  return bare;
}

/**
 * What to do before packing: takes out the fuses that this runtime has no place for, and says so.
 * @param {string} version
 * @returns {(context: import('electron-builder').AfterPackContext) => void}
 */
function leaveOutUnknownFuses(version) {
  return ({ packager }) => {
    const { electronFuses } = packager.config;
    if (Number(version.split('.')[0]) >= 29 || !electronFuses) return;
    delete electronFuses[fuseSinceVersion29];
    console.log(`Electron ${version} has no fuse ${fuseSinceVersion29} yet: left out here, every other one is set.`);
  };
}

/**
 * Packs the built program.
 * @param {{into?: string, archives?: boolean, version?: string | undefined, isForDriver?: boolean}} [options] `version`: instead
 *   of that of package.json; `isForDriver`: leaves one fuse open, without which no test can hold the program's main process
 * @returns {Promise<Package>}
 * @throws where there is no runtime for it, or the packer fails
 */
export async function packageProgram({
  into = path.join(cacheFolder, 'packages'),
  archives = true,
  version,
  isForDriver = false,
} = {}) {
  if (process.platform !== 'linux' || process.arch !== 'x64')
    throw new Error('This packs on Linux x64 only. On other systems run "npx electron-builder" with a connection.');
  await buildIfStale();
  const { executablePath } = await electronRuntime();
  const official = findOfficialRuntime();
  const isOfficial = official?.executablePath === executablePath;
  const electronVersion = isOfficial ? official.version : fallbackVersion;
  console.log(
    isOfficial
      ? `Packed with the official Electron ${electronVersion}.`
      : `Packed with Electron ${electronVersion}, the runtime of the development tools, because the official one is not here: to try out, not to ship.`,
  );
  const workFolder = path.join(into, `packing-${process.pid}`);
  rmSync(workFolder, { recursive: true, force: true });
  mkdirSync(workFolder, { recursive: true });
  try {
    await build({
      projectDir: projectFolder,
      targets: Platform.LINUX.createTarget('dir', Arch.x64),
      publish: 'never',
      config: {
        extends: path.join(projectFolder, 'electron-builder.yml'),
        directories: { output: workFolder },
        electronDist: bareRuntime(path.dirname(executablePath), workFolder),
        electronVersion,
        beforePack: leaveOutUnknownFuses(electronVersion),
        ...(isForDriver ? { electronFuses: { enableNodeCliInspectArguments: true } } : {}),
        ...(version === undefined ? {} : { extraMetadata: { version } }),
      },
    });
    const folder = path.join(into, 'linux-unpacked');
    rmSync(folder, { recursive: true, force: true });
    renameSync(path.join(workFolder, 'linux-unpacked'), folder);
    const archive = archives ? await packArchive(folder, into) : null;
    return { folder, executablePath: path.join(folder, 'lotwright'), archive };
  } finally {
    rmSync(workFolder, { recursive: true, force: true });
  }
}

/**
 * electron-builder makes its tar.gz with a 7-Zip that it fetches; the tar of this system does as well.
 * @param {string} folder
 * @param {string} into
 */
async function packArchive(folder, into) {
  const { version } = JSON.parse(readFileSync(path.join(projectFolder, 'package.json'), 'utf8'));
  const name = `lotwright-${version}-linux-x64`;
  const archive = path.join(into, `${name}.tar.gz`);
  const args = ['-czf', archive, '--owner=0', '--group=0', `--transform=s,^\\.,${name},`, '-C', folder, '.'];
  const status = await runCommand('tar', args);
  if (status !== 0 || !existsSync(archive)) throw new Error(`Packing ${archive} failed: tar ended with ${status}.`);
  return archive;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { values } = parseArgs({
    options: {
      into: { type: 'string' },
      version: { type: 'string' },
      'folder-only': { type: 'boolean' },
      'for-driver': { type: 'boolean' },
    },
  });
  const into = values.into === undefined ? {} : { into: fromCallersFolder(values.into) };
  const { folder, archive } = await packageProgram({
    ...into,
    version: values.version,
    archives: !values['folder-only'],
    isForDriver: values['for-driver'] ?? false,
  });
  const size = archive === null ? '' : ` and ${archive} (${(statSync(archive).size / 1e6).toFixed(0)} MB)`;
  console.log(`Packed: ${folder}${size}.`);
}
