// What a row says of a code request, from drafted to closed.
import { describe, expect, it } from 'vitest';
import type { CodeRequestDraft } from '../../../../../app/domain/codes/code-request.ts';
import { codeRequestValue, finishCodeRequest } from '../../../../../renderer/screens/vehicle/codes/code-draft.ts';
import { codeState, instantOn } from '../../../../../renderer/screens/vehicle/codes/code-state.ts';
import { freshChase } from '../../../../../renderer/screens/vehicle/codes/fresh-life.ts';
import { makeChase, makeRequest, makeTry } from '../../../../domain/codes/request-maker.ts';

const at = { today: '2026-03-20', now: '2026-03-20T12:00:00.000Z' };
const say = (facts: Parameters<typeof makeRequest>[0], triesAllowed: number | null = null) =>
  codeState({ id: 'request-1', ...makeRequest(facts) }, { triesAllowed }, at);
const asked = { askedOn: '2026-03-02' };
const given = { ...asked, answeredOn: '2026-03-06', outcome: 'given' as const };

describe('the state of a code request', () => {
  it.each([
    ['proof of ownership first', { proof: null }],
    ['to ask', {}],
    ['asked 2 Mar, no day promised', asked],
    ['asked 2 Mar, expected 25 Mar', { ...asked, expectedOn: '2026-03-25' }],
    ['asked 2 Mar, expected 18 Mar, 2 days late', { ...asked, expectedOn: '2026-03-18' }],
    ['chased 9 Mar, expected 22 Mar', { ...asked, chases: [makeChase('2026-03-09', '2026-03-22')] }],
    [
      'chased 12 Mar, the 2nd time, no day promised',
      { ...asked, chases: [makeChase('2026-03-09'), makeChase('2026-03-12')] },
    ],
    ['given 6 Mar, not tried', given],
    ['refused 6 Mar', { ...given, outcome: 'refused' as const }],
    ['does not work, tried 7 Mar, 1 try left', { ...given, tries: [makeTry('2026-03-07', 'wrong', { triesLeft: 1 })] }],
    ['unit locked; how long it did not say', { ...given, tries: [makeTry('2026-03-07', 'wrong', { triesLeft: 0 })] }],
    ['works, 8 Mar', { ...given, tries: [makeTry('2026-03-07', 'wrong'), makeTry('2026-03-08', 'right')] }],
    ['closed 9 Mar: radio replaced', { ...given, closedOn: '2026-03-09', closedWhy: 'radio replaced' }],
  ])('is said as “%s”', (words, facts) => {
    expect(say(facts)).toBe(words);
  });

  it('names the tries that are left where the kind says how many there are', () => {
    expect(say(given, 5)).toBe('given 6 Mar, not tried, 5 tries left');
    expect(say({ ...given, tries: [makeTry('2026-03-07', 'wrong')] }, 5)).toBe(
      'does not work, tried 7 Mar, 4 tries left',
    );
  });

  it('says until when the unit is locked, and no more once that is over', () => {
    const lockedUntil = (instant: string) =>
      say({ ...given, tries: [makeTry('2026-03-20', 'wrong', { lockedUntil: instant })] });
    expect(lockedUntil('2026-03-20T13:00:00.000Z')).toMatch(/^unit locked until 20 Mar 2026 \d\d:\d\d$/);
    expect(lockedUntil('2026-03-20T11:00:00.000Z')).toBe('does not work, tried 20 Mar');
  });
});

it('takes noon of the sample’s day where this computer has another one', () => {
  expect(instantOn('2026-03-20', new Date('2031-01-05T08:00:00.000Z'))).toBe('2026-03-20T12:00:00.000Z');
  const clock = new Date(2026, 2, 20, 15, 30);
  expect(instantOn('2026-03-20', clock)).toBe(clock.toISOString());
});

it('keeps no proof without a document, and no lock beside a right code', () => {
  const request: CodeRequestDraft = {
    id: 'request-1',
    ...makeRequest({ ...given, tries: [makeTry('2026-03-08', 'right', { triesLeft: 2, lockedUntil: at.now })] }),
  };
  const value = codeRequestValue(request);
  const finished = finishCodeRequest({ ...value, proof: { ...value.proof, document: ' ' } });
  expect(finished).toMatchObject({ ok: true, value: { proof: null, tries: [{ triesLeft: null, lockedUntil: null }] } });
});

it('chases a letter by telephone, and a portal in the portal', () => {
  const how = (asking: Parameters<typeof freshChase>[1]['how']) =>
    freshChase('chase-1', { today: '2026-03-20', by: 'ada-1', how: asking }).how;
  expect([how('letter'), how('portal'), how(null)]).toEqual(['phone', 'portal', 'phone']);
});
