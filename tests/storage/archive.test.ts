// The whole fleet as one file: what is in it, and that nothing is put in place unless all of it is whole.
import { execFileSync } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, stat, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { contentHash } from '../../app/storage/content-hash.ts';
import { checkArchive, unpackArchive } from '../../app/storage/read-archive.ts';
import { writeArchive } from '../../app/storage/write-archive.ts';
import { madePng } from '../helpers/made-pictures.ts';
import { addPhotographs, pathOf, spoil } from './attachment-fixture.ts';
import { fleetOf, openForTest, unwrapped } from './fleet-fixture.ts';
import { byAda } from './telling-fixture.ts';

const sample = join(import.meta.dirname, '..', '..', 'sample-fleet', 'current');
const madeAt = '2026-03-18T09:00:00.000Z';
let place: string;
let fleet: string;
let archive: string;

beforeEach(async () => {
  place = await mkdtemp(join(tmpdir(), 'lotwright-archive-'));
  fleet = join(place, 'fleet');
  archive = join(place, 'fleet.zip');
  await cp(sample, fleet, { recursive: true });
  await mkdir(join(fleet, 'history'), { recursive: true });
  await writeFile(join(fleet, 'history', 'vehicle-one.jsonl'), '{}\n');
  await writeFile(join(fleet, 'in-use.json'), '{}');
});
afterEach(() => rm(place, { recursive: true, force: true }));

const write = (withKeys = false, withAttachments = true) =>
  writeArchive(fleet, archive, { withKeys, withAttachments, madeAt });
type Files = Record<string, Uint8Array>;
const rewrite = async (change: (files: Files) => void) => {
  const files: Files = unzipSync(await readFile(archive));
  change(files);
  await writeFile(archive, zipSync(files));
};
const refusal = async () => {
  const target = join(place, 'new');
  const answer = await unpackArchive(archive, target);
  // Neither the fleet nor anything half done lies about.
  expect((await readdir(place)).filter((name) => name === 'new' || name.startsWith('.unfinished'))).toEqual([]);
  return answer.ok ? '' : answer.error;
};

describe('an archive', () => {
  it('holds the same bytes as the fleet and comes back as they were, without what belongs to one desk', async () => {
    const written = await write();
    expect(written.ok && written.value.missing).toEqual([]);
    const target = join(place, 'new');
    const unpacked = await unpackArchive(archive, target);
    expect(unpacked.ok).toBe(true);
    const vehicles = await readdir(join(fleet, 'vehicles'));
    expect(await readdir(join(target, 'vehicles'))).toEqual(vehicles);
    for (const path of ['shop.json', 'history/vehicle-one.jsonl', ...vehicles.map((name) => `vehicles/${name}`)])
      expect((await readFile(join(target, path))).equals(await readFile(join(fleet, path)))).toBe(true);
    expect(await readdir(target)).not.toContain('in-use.json');
  });

  it('is a plain zip that other programs unpack', async () => {
    await write();
    expect(execFileSync('python3', ['-m', 'zipfile', '-t', archive], { encoding: 'utf8' })).toContain('Done testing');
  });

  it('leaves out a record that cannot be read, and says which', async () => {
    const [first = ''] = await readdir(join(fleet, 'vehicles'));
    await truncate(join(fleet, 'vehicles', first), 100);
    const written = await write();
    expect(written.ok && written.value.missing).toEqual([`vehicles/${first}`]);
    expect((await checkArchive(archive)).ok).toBe(true);
  });

  it('is refused where it was cut off, at whatever place', async () => {
    await write();
    const whole = await readFile(archive);
    for (const part of [0, 0.1, 0.5, 0.9, 0.999]) {
      await writeFile(archive, whole.subarray(0, Math.floor(whole.length * part)));
      expect(await refusal()).toMatch(/cut off/);
    }
  });

  it('is refused where one byte of it was turned', async () => {
    await write();
    const whole = await readFile(archive);
    const at = Math.floor(whole.length / 3);
    whole[at] = (whole[at] ?? 0) ^ 0x40;
    await writeFile(archive, whole);
    expect(await refusal()).not.toBe('');
  });

  it('is refused when it is another zip or no zip at all', async () => {
    await writeFile(archive, zipSync({ 'letter.txt': strToU8('hello') }));
    expect(await refusal()).toContain('no archive of a fleet');
    await writeFile(archive, 'hello');
    expect(await refusal()).toContain('cut off');
  });

  it.each(['../evil.json', '/evil.json', 'vehicles/../../evil.json', 'vehicles\\evil.json', 'quarantine/x.json'])(
    'never puts a file at %s, even where the table of contents names it',
    async (path) => {
      await write();
      await rewrite((files) => {
        files[path] = strToU8('{}');
      });
      expect(await refusal()).toContain('not what its table of contents says');
      await rewrite((files) => {
        const contents = JSON.parse(Buffer.from(files['contents.json'] ?? []).toString());
        contents.files.push({ path, sha256: '0'.repeat(64), bytes: 2 });
        contents.fileCount += 1;
        files['contents.json'] = strToU8(JSON.stringify(contents));
      });
      expect(await refusal()).toContain('does not hold');
    },
  );

  it('is refused when a newer version made it', async () => {
    await write();
    await rewrite((files) => {
      const contents = JSON.parse(Buffer.from(files['contents.json'] ?? []).toString());
      files['contents.json'] = strToU8(JSON.stringify({ ...contents, version: 2 }));
    });
    expect(await refusal()).toContain('newer version');
  });

  it('holds the vault and the keys only when they are asked for', async () => {
    await writeFile(join(fleet, 'vault.json'), 'broken');
    const without = await write();
    expect(without.ok && without.value.missing).toEqual([]);
    const asked = await write(true);
    // What is broken is named instead of carried along.
    expect(asked.ok && asked.value.missing).toEqual(['vault.json']);
  });

  it('goes into an empty folder only', async () => {
    await write();
    const answer = await unpackArchive(archive, fleet);
    expect(answer.ok ? '' : answer.error).toContain('not empty');
  });

  it('of many vehicles is written with the memory of a few', async () => {
    const [first = ''] = await readdir(join(fleet, 'vehicles'));
    const text = await readFile(join(fleet, 'vehicles', first), 'utf8');
    const id = first.replace('.json', '');
    for (let at = 0; at < 500; at += 1)
      await writeFile(join(fleet, 'vehicles', `many-${at}.json`), text.replaceAll(`"${id}"`, `"many-${at}"`));
    const before = process.memoryUsage().rss;
    const written = await write();
    expect(written.ok && written.value.fileCount).toBeGreaterThan(500);
    expect(process.memoryUsage().rss - before).toBeLessThan(300_000_000);
  }, 60_000);
});

describe('photographs and documents', () => {
  async function withPhotographs() {
    await rm(fleet, { recursive: true });
    await mkdir(fleet);
    await fleetOf(['abcd', 'gone'], { folder: fleet });
    const store = await openForTest(fleet);
    const [one, two] = await addPhotographs(store, 'abcd', [10, 20]);
    const [three] = await addPhotographs(store, 'gone', [30]);
    if (!one || !two || !three) throw new Error('Three were made.');
    const unnamed = madePng(8, 6, 99);
    await writeFile(join(fleet, pathOf('abcd', unnamed)), unnamed);
    unwrapped(await store.withdrawVehicle('gone', store.vehicles().get('gone')?.revision ?? 0, byAda));
    await store.close();
    return { one, two, three };
  }

  it('are in it where a record names them, withdrawn ones too, and come back byte for byte and protected', async () => {
    const { one, two, three } = await withPhotographs();
    const written = unwrapped(await write());
    expect(written.missing).toEqual([]);
    const named = [pathOf('abcd', one), pathOf('abcd', two), pathOf('gone', three)];
    const held = written.files.map(({ path }) => path).filter((path) => path.startsWith('attachments/'));
    expect(held.sort()).toEqual(named.sort());
    execFileSync('python3', ['-m', 'zipfile', '-t', archive], { encoding: 'utf8' });
    const target = join(place, 'new');
    unwrapped(await unpackArchive(archive, target));
    expect(await readFile(join(target, pathOf('abcd', two)))).toEqual(two);
    expect((await stat(join(target, pathOf('gone', three)))).mode & 0o222).toBe(0);
    const store = await openForTest(target);
    expect(store.troubles()).toEqual([]);
    await store.close();
  });

  it('are left out when nobody wants them; the fleet that is opened from it says what it misses', async () => {
    await withPhotographs();
    const written = unwrapped(await write(false, false));
    expect(written.files.some(({ path }) => path.startsWith('attachments/'))).toBe(false);
    const target = join(place, 'new');
    unwrapped(await unpackArchive(archive, target));
    const store = await openForTest(target);
    expect(store.troubles()).toMatchObject([{ fileName: 'attachments/abcd', lastGoodCopy: null }]);
    await store.close();
  });

  it('that are damaged or gone are left out and named', async () => {
    const { one, two } = await withPhotographs();
    await spoil(fleet, pathOf('abcd', one));
    await rm(join(fleet, pathOf('abcd', two)));
    const written = unwrapped(await write());
    expect([...written.missing].sort()).toEqual([pathOf('abcd', one), pathOf('abcd', two)].sort());
    expect((await checkArchive(archive)).ok).toBe(true);
  });

  it('whose bytes are not what their name says are refused when it is opened', async () => {
    const { one } = await withPhotographs();
    await write();
    await rewrite((files) => {
      const other = strToU8('another picture');
      files[pathOf('abcd', one)] = other;
      const contents = JSON.parse(strFromU8(files['contents.json'] ?? new Uint8Array()));
      for (const file of contents.files)
        if (file.path === pathOf('abcd', one)) Object.assign(file, { sha256: contentHash(other), bytes: other.length });
      files['contents.json'] = strToU8(JSON.stringify(contents));
    });
    expect(await refusal()).toMatch(/cannot be used: It is not as it was written/);
  });
});
