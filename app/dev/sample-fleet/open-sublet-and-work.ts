// Invented vehicles that are with somebody else, and one that is being worked on today.
import { type Untold, untold } from './open-story.ts';
import { people, sources, suppliers, workshops } from './sample-shop.ts';

export const subletAndWork: readonly Untold[] = [
  untold(
    {
      boughtOn: '2026-02-10',
      model: 'mallow',
      year: 2017,
      colour: 'blue',
      miles: 94_600,
      source: sources.tradeIn,
      price: 9_600,
      fees: 0,
      transport: 0,
      arrivesBy: null,
      paperBy: '2026-02-17',
      keys: 2,
      asking: 13_495,
      budget: null,
      budgets: { labour: 250, sublet: 1_250 },
      trade: 8_900,
      floor: 700,
    },
    (story) => {
      story.arrive('row D', 'D6');
      story.on('2026-02-13').scan('pre-repair', ['Hybrid: P0AA6 present'], 'Shuts the hybrid system off in the wet.');
      const leak = story.find('high-voltage insulation fault', 'high-voltage', {
        module: 'Hybrid',
        codes: ['P0AA6'],
        note: 'Left alone, keys away, taped off. Work for qualified people only.',
        tellBuyer: true,
      });
      story.on('2026-02-17').decide(leak, 'repair', 0, 'Sent out: nobody of ours is qualified.');
      story.paper();
      story
        .on('2026-02-24')
        .send('insulation fault found and put right', workshops.highVoltage, 'high-voltage', '2026-03-24', {
          fault: leak,
          quoted: 1_180,
          note: 'Quote after they opened the compressor circuit.',
        });
      story.move(workshops.highVoltage);
    },
  ),
  untold(
    {
      boughtOn: '2026-02-27',
      model: 'marram',
      year: 2021,
      colour: 'grey',
      miles: 44_100,
      source: sources.fleetAuction,
      price: 19_900,
      fees: 425,
      transport: 180,
      arrivesBy: '2026-03-02',
      paperBy: '2026-03-11',
      keys: 2,
      asking: 24_495,
      budget: 1_300,
      trade: 19_600,
      floor: 1_000,
    },
    (story) => {
      story.on('2026-03-02').arrive('row A', 'A7');
      story.on('2026-03-03').scan('pre-repair', []);
      const glass = story.find('windscreen cracked across the camera', 'body', {
        note: 'Camera behind it must be set again after the glass.',
      });
      const pads = story.find('front brake pads 2 mm', 'brakes');
      story.on('2026-03-04').decide(glass, 'replace', 0);
      story.decide(pads, 'replace', 70);
      const set = story.need('front brake pads', 78, pads);
      story.order(set, suppliers.counter, '2026-03-05');
      story.on('2026-03-05').receive(set);
      story.on('2026-03-09').fit(set, people.secondTechnician);
      story.paper();
      story.book(65, 'front brake pads', 'brakes', pads, people.secondTechnician);
      story.finish(pads, people.secondTechnician);
      story.on('2026-03-16').send('windscreen and camera calibration', workshops.glass, 'electrical', '2026-03-19', {
        fault: glass,
        quoted: 640,
      });
      story.move(workshops.glass);
    },
  ),
  untold(
    {
      boughtOn: '2026-03-02',
      model: 'cantle',
      year: 2018,
      colour: 'red',
      miles: 71_400,
      source: sources.auction,
      price: 11_300,
      fees: 385,
      transport: 120,
      arrivesBy: '2026-03-04',
      paperBy: '2026-03-13',
      keys: 1,
      asking: 14_795,
      budget: 900,
      trade: 11_000,
      floor: 800,
    },
    (story) => {
      story.on('2026-03-04').arrive('workshop, bay 4', 'W4');
      story
        .on('2026-03-05')
        .scan('pre-repair', ['Airbag: B0100 present'], 'Lamp on; small repaired dent in the front.');
      const lamp = story.find('airbag lamp: front crash sensor', 'airbag', {
        module: 'Airbag',
        codes: ['B0100'],
        tellBuyer: true,
      });
      story.on('2026-03-06').decide(lamp, 'replace', 100);
      const sensor = story.need('front crash sensor', 148, lamp, { number: 'CT5-66-204' });
      story.order(sensor, suppliers.newParts, '2026-03-16');
      story.on('2026-03-11').paper();
      story.on('2026-03-17').receive(sensor);
      story.on('2026-03-18').book(55, 'battery off, waited, sensor being fitted', 'airbag', lamp);
    },
  ),
];
