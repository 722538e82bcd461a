// End-to-end tests: the built program in a real Electron. What they need is made ready by the global setup.
import path from 'node:path';
import { defineConfig } from '@playwright/test';

const projectFolder = path.join(import.meta.dirname, '..');

export default defineConfig({
  testDir: path.join(projectFolder, 'tests', 'e2e'),
  // Files named x.spec.ts; x.test.ts are the other runner's.
  testMatch: '**/*.spec.ts',
  outputDir: path.join(projectFolder, 'test-results'),
  globalSetup: path.join(projectFolder, 'app', 'dev', 'e2e-ground.mjs'),
  fullyParallel: true,
  workers: 2,
  // A test that passes only sometimes is a failing test.
  retries: 0,
  forbidOnly: Boolean(process.env.CI),
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [['list'], ['json', { outputFile: path.join(projectFolder, '.cache', 'reports', 'playwright.json') }]],
});
