// The invented vehicle that shows when to stop: one repair after the other, over its budget, its margin gone.
import { type Untold, untold } from './open-story.ts';
import { engineModule } from './sample-jobs.ts';
import { people, sources, suppliers, workshops } from './sample-shop.ts';

export const longStay: Untold = untold(
  {
    boughtOn: '2025-12-12',
    model: 'teasel',
    year: 2015,
    colour: 'blue',
    miles: 121_500,
    source: sources.auction,
    price: 6_900,
    fees: 285,
    transport: 140,
    arrivesBy: '2025-12-16',
    paperBy: '2025-12-30',
    keys: 2,
    asking: 10_495,
    budget: 1_400,
    budgets: { parts: 350, labour: 450, sublet: 500 },
    trade: 6_300,
    floor: 500,
  },
  (story) => {
    story.on('2025-12-16').arrive('row D', 'D4');
    story.on('2025-12-17').scan('pre-repair', ['Engine: P0302 present, P0300 history']);
    const misfire = story.find('misfires under load', 'engine', { module: 'Engine', codes: ['P0302', 'P0300'] });
    story.on('2025-12-18').decide(misfire, 'repair', 120);
    const coils = story.need('set of ignition coils and plugs', 318, misfire);
    story.order(coils, suppliers.counter, '2025-12-19');
    story.on('2025-12-19').receive(coils);
    story.on('2025-12-22').fit(coils);
    story.book(130, 'coils and plugs', 'engine', misfire);
    story.on('2025-12-23').paper();
    story.finish(misfire);
    story.on('2026-01-07').book(35, 'road test', 'transmission');
    const slips = story.find('transmission slips from second to third', 'transmission', {
      module: 'Transmission',
      codes: ['P0700', 'P0841'],
      tellBuyer: true,
    });
    story.on('2026-01-12').decide(slips, 'repair', 60);
    const valves = story.send('valve body and fluid', workshops.transmission, 'transmission', '2026-01-23', {
      fault: slips,
      quoted: 1_150,
    });
    story.on('2026-02-06').bring(valves, 1_420);
    story.finish(slips);
    story.on('2026-02-10').scan('in-between', ['Engine: P062F present']);
    const memory = story.find('engine module: memory fault, stalls when warm', 'engine', {
      module: 'Engine',
      codes: ['P062F'],
    });
    story.on('2026-02-12').decide(memory, 'replace', 150);
    const unit = story.need('engine control module, repaired unit', 465, memory, { core: 180 });
    story.order(unit, suppliers.exchange, '2026-02-20');
    const job = story.openJob('Engine', engineModule('cloned', unit), memory);
    story.workUpTo(job, 'save-old');
    story.attempt(job, 'save-old', 'worked', 'on-vehicle', { volts: [13.4, 13.2, 13.4] });
    story.on('2026-02-24').receive(unit);
    story.on('2026-02-26').workUpTo(job, 'clone-data');
    story.attempt(job, 'clone-data', 'failed', 'bench', { message: 'file of the old unit refused, checksum' });
    story.on('2026-03-02').attempt(job, 'clone-data', 'worked', 'bench', { volts: [13.4, 13.3, 13.4] });
    story.book(140, 'engine module read, copied, fitted', 'engine', memory);
    story.fit(unit);
    story.workUpTo(job, 'look-for-locks');
    story.on('2026-03-04').workUpTo(job, null);
    story.finish(memory);
    story.on('2026-03-05').returnCore(unit);
    story.on('2026-03-06').scan('post-repair', ['Engine: P0420 present'], 'Came back after 40 miles.');
    story.find('catalyst worn out, lamp comes back', 'engine', {
      module: 'Engine',
      codes: ['P0420'],
      note: 'New one about 1,350 with labour. Ask what the trade would give before spending that.',
      tellBuyer: true,
    });
    story.remark('Third thing since Christmas. Is it still worth finishing?', people.technician);
  },
);
