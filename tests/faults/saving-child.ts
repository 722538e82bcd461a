// Run as a process of its own and killed at any moment: saves without end and says on its output what has been acknowledged.
// Lines: 'opened', then 'saved <vehicle> <revision> <key tag>', 'withdrawn <vehicle>', 'back <vehicle>', 'backup <id>'.
import { writeSync } from 'node:fs';
import { openFleet } from '../../app/storage/open-fleet.ts';
import { aVehicle } from '../storage/fleet-records-fixture.ts';
import { byAda } from '../storage/telling-fixture.ts';

const [folder = '', round = ''] = process.argv.slice(2);
const clock = () => new Date().toISOString();
/** Straight to the pipe: a line that is out is out, whatever happens to this process next. */
const say = (line: string) => writeSync(1, `${line}\n`);

const opened = await openFleet({ folder, clock, owner: { user: 'child', host: 'desk-1', processId: process.pid } });
if (!opened.ok) throw new Error(opened.error.detail);
const store = opened.value;
if (store.isReadOnly) throw new Error(store.isReadOnly.sentence);
say('opened');

async function save(id: string, keyTag: string): Promise<void> {
  const saved = await store.saveVehicle(aVehicle(id, keyTag), store.vehicles().get(id)?.revision ?? 0, byAda);
  if (!saved.ok) throw new Error(saved.error.detail);
  say(`saved ${id} ${saved.value.revision} ${keyTag}`);
}

async function withdrawAndBringBack(id: string): Promise<void> {
  const withdrawn = await store.withdrawVehicle(id, store.vehicles().get(id)?.revision ?? 0, byAda);
  if (!withdrawn.ok) throw new Error(withdrawn.error.detail);
  say(`withdrawn ${id}`);
  const back = await store.bringBackVehicle(id, byAda);
  if (!back.ok) throw new Error(back.error.detail);
  say(`back ${id}`);
}

for (let count = 1; ; count++) {
  // Several at once, as a person's quick changes arrive; one is long, so that its write takes several calls.
  const long = count % 5 === 0 ? 'x'.repeat(24) : `${round}-${count}`;
  await Promise.all([save('aaaa', `${round}-${count}`), save('bbbb', long), save(`new-${round}-${count % 50}`, 'new')]);
  if (count % 3 === 0) await withdrawAndBringBack('aaaa');
  if (count % 5 === 0) {
    const made = await store.backUp('by-hand');
    if (!made.ok) throw new Error(made.error.detail);
    say(`backup ${made.value.id}`);
  }
}
