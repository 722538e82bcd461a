// Builds the program into app/built. The old build stays whole until the new one is complete, so that a
// program or a test that runs meanwhile never sees half a build.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { createBuilder } from 'vite';
import { builtFolder, cacheFolder, projectFolder, viteConfigFile } from './project-paths.mjs';

const sources = ['app', 'renderer', 'package.json', 'package-lock.json', 'tsconfig.json'];
const stampFile = path.join(builtFolder, 'built-from');

/**
 * Every file below a path, the build itself and the development tools left out.
 * @param {string} place
 * @returns {string[]}
 */
function filesBelow(place) {
  const found = statSync(place, { throwIfNoEntry: false });
  if (!found || place === builtFolder || place === import.meta.dirname) return [];
  if (!found.isDirectory()) return [place];
  return readdirSync(place)
    .sort()
    .flatMap((name) => filesBelow(path.join(place, name)));
}

/** Names the state of all sources: path, size and time of change of each. */
function sourceState() {
  const hash = createHash('sha256');
  for (const file of sources.flatMap((source) => filesBelow(path.join(projectFolder, source)))) {
    const { size, mtimeMs } = statSync(file);
    hash.update(`${path.relative(projectFolder, file)} ${size} ${mtimeMs}\n`);
  }
  return hash.digest('hex');
}

/** Whether app/built was made from the sources as they are now. */
export function isBuildFresh() {
  return existsSync(stampFile) && readFileSync(stampFile, 'utf8') === sourceState();
}

/**
 * Builds the page and the bundles.
 * @throws what the bundler says is wrong with the sources
 */
export async function buildProgram() {
  const startedAt = performance.now();
  const state = sourceState();
  const intoFolder = path.join(cacheFolder, `build-${process.pid}`);
  const oldFolder = path.join(cacheFolder, `build-old-${process.pid}`);
  rmSync(intoFolder, { recursive: true, force: true });
  mkdirSync(intoFolder, { recursive: true });
  process.env.LOTWRIGHT_BUILD_INTO = intoFolder;
  try {
    const builder = await createBuilder({ configFile: viteConfigFile });
    await builder.buildApp();
    writeFileSync(path.join(intoFolder, path.basename(stampFile)), state);
    if (existsSync(builtFolder)) renameSync(builtFolder, oldFolder);
    renameSync(intoFolder, builtFolder);
  } finally {
    delete process.env.LOTWRIGHT_BUILD_INTO;
    rmSync(intoFolder, { recursive: true, force: true });
    rmSync(oldFolder, { recursive: true, force: true });
  }
  console.log(`Built in ${((performance.now() - startedAt) / 1000).toFixed(1)} s.`);
}

/** Builds only where a source changed since the last build. */
export async function buildIfStale() {
  if (!isBuildFresh()) await buildProgram();
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await buildProgram().catch((error) => {
    console.error(error);
    process.exitCode = 1;
  });
}
