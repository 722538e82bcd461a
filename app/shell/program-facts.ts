// What the shell can tell about the program and the computer: versions, screens, licences, the last lines of the log. No user name,
// no host name, no path.
import { readFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { screen } from 'electron';
import { z } from 'zod';
import { packageLicenceSchema } from '../contract/program-channels.ts';
import type { ProgramFacts } from '../services/program-commands.ts';
import { readLastLines } from './log.ts';

function programFacts(): ProgramFacts {
  const { electron, chrome, node } = process.versions;
  return {
    runtime: `Electron ${electron ?? '?'}, Chromium ${chrome ?? '?'}, Node ${node}`,
    system: `${os.type()} ${os.release()} ${process.arch}`,
    screens: screen.getAllDisplays().map(({ size, scaleFactor }) => `${size.width} × ${size.height} at ${scaleFactor}`),
  };
}

/** @param built the folder of the bundles, where the build laid the licences */
export function programOutside(built: string, logFile: string) {
  return {
    programFacts,
    readLicences: async () => {
      const text = await readFile(path.join(built, 'licences.json'), 'utf8');
      return z.array(packageLicenceSchema).parse(JSON.parse(text));
    },
    lastLogLines: async (count: number) => readLastLines(logFile, count),
  };
}
