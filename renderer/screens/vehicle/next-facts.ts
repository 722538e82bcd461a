// The commonest next fact of an entry, for the one-press buttons on its row. Pure: takes a fact and today, gives the fact after it.
// What the rules of the record would refuse is not offered.
import type { CodeRequestDraft } from '../../../app/domain/codes/code-request.ts';
import type { DecisionKind, FaultDraft } from '../../../app/domain/diagnosis/fault.ts';
import type { PartDraft } from '../../../app/domain/parts/part.ts';
import { type Day, laterDay } from '../../../app/domain/shared/day.ts';
import type { SubletDraft } from '../../../app/domain/work/sublet.ts';
import { freshChase, freshTry } from './codes/fresh-life.ts';

export type PartFact = 'ordered' | 'received' | 'fitted' | 'core-returned';

/** Null when nothing more is owed: fitted without a core, or sent back. */
export function nextPartFact(part: PartDraft): PartFact | null {
  if (part.returnedOn !== null) return null;
  if (part.orderedOn === null) return 'ordered';
  if (part.receivedOn === null) return 'received';
  if (part.fittedOn === null) return 'fitted';
  return part.coreChargeCents > 0 && part.coreReturnedOn === null ? 'core-returned' : null;
}

export function withPartFact(part: PartDraft, fact: PartFact, today: Day): PartDraft {
  switch (fact) {
    case 'ordered':
      return { ...part, orderedOn: today };
    case 'received':
      return { ...part, receivedOn: today };
    case 'fitted':
      return { ...part, fittedOn: today };
    case 'core-returned':
      return { ...part, coreReturnedOn: today };
  }
}

export type CodeFact = 'asked' | 'chased' | 'given' | 'refused' | 'right' | 'wrong' | 'closed';

export function nextCodeFacts(request: CodeRequestDraft): readonly CodeFact[] {
  if (request.closedOn !== null) return [];
  if (request.askedOn === null) return ['asked'];
  if (request.answeredOn === null) return ['chased', 'given', 'refused'];
  if (request.outcome === 'refused' || request.tries.at(-1)?.result === 'right') return ['closed'];
  return ['right', 'wrong'];
}

export type CodeEntry = {
  readonly today: Day;
  readonly by: string;
  readonly newId: string;
  /** Of a wrong try, where its kind of code says how long it locks. */
  readonly lockedUntil?: string | null;
};

export function withCodeFact(
  request: CodeRequestDraft,
  fact: CodeFact,
  { today, by, newId, lockedUntil = null }: CodeEntry,
): CodeRequestDraft {
  switch (fact) {
    case 'asked':
      return { ...request, askedOn: today };
    case 'chased':
      return { ...request, chases: [...request.chases, freshChase(newId, { today, by, how: request.askedHow })] };
    case 'given':
    case 'refused':
      return { ...request, answeredOn: today, outcome: fact };
    case 'right':
      return { ...request, tries: [...request.tries, freshTry(newId, { today, by, result: fact })] };
    case 'wrong':
      return { ...request, tries: [...request.tries, freshTry(newId, { today, by, result: fact, lockedUntil })] };
    case 'closed':
      return { ...request, closedOn: today };
  }
}

export type SubletFact = 'sent' | 'back';

export function nextSubletFact(sublet: SubletDraft): SubletFact | null {
  if (sublet.sentOn === null) return 'sent';
  return sublet.backOn === null ? 'back' : null;
}

export function withSubletFact(sublet: SubletDraft, fact: SubletFact, today: Day): SubletDraft {
  return fact === 'sent' ? { ...sublet, sentOn: today } : { ...sublet, backOn: today };
}

/** Decides today, keeping an estimate that was already written. A fault is never decided before it was found. */
export function withDecision(fault: FaultDraft, kind: DecisionKind, today: Day): FaultDraft {
  return {
    ...fault,
    decision: {
      kind,
      decidedOn: laterDay(today, fault.foundOn),
      reason: fault.decision?.reason ?? '',
      estimateMinutes: fault.decision?.estimateMinutes ?? null,
    },
  };
}

export function canBeDone(fault: FaultDraft): boolean {
  return fault.decision !== null && fault.decision.kind !== 'leave' && fault.doneOn === null;
}
