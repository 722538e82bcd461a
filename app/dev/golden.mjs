// `npm run golden`: prints every example sheet and keeps its text and pictures as what the tests compare with. Look at what changed, then commit.
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import process from 'node:process';
import { projectFolder } from './project-paths.mjs';
import { ensureSystemLibraries } from './system-libraries.mjs';

await ensureSystemLibraries({ needsPdfTools: true });
const vitest = path.join(path.dirname(createRequire(import.meta.url).resolve('vitest/package.json')), 'vitest.mjs');
const { status } = spawnSync(
  process.execPath,
  [vitest, 'run', '--config', 'tests/vitest.config.ts', 'tests/printing/golden.test.ts'],
  { cwd: projectFolder, stdio: 'inherit', env: { ...process.env, LOTWRIGHT_GOLDEN: 'write' } },
);
process.exitCode = status ?? 1;
