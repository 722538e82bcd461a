// Tells the code requests of one invented vehicle: drafted, asked, chased, answered, tried, filed, closed. There is no code in them.

import { shippedFilingRules } from '../../domain/codes/filing-limit.ts';
import type { AskWay, CodeTry } from '../../domain/codes/request-facts.ts';
import type { Day } from '../../domain/shared/day.ts';
import { blankCodeRequest } from './blank-facts.ts';
import { ProgrammingStory } from './programming-story.ts';
import { codeDesks, people } from './sample-shop.ts';

type Person = (typeof people)[keyof typeof people];

/** How each desk is asked, as the shop has got used to it. */
const asksBy: Readonly<Record<string, AskWay>> = {
  [codeDesks.maker]: 'portal',
  [codeDesks.gateway]: 'portal',
  [codeDesks.audio]: 'letter',
};

const dollars = (amount: number) => Math.round(amount * 100);

export class CodeStory extends ProgrammingStory {
  #entries = 0;

  #entryId(): string {
    this.#entries += 1;
    return `entry-${String(this.#entries).padStart(3, '0')}`;
  }

  #requestOf(id: string) {
    const request = this.told().data.codeRequests.find((one) => one.id === id);
    if (!request) throw new Error(`no code request ${id}`);
    return request;
  }

  /** Noted as needed; proof of ownership is not recorded yet. */
  draftCode(kind: string, module: string, reason: string, fault: string | null = null): string {
    const item = {
      ...blankCodeRequest,
      notedOn: this.day,
      kind,
      module,
      deviceSerial: '',
      reason,
      faultId: fault,
      proof: null,
      askedOn: null,
      askedOf: '',
      expectedOn: null,
      feeCents: 0,
    };
    return this.put('codeRequests', item, people.manager);
  }

  ask(
    kind: string,
    module: string,
    of: string,
    expectedOn: Day | null,
    more: { fee?: number; fault?: string; reason?: string; serial?: string; credential?: string } = {},
  ): string {
    const item = {
      ...blankCodeRequest,
      notedOn: this.day,
      kind,
      module,
      deviceSerial: more.serial ?? '',
      reason: more.reason ?? '',
      faultId: more.fault ?? null,
      askedHow: asksBy[of] ?? ('phone' as const),
      credentialReference: more.credential ?? '',
      proof: { document: 'purchase invoice with VIN', checkedOn: this.day, checkedBy: people.manager },
      askedOn: this.day,
      askedOf: of,
      expectedOn,
      feeCents: dollars(more.fee ?? 0),
    };
    return this.put('codeRequests', item, people.manager);
  }

  answer(request: string, outcome: 'given' | 'refused', note = ''): void {
    const keptWhere = outcome === 'given' ? 'sealed envelope, office safe' : '';
    this.amend('codeRequests', request, { answeredOn: this.day, outcome, keptWhere, note }, people.manager);
  }

  chaseCode(request: string, how: AskWay, promisedOn: Day | null, note = '', by: Person = people.manager): void {
    const chase = { id: this.#entryId(), chasedOn: this.day, by, how, promisedOn, note };
    this.amend('codeRequests', request, { chases: [...this.#requestOf(request).chases, chase] }, by);
  }

  tryCode(
    request: string,
    result: CodeTry['result'],
    more: Partial<Pick<CodeTry, 'triesLeft' | 'lockedUntil' | 'note'>> = {},
    by: Person = people.technician,
  ): void {
    const attempt = {
      id: this.#entryId(),
      triedOn: this.day,
      by,
      result,
      triesLeft: null,
      lockedUntil: null,
      note: '',
      ...more,
    };
    this.amend('codeRequests', request, { tries: [...this.#requestOf(request).tries, attempt] }, by);
  }

  /** Under the scheme that wants a form; filed today or still to be filed. */
  underScheme(request: string, filedOn: Day | null, reference = ''): void {
    const [rule] = shippedFilingRules;
    const filing = { schemeId: rule?.id, transactionOn: null, filedOn, reference };
    this.amend('codeRequests', request, { filing }, people.manager);
  }

  closeCode(request: string, closedWhy = ''): void {
    this.amend('codeRequests', request, { closedOn: this.day, closedWhy }, people.manager);
  }
}
