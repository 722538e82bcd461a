// Tells one invented vehicle day by day, in sentences of the trade. Programming is told in programming-story.ts, codes in
// code-story.ts.
import type { DecisionKind } from '../../domain/diagnosis/fault.ts';
import { nothingElseRead, type ScanDraft, type ScanKind } from '../../domain/diagnosis/scan.ts';
import type { Day } from '../../domain/shared/day.ts';
import type { WorkArea } from '../../domain/work/work-area.ts';
import { blankPart, blankSublet } from './blank-facts.ts';
import { CodeStory } from './code-story.ts';
import { people } from './sample-shop.ts';
import { scanModules, scanModulesOf } from './scan-modules.ts';

type Person = (typeof people)[keyof typeof people];

const dollars = (amount: number) => Math.round(amount * 100);

export class Story extends CodeStory {
  arrive(location: string, keyTag: string): void {
    this.set('arrival', { arrivedOn: this.day }, people.sales);
    this.set('identity', { location, keyTag }, people.sales);
  }

  scan(
    kind: ScanKind,
    found: readonly string[],
    note = '',
    by: Person = people.technician,
    more: Partial<Pick<ScanDraft, 'clearedBefore' | 'monitorBytes' | 'warmUpsSinceClear' | 'distanceSinceClear'>> = {},
  ): void {
    const modules = scanModules(found);
    const item = { ...nothingElseRead, takenOn: this.day, kind, device: 'shop reader', modules, note, ...more };
    this.put('scans', item, by);
  }

  /** A scan kept from the scanner's own text, read as the program reads it. */
  scanReport(kind: ScanKind, report: readonly string[]): void {
    const reportText = report.join('\n');
    const modules = scanModulesOf(reportText);
    const item = { ...nothingElseRead, takenOn: this.day, kind, device: 'shop reader', modules, reportText, note: '' };
    this.put('scans', item, people.technician);
  }

  /** Volts at the posts. */
  measureBattery(volts: number, more: { celsius?: number; isRested?: boolean; note?: string } = {}): void {
    const { celsius = null, isRested = true, note = '' } = more;
    const item = {
      measuredOn: this.day,
      volts,
      chemistry: 'flooded' as const,
      temperatureCelsius: celsius,
      isRested,
      note,
    };
    this.put('batteryReadings', item, people.technician);
  }

  find(
    what: string,
    area: WorkArea,
    more: { module?: string; codes?: readonly string[]; note?: string; tellBuyer?: boolean } = {},
  ): string {
    const { module = '', codes = [], note = '', tellBuyer = false } = more;
    const item = { foundOn: this.day, what, area, module, codes, note, decision: null, doneOn: null, tellBuyer };
    return this.put('faults', item, people.technician);
  }

  decide(fault: string, kind: DecisionKind, estimateMinutes: number | null, reason = ''): void {
    const decision = { kind, decidedOn: this.day, reason, estimateMinutes };
    this.amend('faults', fault, { decision }, people.manager);
  }

  finish(fault: string, by: Person = people.technician): void {
    this.amend('faults', fault, { doneOn: this.day }, by);
  }

  /** Noted as needed; nobody has ordered it. */
  need(
    what: string,
    price: number | null,
    fault: string | null,
    more: { core?: number; number?: string } = {},
  ): string {
    const item = {
      ...blankPart,
      neededOn: this.day,
      what,
      partNumber: more.number ?? '',
      faultId: fault,
      priceCents: price === null ? null : dollars(price),
      coreChargeCents: dollars(more.core ?? 0),
    };
    return this.put('parts', item, people.technician);
  }

  order(part: string, supplier: string, expectedOn: Day | null): void {
    this.amend('parts', part, { supplier, orderedOn: this.day, expectedOn }, people.manager);
  }

  receive(part: string): void {
    this.amend('parts', part, { receivedOn: this.day }, people.secondTechnician);
  }

  fit(part: string, by: Person = people.technician): void {
    this.amend('parts', part, { fittedOn: this.day }, by);
  }

  sendBack(part: string, note: string): void {
    this.amend('parts', part, { returnedOn: this.day, note }, people.manager);
  }

  returnCore(part: string): void {
    this.amend('parts', part, { coreReturnedOn: this.day }, people.manager);
  }

  book(
    minutes: number,
    what: string,
    area: WorkArea,
    fault: string | null = null,
    by: Person = people.technician,
  ): void {
    this.put('labour', { workedOn: this.day, person: by, minutes, what, area, faultId: fault }, by);
  }

  send(
    what: string,
    supplier: string,
    area: WorkArea,
    expectedOn: Day | null,
    more: { fault?: string; quoted?: number; note?: string } = {},
  ): string {
    const item = {
      ...blankSublet,
      notedOn: this.day,
      what,
      supplier,
      area,
      faultId: more.fault ?? null,
      sentOn: this.day,
      expectedOn,
      quotedCents: more.quoted === undefined ? null : dollars(more.quoted),
      note: more.note ?? '',
    };
    return this.put('sublets', item, people.manager);
  }

  bring(sublet: string, invoiced: number): void {
    this.amend('sublets', sublet, { backOn: this.day, invoicedCents: dollars(invoiced) }, people.manager);
  }

  pay(what: string, amount: number): void {
    this.put('otherCosts', { spentOn: this.day, what, amountCents: dollars(amount) }, people.manager);
  }

  sign(check: string, by: Person, result: 'passed' | 'failed' | 'not-needed' = 'passed', note = ''): void {
    this.put('signOffs', { checkId: check, signedOn: this.day, signedBy: by, result, note }, by);
  }

  remark(text: string, by: Person = people.manager): void {
    this.put('notes', { on: this.day, text }, by);
  }

  paper(): void {
    this.set('purchase', { paperReceivedOn: this.day }, people.manager);
  }

  expectPaper(paperExpectedOn: Day): void {
    this.set('purchase', { paperExpectedOn }, people.manager);
  }

  /** Asks another price from now on. */
  price(amount: number): void {
    this.set('targets', { askingCents: dollars(amount) }, people.manager);
  }

  move(location: string): void {
    this.set('identity', { location }, people.sales);
  }

  /** The bank shows the pay-off of what was sold some days ago. */
  payOff(): void {
    this.set('sale', { paidOffOn: this.day }, people.manager);
  }

  sell(price: number, buyer: string): void {
    const value = { soldOn: this.day, priceCents: dollars(price), buyer, paidOffOn: null };
    this.change({ kind: 'set', section: 'sale', value }, people.manager);
    this.set('identity', { location: 'gone', keyTag: '' }, people.sales);
  }
}
