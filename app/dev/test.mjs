// `npm test`: types, lint, unit, storage and architecture tests, build, end-to-end tests. Every stage runs
// even where an earlier one failed, as long as it can; the last line has the counts of all of them.
// `npm run check` is the same with the first two stages only (--check).
import { mkdirSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import process from 'node:process';
import { projectFolder, reportFolder } from './project-paths.mjs';
import { runCommand } from './run-command.mjs';
import { ensureSystemLibraries } from './system-libraries.mjs';
import { addCounts, countOfOneCheck, countPlaywright, countsLine, countVitest } from './test-counts.mjs';

/** @typedef {import('./test-counts.mjs').Counts} Counts */

const packages = createRequire(import.meta.url);
const vitestReport = path.join(reportFolder, 'vitest.json');
const playwrightReport = path.join(reportFolder, 'playwright.json');

/**
 * Runs a tool that an npm package brings, with this Node, so that no shell or PATH is in between.
 * @param {string} packageName
 * @param {readonly string[]} args
 * @param {string} [tool] its name where the package brings several
 */
function runTool(packageName, args, tool = packageName) {
  const manifestFile = packages.resolve(`${packageName}/package.json`);
  const { bin } = packages(manifestFile);
  const script = path.join(path.dirname(manifestFile), typeof bin === 'string' ? bin : bin[tool]);
  return runCommand(process.execPath, [script, ...args], { cwd: projectFolder });
}

async function checkTypes() {
  const program = await runTool('typescript', ['--noEmit'], 'tsc');
  const tools = await runTool('typescript', ['--noEmit', '-p', 'app/dev'], 'tsc');
  return countOfOneCheck(program + tools);
}

async function checkLint() {
  const command = process.env.CI ? 'ci' : 'check';
  return countOfOneCheck(await runTool('@biomejs/biome', [command, '--error-on-warnings'], 'biome'));
}

async function runUnitTests() {
  // Tests of printing read their PDFs back with these tools.
  await ensureSystemLibraries({ needsPdfTools: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${vitestReport}`];
  const status = await runTool('vitest', ['run', '--config', 'tests/vitest.config.ts', ...reporters]);
  return countVitest(vitestReport, status);
}

async function buildProgram() {
  return countOfOneCheck(await runCommand(process.execPath, [path.join(import.meta.dirname, 'build.mjs')]));
}

async function runEndToEndTests() {
  const status = await runTool('@playwright/test', ['test', '--config', 'tests/playwright.config.ts'], 'playwright');
  return countPlaywright(playwrightReport, status);
}

/** @type {[string, () => Promise<Counts>][]} */
const stages = [
  ['Types', checkTypes],
  ['Lint and format', checkLint],
  ['Unit, storage and architecture tests', runUnitTests],
  ['Build', buildProgram],
  ['End-to-end tests', runEndToEndTests],
];

/** @param {readonly [string, () => Promise<Counts>][]} chosen */
async function runStages(chosen) {
  rmSync(reportFolder, { recursive: true, force: true });
  mkdirSync(reportFolder, { recursive: true });
  /** @type {Counts[]} */
  const all = [];
  for (const [name, run] of chosen) {
    console.log(`\n== ${name}`);
    const counts = await run().catch((error) => {
      console.error(error instanceof Error ? error.message : error);
      return countOfOneCheck(1);
    });
    console.log(`== ${name}: ${countsLine(counts)}.`);
    all.push(counts);
  }
  const total = addCounts(all);
  console.log(`\n${countsLine(total)}`);
  process.exitCode = total.failed > 0 ? 1 : 0;
}

await runStages(process.argv.includes('--check') ? stages.slice(0, 2) : stages);
