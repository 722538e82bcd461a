// Invented vehicles in the middle of programming: everything is in hand and a step has not worked yet.
import { type Untold, untold } from './open-story.ts';
import { bodyAndKeys, engineModule } from './sample-jobs.ts';
import { codeDesks, people, sources, suppliers } from './sample-shop.ts';

export const programming: readonly Untold[] = [
  untold(
    {
      boughtOn: '2026-02-12',
      model: 'skerry',
      year: 2018,
      colour: 'orange',
      miles: 76_500,
      source: sources.auction,
      price: 12_900,
      fees: 385,
      transport: 180,
      arrivesBy: '2026-02-17',
      paperBy: '2026-02-26',
      keys: 2,
      asking: 17_495,
      budget: 1_300,
      budgets: { parts: 250, labour: 800, codes: 50 },
      trade: 12_700,
      floor: 900,
    },
    (story) => {
      story.on('2026-02-17').arrive('workshop, bay 3', 'W3');
      story.on('2026-02-18').scan('pre-repair', ['Body: silent', 'Engine: U0140 present']);
      const dead = story.find('body control module drowned: windscreen drain blocked', 'control-module', {
        module: 'Body',
        codes: ['U0140'],
        note: 'Drain cleared. Carpet lifted and dried.',
        tellBuyer: true,
      });
      story.on('2026-02-19').decide(dead, 'replace', 240);
      story.on('2026-02-20');
      const unit = story.need('body control module, used', 150, dead, { number: 'SK2-84-019' });
      story.order(unit, suppliers.salvage, '2026-03-04');
      const code = story.ask('immobiliser', 'Body', codeDesks.maker, '2026-02-27', { fee: 40, fault: dead });
      const job = story.openJob('Body', bodyAndKeys('used', { part: unit, code }), dead);
      story.workUpTo(job, 'save-old');
      for (const route of ['on-vehicle', 'pass-through'] as const)
        story.attempt(job, 'save-old', 'failed', route, { message: 'no answer' });
      story.workUpTo(job, 'fit', { skip: 'save-old' });
      story.attempt(job, 'save-old', 'worked', 'bench', {
        message: 'memory read with the board dried out',
        evidence: 'bench computer, folder of the stock number',
      });
      story.book(120, 'drain cleared, carpet out, old module read', 'interior', dead, people.secondTechnician);
      story.on('2026-02-26').answer(code, 'given');
      story.paper();
      story.on('2026-03-06').receive(unit);
      story.on('2026-03-09').workUpTo(job, 'look-for-locks');
      story.fit(unit);
      story.book(60, 'used module fitted', 'control-module', dead);
      story.on('2026-03-10').workUpTo(job, 'write-software');
      story.attempt(job, 'write-software', 'failed', 'on-vehicle', {
        volts: [12.7, 11.6, 12.3],
        message: 'stopped at 62 %, supply fell',
      });
      story.on('2026-03-11').attempt(job, 'write-software', 'worked', 'bench', { volts: [13.4, 13.3, 13.4] });
      story.workUpTo(job, 'body-takes-identity');
      story.vouch(job, 'keys-present');
      story.on('2026-03-12').workUpTo(job, 'reteach-keys');
      story.on('2026-03-13').attempt(job, 'reteach-keys', 'failed', 'on-vehicle', {
        message: 'first key taken, second not',
      });
      story.on('2026-03-16').attempt(job, 'reteach-keys', 'failed', 'on-vehicle', {
        message: 'second key: chip answers, not accepted; one try left, stopped to ask',
        volts: [13.3, 13.1, 13.2],
      });
    },
  ),
  untold(
    {
      boughtOn: '2026-02-19',
      model: 'pell',
      year: 2018,
      colour: 'white',
      miles: 84_300,
      source: sources.auction,
      price: 6_150,
      fees: 285,
      transport: 120,
      arrivesBy: '2026-02-23',
      paperBy: '2026-03-05',
      keys: 2,
      asking: 8_995,
      budget: 900,
      trade: 5_900,
      floor: 500,
    },
    (story) => {
      story.on('2026-02-23').arrive('row C', 'C2');
      story.on('2026-02-24').scan('pre-repair', ['Engine: P062F present'], 'Dies at idle, starts again.');
      const memory = story.find('engine module loses its memory, engine dies', 'engine', {
        module: 'Engine',
        codes: ['P062F'],
      });
      story.on('2026-02-26').decide(memory, 'replace', 150);
      story.on('2026-02-27');
      const unit = story.need('engine control module, used, same part number', 130, memory, { number: 'PL3-18-807' });
      story.order(unit, suppliers.salvage, '2026-03-09');
      const job = story.openJob('Engine', engineModule('cloned', unit), memory);
      story.on('2026-03-04').paper();
      story.on('2026-03-10').receive(unit);
      story.on('2026-03-11').workUpTo(job, 'clone-data');
      story.book(40, 'old engine module out and read', 'engine', memory);
      story
        .on('2026-03-12')
        .attempt(job, 'clone-data', 'stopped', 'bench', { message: 'bench lead broken, new one ordered' });
    },
  ),
  untold(
    {
      boughtOn: '2026-02-25',
      model: 'bight',
      year: 2019,
      colour: 'silver',
      miles: 61_900,
      source: sources.auction,
      price: 15_900,
      fees: 385,
      transport: 160,
      arrivesBy: '2026-02-27',
      paperBy: '2026-03-09',
      keys: 2,
      asking: 20_495,
      budget: 1_200,
      trade: 15_400,
      floor: 1_000,
    },
    (story) => {
      story.on('2026-02-27').arrive('workshop, bay 5', 'W5');
      story
        .on('2026-03-02')
        .scan('pre-repair', ['Body: U3003 history, B1342 present', 'Engine: U0140 history', 'Radio: U0140 history']);
      const faulty = story.find('body control module resets while driving, wipers stop', 'control-module', {
        module: 'Body',
        codes: ['B1342', 'U0140'],
        note: 'Supply and ground are good. Do not drive it: wipers and lights stop for seconds.',
        tellBuyer: true,
      });
      story.on('2026-03-03').decide(faulty, 'replace', 240);
      const unit = story.need('body control module, new', 540, faulty, { number: 'BT4-84-207' });
      story.order(unit, suppliers.newParts, '2026-03-13');
      const code = story.ask('immobiliser', 'Body', codeDesks.maker, '2026-03-10', { fee: 40, fault: faulty });
      story.openJob(
        'Body',
        [
          ['body', 'Body', 'new', { part: unit, code }],
          ['keys', 'Keys', 'kept', { code }],
          ['radio', 'Radio', 'kept'],
        ],
        faulty,
      );
      story.on('2026-03-09').paper();
      story.on('2026-03-11').answer(code, 'given');
      story.on('2026-03-17').receive(unit);
    },
  ),
];
