// Where the program's own files lie, and which fleet folder a start opens. Names paths; touches the disk only to see what is there.
import { existsSync } from 'node:fs';
import path from 'node:path';

export type ProgramPaths = {
  readonly pageFolder: string;
  readonly preloadFile: string;
  readonly fontsFolder: string;
  readonly logFile: string;
  /** The sample fleet as it was shipped; never written to. Null where there is none. */
  readonly shippedSample: string | null;
  /** The copy of it that a first start works on. */
  readonly sampleCopy: string;
};

/**
 * @param folders `built` has the bundles, `data` is this person's own data folder, `resources` lies beside the runtime
 */
export function programPaths(folders: {
  readonly built: string;
  readonly data: string;
  readonly resources: string;
}): ProgramPaths {
  const sample = path.join('sample-fleet', 'current');
  // Installed: beside the archive. In development: in the project, two folders above the bundles.
  const places = [path.join(folders.resources, sample), path.join(folders.built, '..', '..', sample)];
  return {
    pageFolder: path.join(folders.built, 'page'),
    preloadFile: path.join(folders.built, 'preload.cjs'),
    fontsFolder: path.join(folders.built, 'fonts'),
    logFile: path.join(folders.data, 'lotwright.log'),
    shippedSample: places.find((place) => existsSync(place)) ?? null,
    sampleCopy: path.join(folders.data, 'sample-fleet'),
  };
}

/** The folder of `--fleet=DIR`, or null. A relative one is seen from where the program was started. */
export function fleetArgument(args: readonly string[], startedIn: string): string | null {
  const found = args.findLast((arg) => arg.startsWith('--fleet='))?.slice('--fleet='.length);
  return found ? path.resolve(startedIn, found) : null;
}
