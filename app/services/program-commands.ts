// What the program tells about itself: versions and licences, and a report of a fault with counts instead of facts. Holds no name,
// amount, VIN, code or path: what it puts in is listed here, and the log masks itself.
import type { ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import type { Answer, DeskContext } from './desk-context.ts';

/** How many lines of the log go into a report. */
const linesInReport = 200;

/** What only the shell knows of the program and the computer. */
export type ProgramFacts = {
  readonly runtime: string;
  readonly system: string;
  /** Size and scale of each screen: '1920 × 1080 at 1.25'. */
  readonly screens: readonly string[];
};

export async function readProgram({ deps }: DeskContext): Answer<ChannelOutput<'program:read'>> {
  const { runtime, system } = deps.outside.programFacts();
  return ok({ version: deps.appVersion, runtime, system, packages: await deps.outside.readLicences() });
}

/** Pure but for what `outside` and the store say at this moment. */
export async function reportFault(context: DeskContext): Answer<ChannelOutput<'program:report'>> {
  const { deps, store } = context;
  const { runtime, system, screens } = deps.outside.programFacts();
  const lines = await deps.outside.lastLogLines(linesInReport);
  const text = [
    `Lotwright ${deps.appVersion}`,
    `Runtime: ${runtime}`,
    `System: ${system}`,
    `Screens: ${screens.join('; ') || 'none'}`,
    `Written: ${deps.clock()}`,
    `Vehicles: ${store.vehicles().size}`,
    `Files that could not be read: ${store.troubles().length}`,
    `Reading only: ${store.isReadOnly === null ? 'no' : 'yes'}`,
    `Sample: ${context.shop().sample === null ? 'no' : 'yes'}`,
    `Backup known: ${context.lastBackupAt === null ? 'no' : 'yes'}`,
    '',
    `Last lines of the log (${lines.length}):`,
    ...lines,
  ].join('\n');
  return ok({ text });
}
