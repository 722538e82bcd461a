// Troubles of sold vehicles that need a module replaced and programmed. Each plans its chapters and answers when the work is over.
import { laterDay } from '../../domain/shared/day.ts';
import { codeDesks, suppliers } from './sample-shop.ts';
import { bodySteps, clusterSteps, engineSteps } from './sample-steps.ts';
import { type Trouble, tryUntilItWorks } from './sold-trouble.ts';
import { turnaround } from './turnaround.ts';
import { workingDaysAfter } from './working-days.ts';

export const deadBody: Trouble = {
  shows: ['Body: silent', 'Cluster: U0140 present'],
  plan: (random, later, scannedOn) => {
    const isUsed = random.chance(0.65);
    const from = isUsed ? suppliers.salvage : suppliers.newParts;
    const [decided, ordered] = [
      workingDaysAfter(scannedOn, random.whole(0, 2)),
      workingDaysAfter(scannedOn, random.whole(2, 5)),
    ];
    const comes = turnaround(random, from, ordered);
    const code = turnaround(random, codeDesks.maker, ordered);
    let [fault, part, request, job] = ['', '', '', ''];
    later.at(scannedOn, (story) => {
      fault = story.find('body control module does not answer', 'control-module', { module: 'Body', codes: ['U0140'] });
    });
    later.at(decided, (story) => story.decide(fault, 'replace', 210));
    later.at(ordered, (story) => {
      part = story.need(
        `body control module, ${isUsed ? 'used' : 'new'}`,
        isUsed ? 130 + random.whole(0, 80) : 540,
        fault,
      );
      story.order(part, from, comes.promisedFor);
      request = story.ask('immobiliser', 'Body', codeDesks.maker, code.promisedFor, { fee: 40, fault });
      const steps = bodySteps(isUsed ? 'used' : 'new', true);
      job = story.openJob('Body', isUsed ? 'used' : 'new', steps, { fault, part, code: request });
      story.attempt(job, 1, 'worked', 'bench');
    });
    later.at(code.comesOn, (story) => story.answer(request, 'given'));
    later.at(comes.comesOn, (story) => story.receive(part));
    const start = workingDaysAfter(laterDay(comes.comesOn, code.comesOn), random.whole(0, 3));
    later.at(start, (story) => {
      story.attempt(job, 2, 'worked', 'by-hand');
      story.fit(part);
      story.book(50 + random.whole(0, 40), 'body module fitted', 'control-module', fault);
    });
    const about = { job: () => job, isUsed };
    const written = tryUntilItWorks(random, later, start, {
      ...about,
      step: 3,
      routes: ['on-vehicle', 'bench', 'pass-through'],
    });
    later.at(written, (story) => story.attempt(job, 4, 'worked', 'on-vehicle'));
    const taught = tryUntilItWorks(random, later, written, { ...about, step: 5, routes: ['on-vehicle'] });
    later.at(taught, (story) => {
      story.attempt(job, 6, 'worked', 'on-vehicle');
      story.book(40 + random.whole(0, 90), 'body module written, keys taught', 'control-module', fault);
      story.finish(fault);
    });
    return taught;
  },
};

export const engineMemory: Trouble = {
  shows: ['Engine: P062F present'],
  plan: (random, later, scannedOn) => {
    const isUsed = random.chance(0.4);
    const from = isUsed ? suppliers.salvage : suppliers.exchange;
    const ordered = workingDaysAfter(scannedOn, random.whole(1, 4));
    const comes = turnaround(random, from, ordered);
    let [fault, part, job] = ['', '', ''];
    later.at(scannedOn, (story) => {
      fault = story.find('engine module: memory fault', 'engine', { module: 'Engine', codes: ['P062F'] });
    });
    later.at(ordered, (story) => {
      story.decide(fault, 'replace', 150);
      part = isUsed
        ? story.need('engine control module, used', 110 + random.whole(0, 60), fault)
        : story.need('engine control module, repaired unit', 430 + random.whole(0, 90), fault, { core: 180 });
      story.order(part, from, comes.promisedFor);
      job = story.openJob('Engine', 'cloned', engineSteps('cloned'), { fault, part });
      story.attempt(job, 1, 'worked', 'bench');
    });
    later.at(comes.comesOn, (story) => story.receive(part));
    const start = workingDaysAfter(comes.comesOn, random.whole(0, 3));
    const copied = tryUntilItWorks(random, later, start, {
      job: () => job,
      step: 2,
      isUsed,
      routes: ['bench', 'bench', 'pass-through'],
    });
    later.at(copied, (story) => {
      story.attempt(job, 3, 'worked', 'by-hand');
      story.fit(part);
      story.attempt(job, 4, 'worked', 'on-vehicle');
      story.book(100 + random.whole(0, 60), 'engine module copied and fitted', 'engine', fault);
      story.finish(fault);
      if (!isUsed) story.returnCore(part);
    });
    return copied;
  },
};

export const darkCluster: Trouble = {
  shows: ['Cluster: silent', 'Engine: U0155 present'],
  plan: (random, later, scannedOn) => {
    const decided = workingDaysAfter(scannedOn, random.whole(1, 4));
    const ordered = workingDaysAfter(decided, random.whole(0, 3));
    const comes = turnaround(random, suppliers.exchange, ordered);
    let [fault, part, job] = ['', '', ''];
    later.at(scannedOn, (story) => {
      fault = story.find('instrument cluster dead', 'control-module', {
        module: 'Cluster',
        codes: ['U0155'],
        tellBuyer: true,
      });
    });
    later.at(decided, (story) => story.decide(fault, 'replace', 110));
    later.at(ordered, (story) => {
      part = story.need('instrument cluster, repaired unit', 380 + random.whole(0, 80), fault, { core: 120 });
      story.order(part, suppliers.exchange, comes.promisedFor);
      job = story.openJob('Cluster', 'repaired', clusterSteps, { fault, part });
      story.attempt(job, 1, 'worked', 'bench');
    });
    later.at(comes.comesOn, (story) => story.receive(part));
    const start = workingDaysAfter(comes.comesOn, random.whole(0, 2));
    later.at(start, (story) => {
      story.attempt(job, 2, 'worked', 'by-hand');
      story.fit(part);
    });
    const written = tryUntilItWorks(random, later, start, {
      job: () => job,
      step: 3,
      isUsed: false,
      routes: ['on-vehicle', 'pass-through'],
    });
    later.at(written, (story) => {
      story.attempt(job, 4, 'worked', 'on-vehicle');
      story.book(80 + random.whole(0, 50), 'cluster fitted and written', 'control-module', fault);
      story.finish(fault);
      story.returnCore(part);
    });
    return written;
  },
};
