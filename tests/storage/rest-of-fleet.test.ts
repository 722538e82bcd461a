// Sold vehicles of a long ledger are read after the rest: nothing that needs them goes on without them, nothing about them is lost.
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openForTest, tempFolder, textOf, unwrapped } from './fleet-fixture.ts';
import { aShop, aVehicle } from './fleet-records-fixture.ts';

const by = { by: 'manager', kind: 'change', label: 'Told by a test' } as const;
const sale = { soldOn: '2026-03-02', priceCents: 900_000, buyer: '', paidOffOn: null };

/** Two vehicles in stock and three that were sold. */
async function ledger(): Promise<string> {
  const folder = await tempFolder();
  const store = await openForTest(folder);
  unwrapped(await store.saveShop(aShop(), 0));
  for (const id of ['here', 'open']) unwrapped(await store.saveVehicle(aVehicle(id), 0, by));
  for (const id of ['sold-a', 'sold-b', 'sold-c']) unwrapped(await store.saveVehicle({ ...aVehicle(id), sale }, 0, by));
  await store.close();
  return folder;
}

function hold() {
  let letGo: () => void = () => undefined;
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  return { held, letGo };
}

describe('a long ledger', () => {
  it('opens with what is in stock, and is whole a little later', async () => {
    const folder = await ledger();
    const { held, letGo } = hold();
    const store = await openForTest(folder, { readsSoldLaterFrom: 3, readSoldAfter: held });
    expect([...store.vehicles().keys()].sort()).toEqual(['here', 'open']);
    expect(store.soldToRead).toBe(3);
    expect(store.troubles()).toEqual([]);
    letGo();
    await store.whole;
    expect([...store.vehicles().keys()].sort()).toEqual(['here', 'open', 'sold-a', 'sold-b', 'sold-c']);
    expect(store.vehicles().get('sold-b')?.data.sale).toEqual(sale);
    expect(store.soldToRead).toBe(0);
  });

  it('is read at once while it is short', async () => {
    const store = await openForTest(await ledger(), { readsSoldLaterFrom: 4, readSoldAfter: new Promise(() => {}) });
    expect(store.vehicles().size).toBe(5);
    await store.whole;
  });

  it('keeps a change of a vehicle that is there already at once, and reads the rest as before', async () => {
    const folder = await ledger();
    const { held, letGo } = hold();
    const store = await openForTest(folder, { readsSoldLaterFrom: 1, readSoldAfter: held });
    expect(unwrapped(await store.saveVehicle(aVehicle('here', 'K9'), 1, by)).revision).toBe(2);
    expect(await textOf(folder, 'vehicles/here.json')).toContain('"K9"');
    expect(store.soldToRead).toBe(3);
    letGo();
    await store.whole;
    expect(store.vehicles().size).toBe(5);
    expect(store.vehicles().get('here')?.revision).toBe(2);
    expect(store.troubles()).toEqual([]);
  });

  it('puts a damaged file aside while a save finds it, and takes none that is not read yet for missing', async () => {
    const folder = await ledger();
    const { held, letGo } = hold();
    const store = await openForTest(folder, { readsSoldLaterFrom: 1, readSoldAfter: held });
    await writeFile(join(folder, 'vehicles', 'here.json'), 'torn');
    unwrapped(await store.saveVehicle(aVehicle('here', 'K9'), 1, by));
    expect(store.troubles()).toEqual([]);
    letGo();
    await store.whole;
    expect(store.troubles().map(({ fileName }) => fileName)).toEqual(['vehicles/here.json']);
  });

  it('adds a vehicle only when it is whole', async () => {
    const { held, letGo } = hold();
    const store = await openForTest(await ledger(), { readsSoldLaterFrom: 1, readSoldAfter: held });
    let isSaved = false;
    const saving = store.saveVehicle(aVehicle('new-one', 'K9'), 0, by).then((saved) => {
      isSaved = true;
      return saved;
    });
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(isSaved).toBe(false);
    letGo();
    expect(unwrapped(await saving).revision).toBe(1);
    expect(store.vehicles().size).toBe(6);
  });

  it('backs up all of it, sold vehicles too', async () => {
    const folder = await ledger();
    const { held, letGo } = hold();
    const store = await openForTest(folder, { readsSoldLaterFrom: 1, readSoldAfter: held });
    const backingUp = store.backUp('by-hand');
    letGo();
    const { id } = unwrapped(await backingUp);
    const names = await readdir(join(folder, 'backups', id, 'vehicles'));
    expect(names.sort()).toEqual(['here.json', 'open.json', 'sold-a.json', 'sold-b.json', 'sold-c.json']);
  });

  it('puts a damaged sold vehicle aside when its turn comes, and says so', async () => {
    const folder = await ledger();
    const path = join(folder, 'vehicles', 'sold-b.json');
    const text = await readFile(path, 'utf8');
    await writeFile(path, text.replace('"soldOn": "2026-03-02"', '"soldOn": "2026-13-02"'));
    const store = await openForTest(folder, { readsSoldLaterFrom: 1 });
    await store.whole;
    expect([...store.vehicles().keys()].sort()).toEqual(['here', 'open', 'sold-a', 'sold-c']);
    expect(store.troubles()).toMatchObject([{ vehicleId: 'sold-b', kind: 'fails-schema' }]);
    expect((await readdir(join(folder, 'quarantine'))).some((name) => name.includes('sold-b'))).toBe(true);
  });

  it('leaves nothing for later when a file of a vehicle in stock is bad: it may be one that lies there twice', async () => {
    const folder = await ledger();
    await writeFile(join(folder, 'vehicles', 'copy.json'), await textOf(folder, 'vehicles/here.json'));
    const store = await openForTest(folder, { readsSoldLaterFrom: 1, readSoldAfter: new Promise(() => {}) });
    await store.whole;
    expect(store.vehicles().size).toBe(5);
    expect(store.troubles()).toMatchObject([{ kind: 'doubled' }]);
  });

  it('closes in good order though it was never read on', async () => {
    const { held, letGo } = hold();
    const store = await openForTest(await ledger(), { readsSoldLaterFrom: 1, readSoldAfter: held });
    letGo();
    await store.close();
    expect(store.soldToRead).toBe(0);
  });
});
