// Makes a fleet of any size out of the invented sample: the same stories again under other identities and stock numbers.
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

export type GrownFleet = { readonly firstId: string; readonly firstStockNumber: string };

type Written = { data: { id: string; identity: { stockNumber: string }; sale: unknown } };

/**
 * Writes a fleet of `count` vehicles into `folder`, which is made here, out of the sample fleet in `sample`; names one open vehicle of it.
 * `inStock`: how many of them are not sold; null: as many as in the sample, in proportion.
 */
export function growFleet(sample: string, folder: string, count: number, inStock: number | null = null): GrownFleet {
  mkdirSync(path.join(folder, 'vehicles'), { recursive: true });
  cpSync(path.join(sample, 'shop.json'), path.join(folder, 'shop.json'));
  const records = readdirSync(path.join(sample, 'vehicles')).map(
    (name): Written => JSON.parse(readFileSync(path.join(sample, 'vehicles', name), 'utf8')),
  );
  // Open vehicles first, so that a small fleet is one as it stands in a yard.
  records.sort((a, b) => Number(a.data.sale !== null) - Number(b.data.sale !== null));
  const open = records.filter(({ data }) => data.sale === null);
  const sold = records.filter(({ data }) => data.sale !== null);
  const pick = (index: number) => {
    if (inStock === null) return { of: records, at: index };
    return index < inStock ? { of: open, at: index } : { of: sold, at: index - inStock };
  };
  for (let index = 0; index < count; index += 1) {
    const { of, at } = pick(index);
    const kept = of[at % of.length];
    if (kept === undefined) throw new Error('The sample has no vehicle of this sort.');
    const record = structuredClone(kept);
    const turn = Math.floor(at / of.length);
    if (turn > 0) {
      record.data.id = `${record.data.id}-${turn}`;
      record.data.identity.stockNumber = `${record.data.identity.stockNumber}-${turn}`;
    }
    writeFileSync(path.join(folder, 'vehicles', `${record.data.id}.json`), `${JSON.stringify(record, null, 2)}\n`);
  }
  const first = records[0]?.data;
  if (first === undefined) throw new Error('The sample is empty.');
  return { firstId: first.id, firstStockNumber: first.identity.stockNumber };
}
