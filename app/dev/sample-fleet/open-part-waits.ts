// Invented vehicles that wait for a part: on its way, promised and overdue, and ordered again after a used unit would not be matched.
import { type Untold, untold } from './open-story.ts';
import { bodyAndKeys, clusterModule } from './sample-jobs.ts';
import { codeDesks, people, sources, suppliers } from './sample-shop.ts';

export const partWaits: readonly Untold[] = [
  untold(
    {
      boughtOn: '2026-02-26',
      model: 'fjell',
      year: 2018,
      colour: 'grey',
      miles: 79_600,
      source: sources.auction,
      price: 19_400,
      fees: 425,
      transport: 180,
      arrivesBy: '2026-03-02',
      paperBy: '2026-03-10',
      keys: 2,
      asking: 24_495,
      budget: 1_300,
      budgets: { parts: 300, labour: 700, codes: 60 },
      trade: 18_900,
      floor: 1_000,
    },
    (story) => {
      story.on('2026-03-02').arrive('workshop, bay 2', 'W2');
      story.on('2026-03-03').scan('pre-repair', ['Body: silent', 'Engine: U0140 present', 'Cluster: U0140 present']);
      const dead = story.find('body control module dead: locks, wipers and windows do nothing', 'control-module', {
        module: 'Body',
        codes: ['U0140'],
        note: 'Both fuses and the ground are good. Do not drive it: lights and wipers may stop.',
        tellBuyer: true,
      });
      story.on('2026-03-04').decide(dead, 'replace', 210);
      const unit = story.need('body control module, used', 165, dead, { number: 'FJ7-84-112' });
      story.on('2026-03-05').order(unit, suppliers.salvage, '2026-03-20');
      const code = story.ask('immobiliser', 'Body', codeDesks.maker, '2026-03-13', { fee: 40, fault: dead });
      const job = story.openJob('Body', bodyAndKeys('used', { part: unit, code }), dead);
      story.on('2026-03-06').paper();
      story.workUpTo(job, 'save-old');
      story.attempt(job, 'save-old', 'failed', 'on-vehicle', { message: 'no answer', volts: [13.3, 13.2, 13.3] });
      story.attempt(job, 'save-old', 'failed', 'pass-through', { message: 'no answer' });
      story.leaveOut(job, 'save-old', 'the module does not answer; data from the maker’s list for this VIN');
      story.book(50, 'plugs, grounds and network checked, old module will not answer', 'control-module', dead);
      story.on('2026-03-12').answer(code, 'given');
      story.underScheme(code, null);
    },
  ),
  untold(
    {
      boughtOn: '2026-02-09',
      model: 'quaver',
      year: 2020,
      colour: 'light blue',
      miles: 41_700,
      source: sources.fleetAuction,
      price: 12_600,
      fees: 310,
      transport: 160,
      arrivesBy: '2026-02-11',
      paperBy: '2026-02-20',
      keys: 2,
      asking: 17_495,
      budget: 2_000,
      trade: 12_000,
      floor: 900,
    },
    (story) => {
      story.on('2026-02-11').arrive('row B', 'B2');
      story.on('2026-02-12').scan('pre-repair', ['Charger: P1D7A present']);
      const charger = story.find('does not charge from the wall: on-board charger', 'high-voltage', {
        module: 'Charger',
        codes: ['P1D7A'],
        note: 'High voltage. Nobody of ours opens it.',
        tellBuyer: true,
      });
      story.on('2026-02-16').decide(charger, 'replace', 0, 'Voltmoor fits it when it is here.');
      const unit = story.need('on-board charger', 1_380, charger, { core: 250, number: 'KV9-30-771' });
      story.on('2026-02-18').paper();
      story.order(unit, suppliers.newParts, '2026-03-06');
      story.on('2026-03-09').remark('Penhallow: on back order, no new day given.', people.sales);
    },
  ),
  untold(
    {
      boughtOn: '2026-01-29',
      model: 'cantle',
      year: 2017,
      colour: 'brown',
      miles: 83_900,
      source: sources.auction,
      price: 9_750,
      fees: 385,
      transport: 120,
      arrivesBy: '2026-02-02',
      paperBy: '2026-02-13',
      keys: 2,
      asking: 12_795,
      budget: 1_000,
      trade: 9_400,
      floor: 700,
    },
    (story) => {
      story.on('2026-02-02').arrive('workshop, bay 1', 'W1');
      story.on('2026-02-03').scan('pre-repair', ['Cluster: silent', 'Engine: U0155 present']);
      const dead = story.find('instrument cluster goes dark when warm', 'control-module', {
        module: 'Cluster',
        codes: ['U0155'],
        tellBuyer: true,
      });
      story.on('2026-02-05').decide(dead, 'replace', 120);
      const used = story.need('instrument cluster, used', 140, dead, { number: 'CT5-92-330' });
      story.on('2026-02-06').order(used, suppliers.salvage, '2026-02-13');
      const job = story.openJob('Cluster', clusterModule('used', used), dead);
      story.on('2026-02-09').paper();
      story.workUpTo(job, 'save-old');
      story.attempt(job, 'save-old', 'worked', 'on-vehicle', { message: 'read between two failures, 83,911 miles' });
      story.on('2026-02-17').receive(used);
      story.on('2026-02-19').attempt(job, 'check-used', 'failed', 'bench', {
        message: 'locked to its old vehicle',
        evidence: 'photograph of the screen in the folder of the stock number',
      });
      story.book(75, 'used cluster tried', 'control-module', dead);
      story.on('2026-02-23').sendBack(used, 'locked to its old vehicle, money back');
      const repaired = story.need('instrument cluster, own unit repaired or exchanged', 420, dead, { core: 120 });
      story.on('2026-03-04').order(repaired, suppliers.exchange, '2026-03-24');
      story.relink(job, { partId: repaired, origin: 'repaired' });
    },
  ),
];
