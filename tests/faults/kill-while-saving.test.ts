// A process that saves without end is killed at random moments, many times over. Whatever it had acknowledged must be there.
// A kill loses nothing that the system has taken; a power cut can. For that the order of flushes is tested in tests/storage.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { beforeAll, expect, it } from 'vitest';
import { whyNotGood } from '../../app/storage/make-backup.ts';
import { openForTest, tempFolder, testOwner, unwrapped } from '../storage/fleet-fixture.ts';
import { byAda } from '../storage/telling-fixture.ts';

const roundsInEachLane = 30;
const lanes = [1, 2];
let childFile = '';

beforeAll(async () => {
  // Bundled once: a plain file starts in a fraction of the time.
  const outDir = await mkdtemp(join(tmpdir(), 'lotwright-child-'));
  await build({
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: fileURLToPath(new URL('saving-child.ts', import.meta.url)),
      outDir,
      rolldownOptions: { output: { entryFileNames: 'saving-child.mjs', format: 'es' } },
    },
  });
  childFile = join(outDir, 'saving-child.mjs');
  return () => rm(outDir, { recursive: true });
});

/** The Park and Miller generator (Comm. ACM 31, 1988), so that a failing seed can be run again. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

type Acknowledged = {
  readonly saved: Map<string, { revision: number; keyTag: string }>;
  readonly backups: Set<string>;
  saves: number;
  roundsWithSaves: number;
};

/** Everything the child says until it is gone; the kill comes at a random moment after it has opened the fleet, or while it does. */
async function runAndKill(child: ChildProcess, random: () => number, acknowledged: Acknowledged): Promise<string> {
  let errors = '';
  child.stderr?.on('data', (chunk) => {
    errors += chunk;
  });
  const savesBefore = acknowledged.saves;
  const gone = new Promise((resolve) => child.once('close', resolve));
  const isEarly = random() < 0.1;
  const delay = random() * 160;
  if (isEarly) void pause(60 + delay).then(() => child.kill('SIGKILL'));
  if (!child.stdout) throw new Error('The child has no output.');
  for await (const line of createInterface({ input: child.stdout })) {
    const [word = '', id = '', revision = '', keyTag = ''] = line.split(' ');
    if (word === 'opened' && !isEarly) void pause(delay).then(() => child.kill('SIGKILL'));
    if (word === 'backup') acknowledged.backups.add(id);
    if (word !== 'saved') continue;
    acknowledged.saved.set(id, { revision: Number(revision), keyTag });
    acknowledged.saves++;
  }
  await gone;
  if (acknowledged.saves > savesBefore) acknowledged.roundsWithSaves++;
  return errors;
}

async function checkFleet(folder: string, acknowledged: Acknowledged, where: string): Promise<number> {
  const leftovers = (await readdir(folder, { recursive: true })).filter((name) => name.includes('.tmp-')).length;
  const store = await openForTest(folder, { owner: { ...testOwner, host: 'desk-1' } });
  expect([where, store.isReadOnly, store.troubles()]).toEqual([where, null, []]);
  for (const [id, last] of acknowledged.saved) {
    // It may have been on its way out and back when the kill came; then it is among the withdrawn ones, whole.
    const kept = store.vehicles().get(id) ?? unwrapped(await store.bringBackVehicle(id, byAda));
    const isSame = kept.revision === last.revision && kept.data.identity.keyTag === last.keyTag;
    // The save after the last acknowledged one may have reached the disk before the answer could be given.
    const isNext = kept.revision === last.revision + 1;
    expect([where, id, last, kept.revision, isSame || isNext]).toEqual([where, id, last, kept.revision, true]);
    acknowledged.saved.set(id, { revision: kept.revision, keyTag: kept.data.identity.keyTag });
  }
  const listed = unwrapped(await store.listBackups()).map(({ id }) => id);
  for (const id of acknowledged.backups) expect([where, listed.includes(id)]).toEqual([where, true]);
  for (const id of listed)
    expect([where, id, await whyNotGood(join(folder, 'backups'), id)]).toEqual([where, id, null]);
  await store.close();
  const names = await readdir(folder, { recursive: true });
  expect(names.filter((name) => name.includes('.tmp-') || name.includes('.unfinished-'))).toEqual([]);
  return leftovers;
}

it(`keeps everything acknowledged through ${roundsInEachLane * lanes.length} kills, and every file reads`, async () => {
  const seed = Date.now() % 1_000_000;
  const runs = lanes.map(async (lane) => {
    const folder = await tempFolder();
    const random = randomFrom(seed + lane);
    const acknowledged: Acknowledged = { saved: new Map(), backups: new Set(), saves: 0, roundsWithSaves: 0 };
    await (await openForTest(folder)).close();
    let leftovers = 0;
    for (let round = 1; round <= roundsInEachLane; round++) {
      const child = spawn(process.execPath, [childFile, folder, `${lane}-${round}`], {
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      const errors = await runAndKill(child, random, acknowledged);
      const where = `seed ${seed}, lane ${lane}, round ${round}`;
      expect([where, child.signalCode, errors]).toEqual([where, 'SIGKILL', '']);
      leftovers += await checkFleet(folder, acknowledged, where);
    }
    return { ...acknowledged, leftovers };
  });
  const results = await Promise.all(runs);
  const sum = (pick: (result: (typeof results)[number]) => number) =>
    results.reduce((total, result) => total + pick(result), 0);
  console.info(
    `${sum((result) => result.saves)} saves acknowledged, ${sum((result) => result.leftovers)} temp files left by kills and cleared, ${sum((result) => result.backups.size)} backups`,
  );
  // Had the kills come before anything was saved, this would have shown nothing.
  expect(sum((result) => result.roundsWithSaves)).toBeGreaterThan((roundsInEachLane * lanes.length) / 2);
}, 60_000);
