// Invented vehicles that have only just been bought: on the truck, not looked at yet, scanned today, or with a fault nobody has decided.
import { type Untold, untold } from './open-story.ts';
import { codeDesks, people, sources, suppliers } from './sample-shop.ts';

export const arriving: readonly Untold[] = [
  untold(
    {
      boughtOn: '2026-03-16',
      model: 'madrigal',
      year: 2019,
      colour: 'white',
      miles: 61_200,
      source: sources.auction,
      price: 11_900,
      fees: 385,
      transport: 180,
      arrivesBy: '2026-03-20',
      paperBy: '2026-03-30',
      keys: 1,
      asking: 15_495,
      budget: 900,
      trade: 11_600,
      floor: 800,
    },
    (story) => story.remark('Seller’s sheet: starts and drives, airbag lamp on, one key.'),
  ),
  untold(
    {
      boughtOn: '2026-03-05',
      model: 'skerry',
      year: 2017,
      colour: 'dark green',
      miles: 88_400,
      source: sources.fleetAuction,
      price: 10_250,
      fees: 310,
      transport: 240,
      arrivesBy: '2026-03-12',
      paperBy: '2026-03-24',
      keys: 2,
      asking: 13_795,
      budget: 1_200,
      trade: 10_000,
      floor: 800,
    },
    (story) =>
      story.on('2026-03-12').remark('Carrier: truck broke down, they will ring. Nobody has rung.', people.sales),
  ),
  untold(
    {
      boughtOn: '2026-03-12',
      model: 'pell',
      year: 2016,
      colour: 'red',
      miles: 97_100,
      source: sources.auction,
      price: 5_400,
      fees: 285,
      transport: 120,
      arrivesBy: '2026-03-16',
      paperBy: '2026-03-25',
      keys: 1,
      asking: 7_995,
      budget: 700,
      trade: 5_100,
      floor: 500,
    },
    (story) => {
      story.on('2026-03-16').arrive('row C', 'C7');
      story.remark('Battery flat off the truck, on the charger.', people.sales);
    },
  ),
  untold(
    {
      boughtOn: '2026-03-13',
      model: 'cantle',
      year: 2020,
      colour: 'silver',
      miles: 48_900,
      source: sources.fleetAuction,
      price: 14_300,
      fees: 310,
      transport: 160,
      arrivesBy: '2026-03-17',
      paperBy: '2026-03-27',
      keys: 2,
      asking: 17_995,
      budget: 900,
      trade: 14_100,
      floor: 900,
    },
    (story) => {
      story.on('2026-03-17').arrive('row A', 'A3');
      story.on('2026-03-18').scan('pre-repair', ['Brakes: C0035 present']);
      story.find('left front wheel speed sensor, brake lamp lit', 'brakes', { module: 'Brakes', codes: ['C0035'] });
    },
  ),
  untold(
    {
      boughtOn: '2026-03-06',
      model: 'marram',
      year: 2018,
      colour: 'black',
      miles: 72_300,
      source: sources.auction,
      price: 15_800,
      fees: 385,
      transport: 180,
      arrivesBy: '2026-03-10',
      paperBy: '2026-03-16',
      keys: 2,
      asking: 20_495,
      budget: 1_600,
      trade: 15_300,
      floor: 900,
    },
    (story) => {
      story.on('2026-03-10').arrive('row A', 'A9');
      story
        .on('2026-03-11')
        .scanReport('pre-repair', [
          'Shop reader, all modules',
          '2026-03-11  08:41',
          '',
          'Engine',
          '  U0155-00  no messages from the instrument cluster   present',
          'Transmission  no codes',
          'Brakes  no codes',
          'Airbag  no codes',
          'Body',
          '  U0155-00  no messages from the instrument cluster   present',
          '  U0184     no messages from the radio   stored',
          'Cluster  no answer',
          'Radio  no codes',
        ]);
      story.find('instrument cluster dead, no speed, no lamps', 'control-module', {
        module: 'Cluster',
        codes: ['U0155'],
        note: 'Power and ground at the plug are good. Repaired unit about 420 plus core, used one about 150 but the mileage must be dealt with.',
        tellBuyer: true,
      });
      const tyres = story.find('front tyres at the limit', 'tyres-wheels');
      story.on('2026-03-12').decide(tyres, 'replace', 45);
      const pair = story.need('pair of front tyres', 236, tyres);
      story.order(pair, suppliers.counter, '2026-03-12');
      story.receive(pair);
      story.on('2026-03-13').paper();
      story.fit(pair, people.secondTechnician);
      story.book(45, 'front tyres fitted and balanced', 'tyres-wheels', tyres, people.secondTechnician);
      story.finish(tyres, people.secondTechnician);
    },
  ),
  untold(
    {
      boughtOn: '2026-02-19',
      model: 'haywain',
      year: 2016,
      colour: 'white',
      miles: 112_800,
      source: sources.privateSeller,
      price: 11_400,
      fees: 45,
      transport: 0,
      arrivesBy: '2026-02-23',
      paperBy: '2026-03-20',
      keys: 1,
      asking: 15_495,
      budget: 1_100,
      trade: 10_900,
      floor: 800,
    },
    (story) => {
      story.on('2026-02-23').arrive('row D', 'D1');
      story.on('2026-02-24').scan('pre-repair', ['Engine: P0633 present', 'Body: P0513 present']);
      const keys = story.find('key turns, engine will not start: key not accepted', 'immobiliser-keys', {
        module: 'Body',
        codes: ['P0513', 'P0633'],
      });
      story.on('2026-02-25').decide(keys, 'repair', 90);
      const code = story.ask('immobiliser', 'Body', 'Keywright Code Desk', '2026-03-02', { fee: 65, fault: keys });
      story.remark('Seller’s title is still with the state; his bill of sale is in the file.');
      story.on('2026-03-03').answer(code, 'refused', 'They want the title in our name first.');
      story.on('2026-03-05');
      const radio = story.ask('radio', 'Radio', codeDesks.audio, '2026-03-09', {
        fee: 25,
        serial: 'A2C0041907TR2K',
        reason: 'radio asks for its code since the battery was off',
      });
      story.on('2026-03-10').answer(radio, 'given');
      story.on('2026-03-11').tryCode(radio, 'wrong', { triesLeft: 2 });
      story.on('2026-03-18').tryCode(radio, 'wrong', {
        triesLeft: 0,
        lockedUntil: '2026-03-18T21:00:00.000Z',
        note: 'The set wants an hour with the ignition on.',
      });
    },
  ),
];
