// Makes a fleet of any size out of the invented sample: the same stories again under other identities and stock numbers.
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/**
 * @param {string} sample folder of the sample fleet
 * @param {string} folder where the grown fleet is written; made here
 * @param {number} count how many vehicles it is to hold
 * @param {number | null} inStock how many of them are not sold; null: as many as in the sample, in proportion
 * @returns {{firstId: string, firstStockNumber: string}} one open vehicle of it
 */
export function growFleet(sample, folder, count, inStock = null) {
  mkdirSync(path.join(folder, 'vehicles'), { recursive: true });
  cpSync(path.join(sample, 'shop.json'), path.join(folder, 'shop.json'));
  const records = readdirSync(path.join(sample, 'vehicles')).map((name) =>
    JSON.parse(readFileSync(path.join(sample, 'vehicles', name), 'utf8')),
  );
  // Open vehicles first, so that a small fleet is one as it stands in a yard.
  records.sort((a, b) => Number(a.data.sale !== null) - Number(b.data.sale !== null));
  const open = records.filter(({ data }) => data.sale === null);
  const sold = records.filter(({ data }) => data.sale !== null);
  /** @param {number} index */
  const pick = (index) => {
    if (inStock === null) return { of: records, at: index };
    return index < inStock ? { of: open, at: index } : { of: sold, at: index - inStock };
  };
  for (let index = 0; index < count; index += 1) {
    const { of, at } = pick(index);
    const record = structuredClone(of[at % of.length]);
    const turn = Math.floor(at / of.length);
    if (turn > 0) {
      record.data.id = `${record.data.id}-${turn}`;
      record.data.identity.stockNumber = `${record.data.identity.stockNumber}-${turn}`;
    }
    writeFileSync(path.join(folder, 'vehicles', `${record.data.id}.json`), `${JSON.stringify(record, null, 2)}\n`);
  }
  const first = records[0].data;
  return { firstId: first.id, firstStockNumber: first.identity.stockNumber };
}
