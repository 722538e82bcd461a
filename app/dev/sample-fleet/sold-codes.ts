// Troubles of sold vehicles that hang on a code or on a safety system: keys, radio, gateway, airbag lamp.

import { airbagModule, keptGateway, newKeys } from './sample-jobs.ts';
import { codeDesks, people, suppliers } from './sample-shop.ts';
import { type Trouble, tryUntilItWorks } from './sold-trouble.ts';
import { turnaround } from './turnaround.ts';
import { workingDaysAfter } from './working-days.ts';

export const lostKeys: Trouble = {
  shows: ['Body: P0513 present', 'Engine: P0633 present'],
  plan: (random, later, scannedOn) => {
    const asked = workingDaysAfter(scannedOn, random.whole(1, 3));
    const first = turnaround(random, codeDesks.keys, asked);
    const isRefused = random.chance(0.3);
    const again = workingDaysAfter(first.comesOn, random.whole(1, 6));
    const second = turnaround(random, codeDesks.maker, again);
    let [fault, request, job] = ['', '', ''];
    later.at(scannedOn, (story) => {
      fault = story.find('key not accepted', 'immobiliser-keys', { module: 'Body', codes: ['P0513', 'P0633'] });
    });
    later.at(asked, (story) => {
      story.decide(fault, 'repair', 90);
      request = story.ask('immobiliser', 'Body', codeDesks.keys, first.promisedFor, { fee: 65, fault });
      job = story.openJob('Keys', newKeys(request), fault);
      story.vouch(job, 'part-in-hand', 'mod1');
      story.vouch(job, 'keys-present');
      story.attempt(job, 'scan-before', 'worked', 'on-vehicle');
    });
    later.at(first.comesOn, (story) => story.answer(request, isRefused ? 'refused' : 'given'));
    if (isRefused) {
      later.at(again, (story) => {
        request = story.ask('immobiliser', 'Body', codeDesks.maker, second.promisedFor, { fee: 95, fault });
        story.relink(job, { codeRequestId: request });
      });
      later.at(second.comesOn, (story) => story.answer(request, 'given'));
    }
    const start = workingDaysAfter(isRefused ? second.comesOn : first.comesOn, random.whole(0, 3));
    later.at(start, (story) => story.workUpTo(job, 'teach-keys'));
    const taught = tryUntilItWorks(random, later, start, {
      job: () => job,
      step: 'teach-keys',
      isUsed: false,
      routes: ['on-vehicle'],
      lastResort: 'pass-through',
    });
    later.at(taught, (story) => {
      story.workUpTo(job, null);
      story.tryCode(request, 'right');
      story.closeCode(request);
      story.book(45 + random.whole(0, 60), 'keys taught', 'immobiliser-keys', fault);
      story.finish(fault);
    });
    return taught;
  },
};

/** A code and nothing to fit: the radio that lost its power, the gateway that wants a login. */
function behindCode(
  about: {
    readonly what: string;
    readonly kind: 'radio' | 'gateway';
    readonly module: string;
    readonly desk: string;
    readonly fee: number;
  },
  shows: readonly string[],
): Trouble {
  return {
    shows,
    plan: (random, later, scannedOn) => {
      const { what, kind, module, desk, fee } = about;
      const asked = workingDaysAfter(scannedOn, random.whole(1, 3));
      const comes = turnaround(random, desk, asked);
      const done = workingDaysAfter(comes.comesOn, random.whole(0, 2));
      const serial = kind === 'radio' ? `A2C${scannedOn.replaceAll('-', '')}SRL` : '';
      let [fault, request, job] = ['', '', ''];
      later.at(scannedOn, (story) => {
        fault = story.find(what, 'electrical', { module });
      });
      later.at(asked, (story) => {
        story.decide(fault, 'repair', 40);
        request = story.ask(kind, module, desk, comes.promisedFor, { fee, fault, serial });
        // A radio's code is typed in by hand: a repair, nothing to program.
        if (kind === 'radio') return;
        job = story.openJob(module, keptGateway(request), fault);
        story.attempt(job, 'scan-before', 'worked', 'on-vehicle');
      });
      later.at(comes.comesOn, (story) => story.answer(request, 'given'));
      later.at(done, (story) => {
        if (kind === 'gateway') {
          story.leaveOut(job, 'update-software', 'its software is the newest');
          story.workUpTo(job, null);
        }
        story.tryCode(request, 'right', {}, people.secondTechnician);
        story.closeCode(request);
        story.book(
          20 + random.whole(0, 25),
          `${module.toLowerCase()} unlocked`,
          'electrical',
          fault,
          people.secondTechnician,
        );
        story.finish(fault, people.secondTechnician);
      });
      return done;
    },
  };
}

export const lockedRadio = behindCode(
  { what: 'radio asks for its code', kind: 'radio', module: 'Radio', desk: codeDesks.audio, fee: 25 },
  ['Radio: U0184 history'],
);
export const lockedGateway = behindCode(
  {
    what: 'codes cannot be cleared behind the gateway',
    kind: 'gateway',
    module: 'Gateway',
    desk: codeDesks.gateway,
    fee: 50,
  },
  ['Brakes: C0035 present'],
);

export const airbagLamp: Trouble = {
  shows: ['Airbag: B0100 present'],
  plan: (random, later, scannedOn) => {
    const decided = workingDaysAfter(scannedOn, random.whole(0, 3));
    const comes = turnaround(random, suppliers.newParts, decided);
    const done = workingDaysAfter(comes.comesOn, random.whole(0, 4));
    let [fault, part, job] = ['', '', ''];
    later.at(scannedOn, (story) => {
      fault = story.find('airbag module keeps an old crash, lamp lit', 'airbag', {
        module: 'Airbag',
        codes: ['B0100'],
        tellBuyer: true,
      });
    });
    later.at(decided, (story) => {
      story.decide(fault, 'replace', 100);
      part = story.need('airbag control module', 130 + random.whole(0, 40), fault);
      story.order(part, suppliers.newParts, comes.promisedFor);
      job = story.openJob('Airbag', airbagModule(part), fault);
      story.workUpTo(job, 'lead-off');
    });
    later.at(comes.comesOn, (story) => story.receive(part));
    later.at(done, (story) => {
      story.workUpTo(job, null);
      story.fit(part);
      story.book(80 + random.whole(0, 40), 'airbag module, lamp out', 'airbag', fault);
      story.finish(fault);
    });
    return done;
  },
};
