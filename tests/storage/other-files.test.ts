// Files that are no records: backups hold them, restore never replaces them, and a person is told when one cannot be used or has gone.
import { appendFile, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readContents } from '../../app/storage/backup-contents.ts';
import { historyFile } from '../../app/storage/change-log.ts';
import type { HistoryPage, HistoryPlace } from '../../app/storage/read-change-log.ts';
import { recordBytes } from '../../app/storage/record-file.ts';
import { type PeopleKeys, peopleKeysFile, peopleKeysKind } from '../../app/storage/vault/people-keys.ts';
import { fleetOf, openForTest, testClock, textOf, unwrapped } from './fleet-fixture.ts';
import { aVehicle } from './fleet-records-fixture.ts';
import { byAda } from './telling-fixture.ts';

function keys(revision: number): Buffer {
  const data: PeopleKeys = { people: [] };
  return unwrapped(recordBytes(peopleKeysKind, { data, revision, savedAt: '2026-03-04T09:00:00.000Z' })).bytes;
}

async function fleetWithKeys(): Promise<string> {
  const folder = await fleetOf(['abcd', 'efgh']);
  await writeFile(join(folder, peopleKeysFile), keys(1));
  return folder;
}

describe('a backup', () => {
  it('holds the keys, the histories and what was withdrawn, each with its hash', async () => {
    const folder = await fleetWithKeys();
    const store = await openForTest(folder);
    unwrapped(await store.withdrawVehicle('efgh', 1, byAda));
    const { id } = unwrapped(await store.backUp('by-hand'));
    const contents = unwrapped(await readContents(join(folder, 'backups'), id));
    const paths = [peopleKeysFile, 'history/abcd.jsonl', 'history/efgh.jsonl', 'withdrawn/efgh.json'];
    expect(contents.files.map((file) => file.path)).toEqual(expect.arrayContaining(paths));
    expect(contents.vehicleCount).toBe(1);
    for (const path of paths) expect(await textOf(folder, `backups/${id}/${path}`)).toBe(await textOf(folder, path));
  });

  it('does not carry keys that cannot be read, where they would push out the last good ones', async () => {
    const folder = await fleetWithKeys();
    const store = await openForTest(folder);
    await writeFile(join(folder, peopleKeysFile), 'torn');
    const { id } = unwrapped(await store.backUp('by-hand'));
    const contents = unwrapped(await readContents(join(folder, 'backups'), id));
    expect(contents.files.map((file) => file.path)).not.toContain(peopleKeysFile);
    expect(contents.missing).toContain(peopleKeysFile);
  });

  it('is refused when its table of contents names a place outside the fleet folder', async () => {
    const folder = await fleetWithKeys();
    const store = await openForTest(folder);
    const { id } = unwrapped(await store.backUp('by-hand'));
    const path = join(folder, 'backups', id, 'contents.json');
    const text = await readFile(path, 'utf8');
    for (const evil of ['history/../../abcd.jsonl', '../shop.json', 'history/a/b.jsonl', 'C:/vault.json']) {
      await writeFile(path, text.replace('history/abcd.jsonl', evil));
      expect([evil, (await readContents(join(folder, 'backups'), id)).ok]).toEqual([evil, false]);
    }
  });
});

describe('going back to a backup', () => {
  it('rewinds no history and no keys: both go on', async () => {
    const folder = await fleetWithKeys();
    const store = await openForTest(folder);
    const { id } = unwrapped(await store.backUp('by-hand'));
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda));
    await writeFile(join(folder, peopleKeysFile), keys(7));
    const before = await textOf(folder, historyFile('abcd'));
    unwrapped(await store.restoreBackup(id, { ...byAda, kind: 'restore', label: 'put back' }));
    expect(store.vehicles().get('abcd')?.data.identity.keyTag).toBe('K1');
    const after = await textOf(folder, historyFile('abcd'));
    expect(after.startsWith(before)).toBe(true);
    const [line] = unwrapped(await store.readHistory('abcd', null, 10)).lines;
    expect(line).toMatchObject({ kind: 'restore', by: 'person-1', revision: 3, wasSaved: true });
    expect((await readFile(join(folder, peopleKeysFile))).equals(keys(7))).toBe(true);
  });

  it('brings back keys and histories that have gone', async () => {
    const folder = await fleetWithKeys();
    const store = await openForTest(folder);
    const { id } = unwrapped(await store.backUp('by-hand'));
    const history = await textOf(folder, historyFile('efgh'));
    await rm(join(folder, peopleKeysFile));
    await rm(join(folder, historyFile('efgh')));
    expect(unwrapped(await store.restoreBackup(id, byAda)).otherFiles).toBe(2);
    expect(await textOf(folder, historyFile('efgh'))).toBe(history);
    expect(JSON.parse(await textOf(folder, peopleKeysFile)).data).toEqual({ people: [] });
  });

  it('brings a record that was lost back under a revision that its history has not told of yet', async () => {
    const folder = await fleetOf(['abcd']);
    const first = await openForTest(folder);
    for (const revision of [1, 2, 3])
      unwrapped(await first.saveVehicle(aVehicle('abcd', `K${revision}`), revision, byAda));
    await first.close();
    await rm(join(folder, 'vehicles', 'abcd.json'));
    const store = await openForTest(folder);
    const trouble = store.troubles()[0];
    unwrapped(await store.restoreLastGood(trouble?.id ?? '', { ...byAda, kind: 'restore' }));
    expect(store.vehicles().get('abcd')?.revision).toBe(5);
    const { lines } = unwrapped(await store.readHistory('abcd', null, 10));
    expect(lines.map((line) => [line.revision, line.wasSaved])).toEqual([5, 4, 3, 2, 1].map((each) => [each, true]));
  });
});

describe('a person is told', () => {
  it('of keys that cannot be used, and can have the last good copy back', async () => {
    const folder = await fleetWithKeys();
    const first = await openForTest(folder);
    unwrapped(await first.backUp('by-hand'));
    await first.close();
    await writeFile(join(folder, peopleKeysFile), 'torn');
    const store = await openForTest(folder);
    const [trouble] = store.troubles();
    expect(trouble).toMatchObject({ fileName: peopleKeysFile, vehicleId: null });
    expect(trouble?.lastGoodCopy?.backupId).toMatch(/by-hand$/);
    unwrapped(await store.restoreLastGood(trouble?.id ?? '', byAda));
    expect(store.troubles()).toEqual([]);
    expect(JSON.parse(await textOf(folder, peopleKeysFile)).data).toEqual({ people: [] });
  });

  it('of a history that has gone, and not of a withdrawn record that was brought back', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const first = await openForTest(folder);
    unwrapped(await first.withdrawVehicle('efgh', 1, byAda));
    unwrapped(await first.backUp('by-hand'));
    unwrapped(await first.bringBackVehicle('efgh', byAda));
    await first.close();
    const history = await textOf(folder, historyFile('abcd'));
    await rm(join(folder, historyFile('abcd')));
    const store = await openForTest(folder, { clock: testClock('2026-03-04T12:00:00.000Z') });
    expect(store.troubles()).toMatchObject([{ fileName: 'history/abcd.jsonl', kind: 'missing', vehicleId: null }]);
    unwrapped(await store.restoreLastGood(store.troubles()[0]?.id ?? '', byAda));
    expect(await textOf(folder, historyFile('abcd'))).toBe(history);
  });
});

describe('the history of a vehicle', () => {
  it('is told before the save, and a save that did not come about is not taken for one', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    await store.close();
    // As a power cut between the entry and the record leaves it.
    const [line = ''] = (await textOf(folder, historyFile('abcd'))).split('\n');
    await appendFile(join(folder, historyFile('abcd')), `${line.replace('"revision":1', '"revision":2')}\n{"at":"20`);
    const again = await openForTest(folder);
    const cut = unwrapped(await again.readHistory('abcd', null, 10));
    expect(cut.lines.map((each) => [each.revision, each.wasSaved])).toEqual([
      [2, false],
      [1, true],
    ]);
    expect(cut.faults.map((fault) => fault.kind)).toEqual(['torn-end']);
    unwrapped(await again.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda));
    const { lines } = unwrapped(await again.readHistory('abcd', null, 10));
    expect(lines.map((each) => [each.revision, each.wasSaved])).toEqual([
      [2, true],
      [2, false],
      [1, true],
    ]);
  });

  it('is not written for a change that is refused', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const before = await textOf(folder, historyFile('abcd'));
    expect((await store.saveVehicle(aVehicle('abcd', 'K2'), 9, byAda)).ok).toBe(false);
    expect((await store.withdrawVehicle('abcd', 9, byAda)).ok).toBe(false);
    expect((await store.bringBackVehicle('abcd', byAda)).ok).toBe(false);
    expect(await textOf(folder, historyFile('abcd'))).toBe(before);
  });

  it('stops a change that it cannot tell of: nothing is changed without a line', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    await rm(join(folder, 'history'), { recursive: true });
    await writeFile(join(folder, 'history'), 'in the way');
    const before = await textOf(folder, 'vehicles/abcd.json');
    expect((await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).ok).toBe(false);
    expect((await store.withdrawVehicle('abcd', 1, byAda)).ok).toBe(false);
    expect(await textOf(folder, 'vehicles/abcd.json')).toBe(before);
  });

  it('knows a withdrawal that did not come about from one that did, on whichever page it is', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const told = async () => {
      const seen: unknown[] = [];
      let place: HistoryPlace | null = null;
      do {
        const page: HistoryPage = unwrapped(await store.readHistory('abcd', place, 2));
        seen.push(...page.lines.map((each) => [each.label, each.wasSaved]));
        place = page.older;
      } while (place !== null);
      return seen;
    };
    unwrapped(await store.withdrawVehicle('abcd', 1, { ...byAda, label: 'out' }));
    unwrapped(await store.bringBackVehicle('abcd', { ...byAda, label: 'back' }));
    const path = join(folder, historyFile('abcd'));
    const lines = (await textOf(folder, historyFile('abcd'))).split('\n');
    await appendFile(path, `${(lines[1] ?? '').replace('"out"', '"cut short"')}\n`);
    expect(await told()).toEqual([
      ['cut short', false],
      ['back', true],
      ['out', true],
      ['key tag changed', true],
    ]);
  });

  it('only grows, through changes, undoing, withdrawing, bringing back and looks', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    let before = await textOf(folder, historyFile('abcd'));
    const steps = [
      () => store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda),
      () => store.saveVehicle(aVehicle('abcd'), 2, { ...byAda, kind: 'undo' }),
      () => store.withdrawVehicle('abcd', 3, { ...byAda, kind: 'withdraw' }),
      () => store.bringBackVehicle('abcd', { ...byAda, kind: 'bring-back' }),
      () => store.noteHistory('abcd', { ...byAda, kind: 'look-at-code', reason: 'step 4' }),
    ];
    for (const step of steps) {
      expect((await step()).ok).toBe(true);
      const after = await textOf(folder, historyFile('abcd'));
      expect(after.startsWith(before)).toBe(true);
      expect(after.slice(before.length).trim().split('\n')).toHaveLength(1);
      before = after;
    }
  });
});
