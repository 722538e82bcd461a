// Invented vehicles whose work is done: not proven yet, proven once and worked on since, not fit to be seen yet, never priced.
import { present, prove } from './closing-chapters.ts';
import { type Untold, untold } from './open-story.ts';
import { checks, people, sources, suppliers } from './sample-shop.ts';

export const proving: readonly Untold[] = [
  untold(
    {
      boughtOn: '2026-02-24',
      model: 'skerry',
      year: 2019,
      colour: 'white',
      miles: 58_700,
      source: sources.auction,
      price: 15_100,
      fees: 385,
      transport: 180,
      arrivesBy: '2026-02-26',
      paperBy: '2026-03-06',
      keys: 2,
      asking: 18_995,
      budget: 1_100,
      trade: 14_800,
      floor: 900,
    },
    (story) => {
      story.on('2026-02-26').arrive('row B', 'B1');
      story.on('2026-02-27').scan('pre-repair', ['Engine: P0302 present']);
      const misfire = story.find('misfires cold', 'engine', { module: 'Engine', codes: ['P0302'] });
      const discs = story.find('front brake discs scored', 'brakes');
      story.on('2026-03-02').decide(misfire, 'repair', 60);
      story.decide(discs, 'replace', 110);
      const coil = story.need('ignition coil', 74, misfire);
      story.order(coil, suppliers.counter, '2026-03-03');
      const set = story.need('front discs and pads', 212, discs);
      story.order(set, suppliers.newParts, '2026-03-06');
      story.on('2026-03-03').receive(coil);
      story.on('2026-03-05').paper();
      story.fit(coil, people.secondTechnician);
      story.book(50, 'coil, cylinder 2', 'engine', misfire, people.secondTechnician);
      story.finish(misfire, people.secondTechnician);
      story.on('2026-03-10').receive(set);
      story.on('2026-03-13').fit(set);
      story.book(105, 'front discs and pads', 'brakes', discs);
      story.finish(discs);
      // The misfire is gone, and nothing has tested it yet: the catalyst and the vapour system are still to run.
      story.on('2026-03-16').scan('post-repair', [], 'Cleared, then once round the yard.', people.secondTechnician, {
        clearedBefore: true,
        monitorBytes: [0x00, 0x07, 0x65, 0x05],
        warmUpsSinceClear: 1,
        distanceSinceClear: { reading: 3, unit: 'mi' },
      });
    },
  ),
  untold(
    {
      boughtOn: '2026-02-13',
      model: 'fjell',
      year: 2016,
      colour: 'red',
      miles: 101_300,
      source: sources.tradeIn,
      price: 14_400,
      fees: 0,
      transport: 0,
      arrivesBy: null,
      paperBy: '2026-02-20',
      keys: 2,
      asking: 18_495,
      budget: 1_300,
      trade: 14_000,
      floor: 900,
    },
    (story) => {
      story.arrive('row D', 'D2');
      story.on('2026-02-18').scan('pre-repair', ['Brakes: C0035 history']);
      const bearing = story.find('left front wheel bearing howls', 'steering-suspension', { module: 'Brakes' });
      story.on('2026-02-19').paper();
      story.on('2026-02-20').decide(bearing, 'replace', 120);
      const hub = story.need('wheel bearing with sensor', 188, bearing);
      story.order(hub, suppliers.newParts, '2026-02-25');
      story.on('2026-02-25').receive(hub);
      story.on('2026-02-26').fit(hub);
      story.book(115, 'left front wheel bearing', 'steering-suspension', bearing);
      story.finish(bearing);
      prove(story, '2026-03-03');
      present(story, '2026-03-04', '2026-03-05');
      story.on('2026-03-11').remark('Customer drove it: brakes squeal. Wants it if that goes away.', people.sales);
      const squeal = story.find('rear brakes squeal', 'brakes');
      story.decide(squeal, 'repair', 60);
      const pads = story.need('rear brake pads', 64, squeal);
      story.order(pads, suppliers.counter, '2026-03-12');
      story.on('2026-03-12').receive(pads);
      story.on('2026-03-13').fit(pads, people.secondTechnician);
      story.book(60, 'rear brake pads', 'brakes', squeal, people.secondTechnician);
      story.finish(squeal, people.secondTechnician);
    },
  ),
  untold(
    {
      boughtOn: '2026-02-23',
      model: 'madrigal',
      year: 2018,
      colour: 'dark blue',
      miles: 66_200,
      source: sources.fleetAuction,
      price: 12_100,
      fees: 310,
      transport: 160,
      arrivesBy: '2026-02-25',
      paperBy: '2026-03-05',
      keys: 1,
      asking: 15_495,
      budget: 900,
      trade: 11_900,
      floor: 800,
    },
    (story) => {
      story.on('2026-02-25').arrive('row B', 'B4');
      story.on('2026-02-26').scan('pre-repair', ['Engine: P0442 present']);
      const cap = story.find('small leak in the fuel vapour system', 'engine', { module: 'Engine', codes: ['P0442'] });
      const bumper = story.find('rear bumper scratched', 'body');
      story.on('2026-03-02').decide(cap, 'repair', 45);
      story.decide(bumper, 'leave', null, 'Priced in; shown in the photographs.');
      const seal = story.need('filler cap and vent valve', 58, cap);
      story.order(seal, suppliers.newParts, '2026-03-05');
      story.on('2026-03-05').receive(seal);
      story.paper();
      story.on('2026-03-06').fit(seal, people.secondTechnician);
      story.book(50, 'filler cap and vent valve, leak test', 'engine', cap, people.secondTechnician);
      story.finish(cap, people.secondTechnician);
      prove(story, '2026-03-12');
      story.on('2026-03-13').sign(checks.ownerData, people.sales);
    },
  ),
  untold(
    {
      boughtOn: '2026-02-06',
      model: 'bight',
      year: 2018,
      colour: 'black',
      miles: 52_900,
      source: sources.privateSeller,
      price: 15_300,
      fees: 45,
      transport: 0,
      arrivesBy: null,
      paperBy: '2026-02-13',
      keys: 2,
      asking: null,
      budget: 900,
      trade: 14_900,
      floor: 1_000,
    },
    (story) => {
      story.arrive('showroom', 'S1');
      story.on('2026-02-10').scan('pre-repair', []);
      const seat = story.find('driver’s seat switch loose', 'interior');
      story.on('2026-02-11').decide(seat, 'repair', 30);
      story.paper();
      story.on('2026-02-13').book(30, 'seat switch', 'interior', seat, people.secondTechnician);
      story.finish(seat, people.secondTechnician);
      prove(story, '2026-02-17');
      present(story, '2026-02-18', '2026-02-19');
      story.on('2026-03-02').remark('Asked twice for a price. Two people wanted to see it.', people.sales);
    },
  ),
];
