// Starting: which folder, what a person is asked when it cannot be opened, today, zoom, and waiting with an end.
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { appErrorCodeSchema } from '../../app/contract/app-error.ts';
import { isDay } from '../../app/domain/shared/day.ts';
import { fail, ok } from '../../app/domain/shared/result.ts';
import { localDay, localToday } from '../../app/shell/clock.ts';
import { firstFolder } from '../../app/shell/first-folder.ts';
import { openDesk } from '../../app/shell/open-desk.ts';
import { fleetArgument, programPaths } from '../../app/shell/paths.ts';
import { startTroubleSentence } from '../../app/shell/shell-text.ts';
import type { StartChoice } from '../../app/shell/start-choice.ts';
import { within } from '../../app/shell/within.ts';
import { nextZoomPercent } from '../../app/shell/zoom.ts';
import { silentLog } from './silent-log.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'lotwright-start-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe('fleetArgument', () => {
  it('takes a full path as it is and a relative one from where the program was started', () => {
    const full = path.join(folder, 'fleet one');
    expect(fleetArgument(['lotwright', `--fleet=${full}`], folder)).toBe(full);
    expect(fleetArgument(['lotwright', '--fleet=fleet one'], folder)).toBe(full);
  });

  it('finds none where none or an empty one is given', () => {
    expect(fleetArgument(['lotwright', '--fleet', 'fleet', '--fleetx=1'], folder)).toBeNull();
    expect(fleetArgument(['lotwright', '--fleet='], folder)).toBeNull();
  });
});

describe('programPaths', () => {
  it('finds the sample fleet beside an installed program first, else in the project', async () => {
    const built = path.join(folder, 'project', 'app', 'built');
    const resources = path.join(folder, 'resources');
    const find = () => programPaths({ built, data: folder, resources }).shippedSample;
    expect(find()).toBeNull();
    const inProject = path.join(folder, 'project', 'sample-fleet', 'current');
    await mkdir(inProject, { recursive: true });
    await mkdir(built, { recursive: true });
    expect(find()).toBe(inProject);
    const installed = path.join(resources, 'sample-fleet', 'current');
    await mkdir(installed, { recursive: true });
    expect(find()).toBe(installed);
  });
});

describe('firstFolder', () => {
  async function places() {
    const shippedSample = path.join(folder, 'shipped');
    await mkdir(path.join(shippedSample, 'vehicles'), { recursive: true });
    await writeFile(path.join(shippedSample, 'shop.json'), 'as shipped');
    return { shippedSample, sampleCopy: path.join(folder, 'data', 'sample-fleet') };
  }

  it('takes the folder it is told before the last one, and lays no copy', async () => {
    const at = await places();
    const { log } = silentLog();
    expect(await firstFolder('/told', '/last', at, log)).toEqual({ folder: '/told', isNamed: true });
    expect(await firstFolder(null, '/last', at, log)).toEqual({ folder: '/last', isNamed: false });
    expect(existsSync(at.sampleCopy)).toBe(false);
  });

  it('lays a copy of the sample fleet at the first start and keeps it from then on', async () => {
    const at = await places();
    await mkdir(path.dirname(at.sampleCopy));
    const { log, lines } = silentLog();
    expect(await firstFolder(null, null, at, log)).toEqual({ folder: at.sampleCopy, isNamed: false });
    expect(lines).toEqual([]);
    await rm(path.join(at.sampleCopy, 'shop.json'));
    expect(await firstFolder(null, null, at, log)).toEqual({ folder: at.sampleCopy, isNamed: false });
    expect(existsSync(path.join(at.sampleCopy, 'shop.json'))).toBe(false);
  });
});

describe('openDesk', () => {
  const busy = fail({ code: 'busy', detail: '', problems: [] } as const);

  async function fleetAt(name: string): Promise<string> {
    await mkdir(path.join(folder, name, 'vehicles'), { recursive: true });
    return path.join(folder, name);
  }
  async function neverAsk(): Promise<StartChoice> {
    throw new Error('asked');
  }
  async function neverChoose(): Promise<null> {
    throw new Error('asked for a folder');
  }

  it('opens the first folder without a question', async () => {
    const first = { folder: await fleetAt('first'), isNamed: false };
    const desk = await openDesk(first, async (at) => ok(at), neverAsk, neverChoose);
    expect(desk).toEqual({ ...first, session: first.folder });
  });

  it('tries again, or another folder, as often as the person wants', async () => {
    const [first, second] = [await fleetAt('first'), await fleetAt('second')];
    const tried: string[] = [];
    const choices: StartChoice[] = ['try-again', 'choose-another', 'choose-another'];
    const chosen = [null, second];
    const desk = await openDesk(
      { folder: first, isNamed: false },
      async (at) => {
        tried.push(at);
        return at === second ? ok('desk') : busy;
      },
      async () => choices.shift() ?? 'quit',
      async () => chosen.shift() ?? null,
    );
    expect(tried).toEqual([first, first, first, second]);
    expect(desk).toEqual({ session: 'desk', folder: second, isNamed: true });
  });

  it('gives up when the person would rather quit', async () => {
    const first = { folder: await fleetAt('first'), isNamed: false };
    expect(
      await openDesk(
        first,
        async () => busy,
        async () => 'quit',
        neverChoose,
      ),
    ).toBeNull();
  });

  it.each([
    ['a remembered folder that is gone', 'gone', false],
    ['a remembered folder with no fleet in it: the drive is not connected', 'empty', false],
    ['a named folder that is not there', 'gone', true],
  ])('does not take %s for a new fleet', async (_what, name, isNamed) => {
    await mkdir(path.join(folder, 'empty'));
    const told: string[] = [];
    const desk = await openDesk(
      { folder: path.join(folder, name), isNamed },
      async () => ok('made anew'),
      async (_folder, error) => {
        told.push(error.code);
        return 'quit';
      },
      neverChoose,
    );
    expect(desk).toBeNull();
    expect(told).toEqual(['folder-gone']);
  });

  it('lets a person begin a new fleet in an empty folder', async () => {
    const empty = { folder: path.join(folder, 'empty'), isNamed: true };
    await mkdir(empty.folder);
    expect(await openDesk(empty, async () => ok('new'), neverAsk, neverChoose)).toMatchObject({ session: 'new' });
  });
});

describe('a start trouble', () => {
  it.each(appErrorCodeSchema.options)('%s is told as a sentence that says what to do', (code) => {
    expect(startTroubleSentence(code, '')).toMatch(/^[A-Z].*\.$/);
  });
});

describe('localDay', () => {
  it('is the calendar day at this desk up to the last second of it', () => {
    expect(localDay(new Date(2026, 2, 4, 0, 0, 0))).toBe('2026-03-04');
    expect(localDay(new Date(2026, 11, 31, 23, 59, 59))).toBe('2026-12-31');
    expect(isDay(localToday())).toBe(true);
  });
});

describe('nextZoomPercent', () => {
  it('goes one step at a time, stops at the ends, and back to the natural size', () => {
    expect(nextZoomPercent(100, 1)).toBe(110);
    expect(nextZoomPercent(100, -1)).toBe(90);
    expect(nextZoomPercent(104, 1)).toBe(110);
    expect(nextZoomPercent(104, -1)).toBe(100);
    expect(nextZoomPercent(200, 1)).toBe(200);
    expect(nextZoomPercent(75, -1)).toBe(75);
    expect(nextZoomPercent(300, -1)).toBe(200);
    expect(nextZoomPercent(175, 0)).toBe(100);
  });
});

describe('within', () => {
  it('tells work done in time from work that takes too long, and passes a failure on', async () => {
    expect(await within(1_000, Promise.resolve())).toBe(true);
    expect(await within(5, new Promise(() => undefined))).toBe(false);
    await expect(within(1_000, Promise.reject(new Error('broken')))).rejects.toThrow('broken');
  });
});
