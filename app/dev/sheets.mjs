// `npm run sheets -- …`: prints sheets without a window, in plain Node. Only builds and passes the arguments on.
import path from 'node:path';
import process from 'node:process';
import { buildIfStale } from './build.mjs';
import { builtFolder, fromCallersFolder } from './project-paths.mjs';
import { runCommand } from './run-command.mjs';

await buildIfStale();
const command = [path.join(builtFolder, 'sheets.cjs'), ...process.argv.slice(2)];
process.exitCode = await runCommand(process.execPath, command, { cwd: fromCallersFolder('.') });
