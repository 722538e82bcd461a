// One-press buttons: what they offer is what the record's own rules take.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { requestChangeProblems } from '../../../../app/domain/codes/change-rules.ts';
import { shippedCodeKinds } from '../../../../app/domain/codes/code-kinds.ts';
import { factProblems } from '../../../../app/domain/vehicle/fact-rules.ts';
import {
  freshCodeRequest,
  freshFault,
  freshPart,
  freshSublet,
} from '../../../../renderer/screens/vehicle/fresh-facts.ts';
import {
  canBeDone,
  nextCodeFacts,
  nextPartFact,
  nextSubletFact,
  withCodeFact,
  withDecision,
  withPartFact,
  withSubletFact,
} from '../../../../renderer/screens/vehicle/next-facts.ts';

const entry = (today: string) => ({ today, by: 'ada-1', newId: `entry-${today}` });
const days = ['2026-03-02', '2026-03-03', '2026-03-05', '2026-03-05', '2026-03-09'];

describe('the next fact of a part', () => {
  it('leads from needed to the core returned, and the rules accept every step', () => {
    let part = { ...freshPart('part-0001', '2026-03-01'), what: 'Body module', coreChargeCents: 15_000 };
    const taken: string[] = [];
    for (const today of days) {
      const fact = nextPartFact(part);
      if (fact === null) break;
      taken.push(fact);
      part = withPartFact(part, fact, today);
      expect(factProblems({ kind: 'put', list: 'parts', item: part }, today)).toEqual([]);
    }
    expect(taken).toEqual(['ordered', 'received', 'fitted', 'core-returned']);
    expect(nextPartFact(part)).toBeNull();
  });

  it('ends with the fitting where no core is owed, and at once where it was sent back', () => {
    const fitted = {
      ...freshPart('part-0001', '2026-03-01'),
      orderedOn: days[0] ?? '',
      receivedOn: '2026-03-03',
      fittedOn: '2026-03-03',
    };
    expect(nextPartFact(fitted)).toBeNull();
    expect(nextPartFact({ ...fitted, fittedOn: null, returnedOn: '2026-03-04' })).toBeNull();
  });
});

describe('the next fact of a code request', () => {
  it('is the question, then the answer, and the rules accept them once proof is there', () => {
    const proof = { document: 'Auction invoice', checkedOn: '2026-03-01', checkedBy: 'rosa-lind' };
    const fresh = { ...freshCodeRequest('code-0001', '2026-03-01'), proof };
    expect(nextCodeFacts(fresh)).toEqual(['asked']);
    const asked = withCodeFact(fresh, 'asked', entry('2026-03-02'));
    expect(nextCodeFacts(asked)).toEqual(['chased', 'given', 'refused']);
    for (const fact of nextCodeFacts(asked)) {
      const answered = withCodeFact(asked, fact, entry('2026-03-04'));
      const then = { chased: ['chased', 'given', 'refused'], given: ['right', 'wrong'], refused: ['closed'] }[
        String(fact)
      ];
      expect(nextCodeFacts(answered)).toEqual(then);
      expect(factProblems({ kind: 'put', list: 'codeRequests', item: answered }, '2026-03-04')).toEqual([]);
    }
  });

  it('is, once the code is here, that it was tried until it works, and that it is over', () => {
    const given = {
      ...freshCodeRequest('code-0001', '2026-03-01'),
      proof: { document: 'Title', checkedOn: '2026-03-01', checkedBy: 'ada-1' },
      askedOn: '2026-03-02',
      answeredOn: '2026-03-04',
      outcome: 'given' as const,
    };
    const wrong = withCodeFact(given, 'wrong', entry('2026-03-04'));
    expect(nextCodeFacts(wrong)).toEqual(['right', 'wrong']);
    const right = withCodeFact(wrong, 'right', entry('2026-03-05'));
    expect(right.tries.map(({ result, by }) => [result, by])).toEqual([
      ['wrong', 'ada-1'],
      ['right', 'ada-1'],
    ]);
    expect(nextCodeFacts(right)).toEqual(['closed']);
    const closed = withCodeFact(right, 'closed', entry('2026-03-05'));
    expect(nextCodeFacts(closed)).toEqual([]);
    expect(factProblems({ kind: 'put', list: 'codeRequests', item: closed }, '2026-03-05')).toEqual([]);
  });

  it('is refused by the rules while no proof of ownership is recorded', () => {
    const asked = withCodeFact(freshCodeRequest('code-0001', '2026-03-01'), 'asked', entry('2026-03-02'));
    const setting = { vin: '1M8GDM9A3KP000009', modelYear: null, codeKinds: shippedCodeKinds };
    expect(requestChangeProblems(null, asked, setting)).toMatchObject([{ field: 'proof' }]);
  });
});

describe('the next fact of sublet work', () => {
  it('is that it was sent, then that it is back', () => {
    const fresh = { ...freshSublet('subl-0001', '2026-03-01'), what: 'Windscreen' };
    expect(nextSubletFact(fresh)).toBe('sent');
    const sent = withSubletFact(fresh, 'sent', '2026-03-02');
    expect(nextSubletFact(sent)).toBe('back');
    const back = withSubletFact(sent, 'back', '2026-03-06');
    expect(nextSubletFact(back)).toBeNull();
    expect(factProblems({ kind: 'put', list: 'sublets', item: back }, '2026-03-06')).toEqual([]);
  });
});

describe('the decision on a fault', () => {
  it('keeps the estimate and the reason that were written', () => {
    const fault = { ...freshFault('fault-001', '2026-03-01'), what: 'Body module silent' };
    const estimated = {
      ...fault,
      decision: { kind: 'repair' as const, decidedOn: '2026-03-01', reason: 'cheaper', estimateMinutes: 90 },
    };
    expect(withDecision(estimated, 'replace', '2026-03-03').decision).toEqual({
      kind: 'replace',
      decidedOn: '2026-03-03',
      reason: 'cheaper',
      estimateMinutes: 90,
    });
  });

  it('lets only what was decided and is not left be finished', () => {
    const fault = { ...freshFault('fault-001', '2026-03-01'), what: 'Scratch' };
    expect(canBeDone(fault)).toBe(false);
    expect(canBeDone(withDecision(fault, 'leave', '2026-03-02'))).toBe(false);
    expect(canBeDone(withDecision(fault, 'repair', '2026-03-02'))).toBe(true);
    expect(canBeDone({ ...withDecision(fault, 'repair', '2026-03-02'), doneOn: '2026-03-03' })).toBe(false);
  });

  it('offers finishing exactly where the rules take it', () => {
    fc.assert(
      fc.property(fc.constantFrom('repair', 'replace', 'leave', null), (kind) => {
        const found = { ...freshFault('fault-001', '2026-03-01'), what: 'Scratch' };
        const fault = kind === null ? found : withDecision({ ...found }, kind, '2026-03-02');
        const done = { ...fault, doneOn: '2026-03-03' };
        const isTaken = !factProblems({ kind: 'put', list: 'faults', item: done }, '2026-03-03').some(
          (problem) => problem.field === 'doneOn',
        );
        expect(isTaken).toBe(canBeDone(fault));
      }),
    );
  });
});
