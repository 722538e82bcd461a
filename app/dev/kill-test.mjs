// `npm run kill-test -- N`: kills the real program at random moments until N saves were acknowledged, and checks after each restart.
// The same test as in the end-to-end tests, only longer.
import { createRequire } from 'node:module';
import path from 'node:path';
import process from 'node:process';
import { projectFolder } from './project-paths.mjs';
import { runCommand } from './run-command.mjs';

const wanted = Number(process.argv[2] ?? 2000);
if (!Number.isInteger(wanted) || wanted < 1) {
  console.error('Say how many saves: npm run kill-test -- 2000');
  process.exit(1);
}
const packages = createRequire(import.meta.url);
const script = path.join(path.dirname(packages.resolve('@playwright/test/package.json')), 'cli.js');
const args = [
  script,
  'test',
  '--config',
  'tests/playwright.config.ts',
  'tests/e2e/kill-program.spec.ts',
  '--reporter=list',
];
process.env.LOTWRIGHT_KILL_SAVES = String(wanted);
process.exitCode = await runCommand(process.execPath, args, { cwd: projectFolder });
