// Invented vehicles that wait for paper, that nobody moves, and that are ready.
import { present, prove } from './closing-chapters.ts';
import { type Untold, untold } from './open-story.ts';
import { people, sources, suppliers } from './sample-shop.ts';

export const nearlyThere: readonly Untold[] = [
  untold(
    {
      boughtOn: '2026-02-02',
      model: 'mallow',
      year: 2019,
      colour: 'silver',
      miles: 57_800,
      source: sources.auction,
      price: 14_700,
      fees: 385,
      transport: 120,
      arrivesBy: '2026-02-05',
      paperBy: '2026-02-27',
      keys: 2,
      asking: 18_495,
      budget: 900,
      trade: 14_400,
      floor: 900,
    },
    (story) => {
      story.on('2026-02-05').arrive('row A', 'A2');
      story.on('2026-02-06').scan('pre-repair', []);
      const tyres = story.find('two tyres below 3 mm', 'tyres-wheels');
      story.on('2026-02-09').decide(tyres, 'replace', 45);
      const pair = story.need('pair of tyres', 248, tyres);
      story.order(pair, suppliers.counter, '2026-02-10');
      story.on('2026-02-10').receive(pair);
      story.on('2026-02-11').fit(pair, people.secondTechnician);
      story.book(45, 'two tyres', 'tyres-wheels', tyres, people.secondTechnician);
      story.finish(tyres, people.secondTechnician);
      prove(story, '2026-02-13');
      present(story, '2026-02-17', '2026-02-18');
      story.on('2026-03-02').remark('Auction: title sent to the wrong dealer, on its way back.');
      story.expectPaper('2026-03-27');
    },
  ),
  untold(
    {
      boughtOn: '2026-02-11',
      model: 'teasel',
      year: 2018,
      colour: 'beige',
      miles: 78_900,
      source: sources.fleetAuction,
      price: 13_300,
      fees: 310,
      transport: 160,
      arrivesBy: '2026-02-13',
      paperBy: '2026-02-24',
      keys: 2,
      asking: 17_295,
      budget: 900,
      trade: 13_000,
      floor: 800,
    },
    (story) => {
      story.on('2026-02-13').arrive('row D', 'D8');
      story.on('2026-02-16').scan('pre-repair', []);
      const window = story.find('left rear window drops, regulator broken', 'body');
      story.on('2026-02-18').decide(window, 'replace', 90);
      const regulator = story.need('window regulator, left rear', 136, window, { number: 'TS6-72-511' });
      story.order(regulator, suppliers.newParts, '2026-02-25');
      story.on('2026-02-20').paper();
      story.on('2026-02-26').receive(regulator);
    },
  ),
  untold(
    {
      boughtOn: '2026-01-22',
      model: 'pell',
      year: 2015,
      colour: 'green',
      miles: 109_700,
      source: sources.tradeIn,
      price: 5_300,
      fees: 0,
      transport: 0,
      arrivesBy: null,
      paperBy: '2026-01-29',
      keys: 2,
      asking: 6_695,
      budget: 600,
      trade: 4_900,
      floor: 400,
    },
    (story) => {
      story.arrive('row E', 'E3');
      story.on('2026-01-27').scan('pre-repair', ['Engine: P0171 present']);
      const lean = story.find('runs lean, intake hose split', 'engine', { module: 'Engine', codes: ['P0171'] });
      const starter = story.find('starter drags when hot', 'electrical');
      story.on('2026-01-29').paper();
      story.on('2026-02-02').decide(lean, 'repair', 45);
      story.decide(starter, 'replace', 100);
      const hose = story.need('intake hose', 46, lean);
      story.order(hose, suppliers.counter, '2026-02-03');
      story.on('2026-02-03').receive(hose);
      story.on('2026-02-05').fit(hose, people.secondTechnician);
      story.book(40, 'intake hose', 'engine', lean, people.secondTechnician);
      story.finish(lean, people.secondTechnician);
      story.need('starter, exchange', 225, starter, { core: 60 });
      story
        .on('2026-02-26')
        .book(25, 'moved and jump-started to let others out', 'other', null, people.secondTechnician);
    },
  ),
  untold(
    {
      boughtOn: '2026-02-03',
      model: 'cantle',
      year: 2019,
      colour: 'white',
      miles: 54_300,
      source: sources.fleetAuction,
      price: 13_600,
      fees: 310,
      transport: 160,
      arrivesBy: '2026-02-05',
      paperBy: '2026-02-16',
      keys: 2,
      asking: 17_495,
      budget: 900,
      trade: 13_300,
      floor: 900,
    },
    (story) => {
      story.on('2026-02-05').arrive('front row', 'F1');
      story.on('2026-02-06').scan('pre-repair', ['Radio: U0184 history']);
      const brakes = story.find('rear brake pads 2 mm', 'brakes');
      const chip = story.find('stone chip in the windscreen, not in the driver’s view', 'body', { tellBuyer: true });
      story.on('2026-02-10').decide(brakes, 'replace', 70);
      story.decide(chip, 'leave', null, 'Filled by the seller, holds; the buyer is told.');
      const pads = story.need('rear brake pads', 69, brakes);
      story.order(pads, suppliers.counter, '2026-02-11');
      story.on('2026-02-11').receive(pads);
      story.on('2026-02-17').paper();
      story.on('2026-02-19').fit(pads);
      story.book(70, 'rear brake pads', 'brakes', brakes);
      story.finish(brakes);
      prove(story, '2026-02-24');
      present(story, '2026-03-03', '2026-03-05');
    },
  ),
  untold(
    {
      boughtOn: '2026-01-08',
      model: 'quaver',
      year: 2019,
      colour: 'red',
      miles: 47_500,
      source: sources.auction,
      price: 11_100,
      fees: 385,
      transport: 180,
      arrivesBy: '2026-01-12',
      paperBy: '2026-01-23',
      keys: 2,
      asking: 14_995,
      budget: 800,
      trade: 10_600,
      floor: 800,
    },
    (story) => {
      story.on('2026-01-12').arrive('front row', 'F4');
      story.on('2026-01-14').scan('pre-repair', []);
      const blower = story.find('cabin fan noisy', 'climate');
      story.on('2026-01-16').decide(blower, 'replace', 60);
      const fan = story.need('cabin fan', 118, blower);
      story.order(fan, suppliers.newParts, '2026-01-23');
      story.on('2026-01-21').paper();
      story.on('2026-01-26').receive(fan);
      story.on('2026-01-28').fit(fan, people.secondTechnician);
      story.book(65, 'cabin fan', 'climate', blower, people.secondTechnician);
      story.finish(blower, people.secondTechnician);
      prove(story, '2026-01-30');
      present(story, '2026-02-03', '2026-02-04');
      story.on('2026-03-02').price(14_495);
      story.remark('Five weeks out front. Down 500.');
    },
  ),
];
