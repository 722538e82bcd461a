// Invented vehicles in the middle of programming: everything is in hand and a step has not worked yet.
import { type Untold, untold } from './open-story.ts';
import { codeDesks, people, sources, suppliers } from './sample-shop.ts';
import { bodySteps, engineSteps } from './sample-steps.ts';

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
      const job = story.openJob('Body', 'used', bodySteps('used', true), { fault: dead, part: unit, code });
      story.attempt(job, 1, 'worked', 'bench', { message: 'memory read with the board dried out' });
      story.book(120, 'drain cleared, carpet out, old module read', 'interior', dead, people.secondTechnician);
      story.on('2026-02-26').answer(code, 'given');
      story.paper();
      story.on('2026-03-06').receive(unit);
      story.on('2026-03-09').attempt(job, 2, 'worked', 'by-hand');
      story.fit(unit);
      story.book(60, 'used module fitted', 'control-module', dead);
      story.on('2026-03-10').attempt(job, 3, 'failed', 'on-vehicle', {
        volts: [12.7, 11.6, 12.3],
        message: 'stopped at 62 %, supply fell',
      });
      story.on('2026-03-11').attempt(job, 3, 'worked', 'bench', { volts: [13.4, 13.3, 13.4] });
      story.attempt(job, 4, 'worked', 'bench');
      story.on('2026-03-13').attempt(job, 5, 'failed', 'on-vehicle', { message: 'first key taken, second not' });
      story.on('2026-03-16').attempt(job, 5, 'failed', 'on-vehicle', {
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
      const job = story.openJob('Engine', 'cloned', engineSteps('cloned'), { fault: memory, part: unit });
      story.on('2026-03-04').paper();
      story.on('2026-03-10').receive(unit);
      story.on('2026-03-11').attempt(job, 1, 'worked', 'bench', { volts: [13.4, 13.4, 13.4] });
      story.book(40, 'old engine module out and read', 'engine', memory);
      story.on('2026-03-12').attempt(job, 2, 'stopped', 'bench', { message: 'bench lead broken, new one ordered' });
    },
  ),
];
