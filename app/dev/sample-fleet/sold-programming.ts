// Troubles of sold vehicles that need a module replaced and programmed. Each plans its chapters and answers when the work is over.
import { laterDay } from '../../domain/shared/day.ts';
import { bodyAndKeys, clusterModule, engineModule } from './sample-jobs.ts';
import { codeDesks, suppliers } from './sample-shop.ts';
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
    const deadOn = ['on-vehicle', 'pass-through'] as const;
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
      job = story.openJob('Body', bodyAndKeys(isUsed ? 'used' : 'new', { part, code: request }), fault);
      story.workUpTo(job, 'save-old');
      for (const route of deadOn) story.attempt(job, 'save-old', 'failed', route, { message: 'no answer' });
      story.workUpTo(job, 'fit', { skip: 'save-old' });
      story.attempt(job, 'save-old', 'worked', 'bench');
    });
    later.at(code.comesOn, (story) => story.answer(request, 'given'));
    later.at(comes.comesOn, (story) => story.receive(part));
    const start = workingDaysAfter(laterDay(comes.comesOn, code.comesOn), random.whole(0, 3));
    later.at(start, (story) => {
      story.workUpTo(job, 'write-software');
      story.fit(part);
      story.book(50 + random.whole(0, 40), 'body module fitted', 'control-module', fault);
    });
    const about = { job: () => job, isUsed };
    const written = tryUntilItWorks(random, later, start, {
      ...about,
      step: 'write-software',
      routes: ['on-vehicle', 'bench', 'pass-through'],
      lastResort: 'sent-out',
    });
    later.at(written, (story) => {
      story.workUpTo(job, 'body-takes-identity');
      story.vouch(job, 'keys-present');
    });
    const matched = tryUntilItWorks(random, later, written, {
      ...about,
      step: 'body-takes-identity',
      routes: ['on-vehicle', 'on-vehicle', 'pass-through'],
      lastResort: 'pass-through',
    });
    const taught = workingDaysAfter(matched, random.whole(0, 1));
    later.at(taught, (story) => {
      story.workUpTo(job, null);
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
      job = story.openJob('Engine', engineModule('cloned', part), fault);
      story.workUpTo(job, 'lead-off');
    });
    later.at(comes.comesOn, (story) => story.receive(part));
    const start = workingDaysAfter(comes.comesOn, random.whole(0, 3));
    later.at(start, (story) => story.workUpTo(job, 'clone-data'));
    const copied = tryUntilItWorks(random, later, start, {
      job: () => job,
      step: 'clone-data',
      isUsed,
      routes: ['bench'],
      lastResort: 'sent-out',
    });
    later.at(copied, (story) => {
      story.workUpTo(job, null);
      story.fit(part);
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
    const isRead = random.chance(0.4);
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
      job = story.openJob('Cluster', clusterModule('repaired', part), fault);
      story.workUpTo(job, 'save-old');
      story.attempt(job, 'save-old', 'failed', 'on-vehicle', { message: 'no answer' });
      story.attempt(job, 'save-old', isRead ? 'worked' : 'failed', 'pass-through', {
        message: isRead ? 'read with the maker’s software' : 'no answer',
      });
      if (isRead) return;
      story.workUpTo(job, 'have-repaired', { skip: 'save-old' });
      story.attempt(job, 'save-old', 'worked', 'bench');
    });
    later.at(comes.comesOn, (story) => story.receive(part));
    const start = workingDaysAfter(comes.comesOn, random.whole(0, 2));
    later.at(start, (story) => {
      story.workUpTo(job, 'compare-vin-inside');
      story.fit(part);
    });
    const written = tryUntilItWorks(random, later, start, {
      job: () => job,
      step: 'compare-vin-inside',
      isUsed: false,
      routes: ['on-vehicle', 'pass-through'],
      lastResort: 'bench',
    });
    later.at(written, (story) => {
      story.workUpTo(job, null);
      story.book(80 + random.whole(0, 50), 'cluster fitted and written', 'control-module', fault);
      story.finish(fault);
      story.returnCore(part);
    });
    return written;
  },
};
