// Where a request stands, which facts of it are refused, and the reminder for filing.
import { describe, expect, it } from 'vitest';
import { shippedCodeKinds } from '../../../app/domain/codes/code-kinds.ts';
import { filingReminder, filingRuleSchema, shippedFilingRules } from '../../../app/domain/codes/filing-limit.ts';
import { noRequestLife, requestLifeSchema } from '../../../app/domain/codes/request-facts.ts';
import { requestStanding, triesLeft } from '../../../app/domain/codes/request-life.ts';
import { requestLifeProblems, whyNotAskable } from '../../../app/domain/codes/request-rules.ts';
import { makeChase, makeRequest, makeTry } from './request-maker.ts';

const now = '2026-03-20T12:00:00.000Z';
const today = '2026-03-20';
const unknown = { triesAllowed: null };
const given = { askedOn: '2026-03-02', answeredOn: '2026-03-06', outcome: 'given' as const };
const radio = shippedCodeKinds.find((kind) => kind.id === 'radio') ?? shippedCodeKinds[0];
if (!radio) throw new Error('no kinds');

describe('where a request stands', () => {
  it.each([
    ['drafted, from the day it was noted', {}, { state: 'drafted', since: '2026-03-01' }],
    [
      'asked, with the day it is expected',
      { askedOn: '2026-03-02', expectedOn: '2026-03-09' },
      { state: 'asked', since: '2026-03-02', expectedOn: '2026-03-09' },
    ],
    [
      'chased, since the last time, with the promise that was given last',
      {
        askedOn: '2026-03-02',
        expectedOn: '2026-03-04',
        chases: [makeChase('2026-03-08', '2026-03-12'), makeChase('2026-03-05', '2026-03-06'), makeChase('2026-03-13')],
      },
      { state: 'chased', since: '2026-03-13', times: 3, expectedOn: '2026-03-12' },
    ],
    ['here, not tried', given, { state: 'answered', since: '2026-03-06', triesLeft: null }],
    ['refused', { ...given, outcome: 'refused' as const }, { state: 'refused', since: '2026-03-06' }],
    [
      'tried and wrong, with the tries left as the device showed',
      { ...given, tries: [makeTry('2026-03-07', 'wrong', { triesLeft: 4 })] },
      { state: 'wrong', since: '2026-03-07', triesLeft: 4 },
    ],
    [
      'locked until later today',
      { ...given, tries: [makeTry('2026-03-20', 'wrong', { lockedUntil: '2026-03-20T13:00:00.000Z' })] },
      { state: 'locked', since: '2026-03-20', until: '2026-03-20T13:00:00.000Z' },
    ],
    [
      'tried and wrong once the lock has run out',
      { ...given, tries: [makeTry('2026-03-20', 'wrong', { triesLeft: 0, lockedUntil: now })] },
      { state: 'wrong', since: '2026-03-20', triesLeft: null },
    ],
    [
      'locked for nobody knows how long when no try is left',
      { ...given, tries: [makeTry('2026-03-20', 'wrong', { triesLeft: 0 })] },
      { state: 'locked', since: '2026-03-20', until: null },
    ],
    [
      'right after a wrong one',
      { ...given, tries: [makeTry('2026-03-07', 'wrong'), makeTry('2026-03-08', 'right')] },
      { state: 'right', since: '2026-03-08' },
    ],
    [
      'closed, whatever came before',
      { ...given, tries: [makeTry('2026-03-08', 'right')], closedOn: '2026-03-09', closedWhy: 'done' },
      { state: 'closed', since: '2026-03-09', why: 'done' },
    ],
  ])('%s', (_name, facts, expected) => {
    expect(requestStanding(makeRequest(facts), unknown, now)).toEqual(expected);
  });

  it('counts down from what the kind allows where the device says nothing', () => {
    const five = { triesAllowed: 5 };
    const wrong = makeTry('2026-03-07', 'wrong');
    expect(triesLeft([], five, now)).toBe(5);
    expect(triesLeft([wrong, wrong], five, now)).toBe(3);
    expect(triesLeft([wrong, makeTry('2026-03-07', 'wrong', { triesLeft: 9 }), wrong], five, now)).toBe(8);
    expect(triesLeft(Array(7).fill(wrong), five, now)).toBe(0);
    expect(triesLeft([wrong, wrong, makeTry('2026-03-08', 'right')], five, now)).toBe(5);
    expect(triesLeft([wrong, makeTry('2026-03-08', 'wrong', { lockedUntil: now }), wrong], five, now)).toBe(4);
    expect(triesLeft([wrong], null, now)).toBeNull();
  });

  it('has facts that hold by their own schema, empty ones too', () => {
    expect(requestLifeSchema.safeParse(noRequestLife).success).toBe(true);
    const { chases, tries } = makeRequest({
      chases: [makeChase('2026-03-05')],
      tries: [makeTry('2026-03-07', 'wrong')],
    });
    expect(requestLifeSchema.safeParse({ ...noRequestLife, chases, tries }).success).toBe(true);
    expect(requestLifeSchema.safeParse({ ...noRequestLife, code: '3041' }).success).toBe(false);
  });
});

describe('a request may be printed or marked asked', () => {
  it('with proof of ownership and all that its kind must carry', () => {
    expect(whyNotAskable(makeRequest(), '100AB54C450110341', radio)).toEqual([]);
  });

  it('never without proof of ownership', () => {
    const fields = whyNotAskable(makeRequest({ proof: null }), '100AB54C450110341', radio).map(({ field }) => field);
    expect(fields).toEqual(['proof']);
  });

  it('not without the VIN and the serial', () => {
    const fields = whyNotAskable(makeRequest({ deviceSerial: '' }), '', radio).map(({ field }) => field);
    expect(fields).toEqual(['vin', 'deviceSerial']);
  });
});

describe('facts of a request', () => {
  it('of a whole life in order are taken', () => {
    const whole = makeRequest({
      ...given,
      chases: [makeChase('2026-03-05', '2026-03-06')],
      tries: [makeTry('2026-03-07', 'wrong', { triesLeft: 2 }), makeTry('2026-03-07', 'right')],
      filing: {
        schemeId: 'us-secure-data-release',
        transactionOn: '2026-03-06',
        filedOn: '2026-03-08',
        reference: 'D-1',
      },
      closedOn: '2026-03-08',
    });
    expect(requestLifeProblems(whole, today)).toEqual([]);
  });

  it.each([
    ['chased before it was asked', { askedOn: '2026-03-06', chases: [makeChase('2026-03-05')] }, 'chases.0.chasedOn'],
    ['chased without being asked', { chases: [makeChase('2026-03-05')] }, 'askedOn'],
    ['chased after the answer', { ...given, chases: [makeChase('2026-03-07')] }, 'chases.0.chasedOn'],
    ['chased in the future', { askedOn: '2026-03-06', chases: [makeChase('2026-03-21')] }, 'chases.0.chasedOn'],
    [
      'promised for a day before the chase',
      { askedOn: '2026-03-02', chases: [makeChase('2026-03-05', '2026-03-04')] },
      'chases.0.promisedOn',
    ],
    ['tried though no code was given', { askedOn: '2026-03-02', tries: [makeTry('2026-03-07', 'wrong')] }, 'outcome'],
    [
      'tried though it was refused',
      { ...given, outcome: 'refused' as const, tries: [makeTry('2026-03-07', 'wrong')] },
      'outcome',
    ],
    ['tried before it was here', { ...given, tries: [makeTry('2026-03-05', 'wrong')] }, 'tries.0.triedOn'],
    ['tried in the future', { ...given, tries: [makeTry('2026-03-21', 'wrong')] }, 'tries.0.triedOn'],
    [
      'tries out of order',
      { ...given, tries: [makeTry('2026-03-08', 'wrong'), makeTry('2026-03-07', 'right')] },
      'tries.1.triedOn',
    ],
    [
      'right and locked at once',
      { ...given, tries: [makeTry('2026-03-08', 'right', { lockedUntil: now })] },
      'tries.0.result',
    ],
    ['closed without a reason', { ...given, closedOn: '2026-03-08' }, 'closedWhy'],
    [
      'closed before the last try',
      { ...given, tries: [makeTry('2026-03-08', 'right')], closedOn: '2026-03-07' },
      'closedOn',
    ],
    ['closed in the future', { closedOn: '2026-03-21', closedWhy: 'not needed' }, 'closedOn'],
    [
      'filed before the transaction',
      {
        ...given,
        filing: {
          schemeId: 'us-secure-data-release',
          transactionOn: '2026-03-06',
          filedOn: '2026-03-05',
          reference: '',
        },
      },
      'filing.filedOn',
    ],
  ])('%s are refused at the right field', (_name, facts, field) => {
    const problems = requestLifeProblems(makeRequest(facts), today);
    expect(problems.map((problem) => problem.field)).toEqual([field]);
    expect(problems[0]?.sentence).toMatch(/\.$/);
  });
});

describe('the reminder for filing', () => {
  const filing = { schemeId: 'us-secure-data-release', transactionOn: null, filedOn: null, reference: '' };
  const remind = (facts: Parameters<typeof makeRequest>[0], day: string) =>
    filingReminder(makeRequest({ ...given, filing, ...facts }), shippedFilingRules, day);

  it('is five days after the code was given where the scheme asks for it', () => {
    expect(remind({}, '2026-03-06')).toMatchObject({ dueOn: '2026-03-11', daysLeft: 5 });
    expect(remind({}, '2026-03-11')).toMatchObject({ daysLeft: 0, sentence: expect.stringContaining('due today') });
    expect(remind({}, '2026-03-12')).toMatchObject({ daysLeft: -1, sentence: expect.stringContaining('1 day ago') });
  });

  it('counts from the day written down for the transaction', () => {
    expect(remind({ filing: { ...filing, transactionOn: '2026-03-04' } }, today)?.dueOn).toBe('2026-03-09');
  });

  it('is not there when filed, refused, not answered, or under no scheme', () => {
    expect(remind({ filing: { ...filing, filedOn: '2026-03-07' } }, today)).toBeNull();
    expect(remind({ outcome: 'refused' }, today)).toBeNull();
    expect(remind({ answeredOn: null, outcome: null }, today)).toBeNull();
    expect(remind({ filing: null }, today)).toBeNull();
    expect(remind({ filing: { ...filing, schemeId: 'gone' } }, today)).toBeNull();
  });

  it('comes from rules that hold and name their source', () => {
    for (const rule of shippedFilingRules) expect(filingRuleSchema.safeParse(rule).success).toBe(true);
    expect(shippedFilingRules[0]?.source).toContain('5 days');
  });
});
