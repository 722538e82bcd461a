// Invented vehicles that wait for a code: a radio after its battery, keys refused by one desk and asked of another, a locked gateway.
import { type Untold, untold } from './open-story.ts';
import { keptGateway, newKeys } from './sample-jobs.ts';
import { codeDesks, people, sources, suppliers } from './sample-shop.ts';

export const codeWaits: readonly Untold[] = [
  untold(
    {
      boughtOn: '2026-03-05',
      model: 'haywain',
      year: 2018,
      colour: 'silver',
      miles: 91_200,
      source: sources.fleetAuction,
      price: 16_900,
      fees: 310,
      transport: 200,
      arrivesBy: '2026-03-09',
      paperBy: '2026-03-19',
      keys: 2,
      asking: 20_995,
      budget: 800,
      budgets: { parts: 250, labour: 350 },
      trade: 16_500,
      floor: 900,
    },
    (story) => {
      story.on('2026-03-09').arrive('row B', 'B6');
      story.on('2026-03-10').scan('pre-repair', ['Body: P0562 present', 'Engine: U3003 history']);
      story.measureBattery(11.98, { celsius: 9, note: 'as it came off the transporter' });
      const battery = story.find('battery does not hold, 11.4 volts after a night', 'electrical', {
        module: 'Body',
        codes: ['P0562', 'U3003'],
      });
      story.on('2026-03-11').decide(battery, 'replace', 30);
      const fresh = story.need('battery', 189, battery, { core: 22 });
      story.order(fresh, suppliers.counter, '2026-03-11');
      story.receive(fresh);
      story.on('2026-03-12').paper();
      story.fit(fresh, people.secondTechnician);
      story.book(35, 'battery fitted', 'electrical', battery, people.secondTechnician);
      story.finish(battery, people.secondTechnician);
      story.returnCore(fresh);
      const locked = story.find('radio asks for its code since the battery was off', 'electrical', { module: 'Radio' });
      story.on('2026-03-13').decide(locked, 'repair', 40);
      story.book(15, 'serial number read off the radio', 'electrical', locked, people.secondTechnician);
      story.on('2026-03-16');
      story.ask('radio', 'Radio', codeDesks.audio, '2026-03-19', {
        fee: 25,
        fault: locked,
        serial: 'A2C0063817HW2R',
        reason: 'locked after battery change',
      });
    },
  ),
  untold(
    {
      boughtOn: '2026-02-05',
      model: 'bight',
      year: 2016,
      colour: 'yellow',
      miles: 69_800,
      source: sources.tradeIn,
      price: 12_200,
      fees: 0,
      transport: 0,
      arrivesBy: null,
      paperBy: '2026-02-10',
      keys: 1,
      asking: 16_495,
      budget: 1_000,
      trade: 12_000,
      floor: 800,
    },
    (story) => {
      story.arrive('row A', 'A1');
      story.on('2026-02-10').paper();
      story.scan('pre-repair', ['Body: P0513 present'], 'Starts with the valet key only.');
      const keys = story.find('only a valet key, remote key not accepted', 'immobiliser-keys', {
        module: 'Body',
        codes: ['P0513'],
      });
      story.on('2026-02-11').decide(keys, 'repair', 90);
      const first = story.ask('immobiliser', 'Body', codeDesks.keys, '2026-02-16', { fee: 65, fault: keys });
      const job = story.openJob('Keys', newKeys(first), keys);
      story.vouch(job, 'part-in-hand', 'mod1');
      story.attempt(job, 'scan-before', 'worked', 'on-vehicle', { message: 'one key known, one place free' });
      story.on('2026-02-18').answer(first, 'refused', 'No data for this year.');
      story.on('2026-02-27');
      const second = story.ask('immobiliser', 'Body', codeDesks.maker, '2026-03-23', { fee: 95, fault: keys });
      story.relink(job, { codeRequestId: second });
      story.closeCode(first, 'asked of the maker instead');
      story.on('2026-03-09').chaseCode(second, 'phone', null, 'Nobody there.');
      story.on('2026-03-13').chaseCode(second, 'portal', '2026-03-23', 'Waiting for somebody to look at the proof.');
    },
  ),
  untold(
    {
      boughtOn: '2026-03-03',
      model: 'madrigal',
      year: 2021,
      colour: 'pearl',
      miles: 38_600,
      source: sources.fleetAuction,
      price: 17_600,
      fees: 310,
      transport: 160,
      arrivesBy: '2026-03-05',
      paperBy: '2026-03-13',
      keys: 2,
      asking: 21_995,
      budget: 900,
      trade: 17_300,
      floor: 1_000,
    },
    (story) => {
      story.on('2026-03-05').arrive('row A', 'A5');
      story.on('2026-03-06').scan('pre-repair', ['Brakes: C0035 present']);
      const rod = story.find('tie rod end worn, wheel speed wire torn with it', 'steering-suspension', {
        module: 'Brakes',
        codes: ['C0035'],
      });
      story.on('2026-03-09').decide(rod, 'repair', 150);
      const parts = story.need('tie rod end and wheel speed sensor', 164, rod);
      story.order(parts, suppliers.counter, '2026-03-10');
      story.on('2026-03-10').receive(parts);
      story.on('2026-03-11').paper();
      story.fit(parts);
      story.book(145, 'tie rod end and sensor, tracking set', 'steering-suspension', rod);
      const code = story.ask('gateway', 'Gateway', codeDesks.gateway, '2026-03-20', {
        fee: 50,
        fault: rod,
        reason: 'codes and steering angle cannot be reset behind the gateway',
      });
      const job = story.openJob('Gateway', keptGateway(code), rod);
      story.attempt(job, 'scan-before', 'worked', 'on-vehicle');
      story.leaveOut(job, 'update-software', 'its software is the newest');
      story.on('2026-03-17').draftCode('mechanical-key', 'Driver’s door', 'a spare blade, the second one is bent');
    },
  ),
];
