// Gives each end-to-end test a program of its own: the real build in a real Electron, with its own data folder and
// its own fleet. A test whose page logs an error, or whose main process meets an uncaught one, fails.
import type { ChildProcess } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { _electron, test as base, type ElectronApplication, expect, type Page } from '@playwright/test';

export { expect };

/** A running program and the folders it works on. `page` and `app` change when it is started again. */
export interface Program {
  app: ElectronApplication;
  page: Page;
  readonly fleetFolder: string;
  readonly dataFolder: string;
  /** Errors of the page and of the main process so far, each as one line. */
  readonly errors: string[];
  /** Ends the program the way a person does, by closing its windows. */
  close(): Promise<void>;
  /** Ends the program's process at once, as a power cut would. */
  kill(): Promise<void>;
  /** Starts the program once more on the same folders. */
  start(): Promise<void>;
}

interface ProgramOptions {
  /**
   * The fleet to open: a copy of the sample fleet, an empty folder, or what `lay` writes into the folder it is given. 'first-start': none is
   * named, and the program opens the one of its data folder.
   */
  fleet: 'sample' | 'empty' | 'first-start' | { lay(folder: string): Promise<void> };
  /** More arguments for the program. */
  programArgs: string[];
  /** Errors that the test provokes on purpose; all others make it fail. */
  expectedErrors: RegExp[];
}

const mainProcessTrouble =
  /A JavaScript error occurred in the main process|App threw an error|Uncaught\s*Exception|UnhandledPromiseRejection|Unhandled rejection/i;

interface Ground {
  executablePath: string;
  args: string[];
  projectFolder: string;
}

/** What the global setup found: the runtime and what it wants to be started with. */
function ground(): Ground {
  const found = process.env.LOTWRIGHT_E2E;
  if (!found) throw new Error('Run the end-to-end tests with tests/playwright.config.ts: its setup prepares them.');
  return JSON.parse(found) as Ground;
}

async function layFleet(fleet: Exclude<ProgramOptions['fleet'], 'first-start'>, fleetFolder: string): Promise<void> {
  if (fleet === 'sample') {
    await cp(path.join(ground().projectFolder, 'sample-fleet', 'current'), fleetFolder, { recursive: true });
    return;
  }
  await mkdir(fleetFolder);
  if (fleet !== 'empty') await fleet.lay(fleetFolder);
}

/** Listens from the first moment on: to every window of the program and to what its main process says. */
function noteErrors(app: ElectronApplication, child: ChildProcess, errors: string[]): void {
  app.context().on('console', (message) => {
    if (message.type() === 'error') errors.push(`page console: ${message.text()}`);
  });
  app.context().on('weberror', (error) => errors.push(`page: ${error.error().message}`));
  app.on('window', (page) => page.on('crash', () => errors.push('page: its process crashed')));
  child.stderr?.on('data', (chunk: Buffer) => {
    const text = chunk.toString();
    if (mainProcessTrouble.test(text)) errors.push(`main process: ${text.trim()}`);
  });
}

/** Resolves when the process is gone, and tells whether it went within the time given. */
async function hasEnded(child: ChildProcess, withinMs: number): Promise<boolean> {
  if (child.exitCode !== null || child.signalCode !== null) return true;
  return await new Promise<boolean>((resolve) => {
    const tooLong = setTimeout(() => resolve(false), withinMs);
    child.once('exit', () => {
      clearTimeout(tooLong);
      resolve(true);
    });
  });
}

/** Starts the built program on these folders and waits for its first window. */
export async function launchProgram(folders: {
  fleetFolder: string;
  dataFolder: string;
  args?: readonly string[];
  /** False: the program finds the fleet by itself. */
  isNamed?: boolean;
}): Promise<Program> {
  const { executablePath, args: runtimeArgs } = ground();
  const args = [
    ...runtimeArgs,
    '--await-driver',
    `--user-data-dir=${folders.dataFolder}`,
    ...(folders.isNamed === false ? [] : [`--fleet=${folders.fleetFolder}`]),
    ...(folders.args ?? []),
  ];
  const errors: string[] = [];
  const open = async () => {
    const app = await _electron.launch({ executablePath, args });
    const child = app.process();
    noteErrors(app, child, errors);
    const page = await app.firstWindow({ timeout: 20_000 }).catch((error: Error) => {
      // A program that failed at its start waits behind a message box for somebody to read it.
      child.kill('SIGKILL');
      throw new Error([...errors, error.message].join('\n'));
    });
    return { app, page, child };
  };
  let { child, ...running } = await open();
  const program: Program = {
    ...running,
    fleetFolder: folders.fleetFolder,
    dataFolder: folders.dataFolder,
    errors,
    async close() {
      const closing = program.app.close().catch(() => undefined);
      // A program that hangs (on a message box, say) must not take the other tests with it.
      if (!(await hasEnded(child, 15_000))) {
        errors.push('main process: the program did not end within 15 s of being closed');
        child.kill('SIGKILL');
      }
      await closing;
    },
    async kill() {
      child.kill('SIGKILL');
      await hasEnded(child, 15_000);
    },
    async start() {
      ({ child, ...running } = await open());
      Object.assign(program, running);
    },
  };
  return program;
}

export const test = base.extend<ProgramOptions & { program: Program }>({
  fleet: ['sample', { option: true }],
  programArgs: [[], { option: true }],
  expectedErrors: [[], { option: true }],

  program: async ({ fleet, programArgs, expectedErrors }, use, testInfo) => {
    const folder = await mkdtemp(path.join(tmpdir(), 'lotwright-e2e-'));
    const dataFolder = path.join(folder, 'data');
    const isNamed = fleet !== 'first-start';
    const fleetFolder = isNamed ? path.join(folder, 'fleet') : path.join(dataFolder, 'sample-fleet');
    if (isNamed) await layFleet(fleet, fleetFolder);
    const program = await launchProgram({ fleetFolder, dataFolder, args: programArgs, isNamed });
    try {
      await use(program);
      if (testInfo.status !== testInfo.expectedStatus && !program.page.isClosed()) {
        const picture = await program.page.screenshot({ timeout: 5_000 }).catch(() => null);
        if (picture) await testInfo.attach('window when the test failed', { body: picture, contentType: 'image/png' });
      }
    } finally {
      await program.close();
      await rm(folder, { recursive: true, force: true });
    }
    const unexpected = program.errors.filter((error) => !expectedErrors.some((pattern) => pattern.test(error)));
    expect(unexpected, 'errors logged by the program').toEqual([]);
  },

  page: async ({ program }, use) => {
    await use(program.page);
  },
});
