// Playwright's global setup: runs once, in Playwright's own process, before the end-to-end tests. The tests
// read what was made ready from their environment.
import process from 'node:process';
import { prepareGround } from './ground.mjs';
import { projectFolder } from './project-paths.mjs';

/** @returns {Promise<() => void>} what to do after the last test */
// biome-ignore lint/style/noDefaultExport: Playwright takes a global setup by its default export.
export default async function prepareEndToEndGround() {
  const { executablePath, args, env, close } = await prepareGround({ needsPdfTools: true });
  Object.assign(process.env, env);
  process.env.LOTWRIGHT_E2E = JSON.stringify({ executablePath, args, projectFolder });
  return close;
}
