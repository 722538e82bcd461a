// Code requests on a real folder: what the technician may note of them, what is never written back blanked, and which kinds stay.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CodeRequestDraft } from '../../app/domain/codes/code-request.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';
import { makeCodeRequest } from '../helpers/vehicle-maker.ts';

const feeCents = 4_711;
const chase = {
  id: 'chase-1',
  chasedOn: '2026-03-12',
  by: 'tech-one',
  how: 'phone',
  promisedOn: '2026-03-20',
  note: '',
} as const;
const attempt = {
  id: 'try-one',
  triedOn: '2026-03-14',
  by: 'tech-one',
  result: 'wrong',
  triesLeft: 2,
  lockedUntil: null,
  note: '',
} as const;

let desk: TestDesk;
let id: string;
let revision: number;
let request: CodeRequestDraft;

async function put(item: CodeRequestDraft) {
  const change = { kind: 'put', list: 'codeRequests', item } as const;
  const { view } = await desk.ask('vehicle:change', { id, baseRevision: revision, change });
  revision = view.revision;
  return view;
}
const refusedPut = (item: CodeRequestDraft) =>
  desk.refused('vehicle:change', { id, baseRevision: revision, change: { kind: 'put', list: 'codeRequests', item } });
const asTechnician = () => desk.ask('desk:set-person', { personId: 'tech-one' });
const asManager = () => desk.ask('desk:set-person', { personId: 'manager' });

async function changeShop(change: object) {
  const shop = await desk.ask('shop:read', {});
  return { baseRevision: shop.revision, change: change as never };
}

beforeEach(async () => {
  desk = await openTestDesk();
  await desk.ask('shop:change', await changeShop({ part: 'people', value: [...testPeople] }));
  const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', '1M8GDM9A3KP000009'));
  id = view.vehicle.id;
  revision = view.revision;
  const { entered: _stamp, ...draft } = makeCodeRequest('2026-03-09', { askedOn: '2026-03-10', feeCents });
  request = draft;
  await put(request);
});
afterEach(() => desk.discard());

describe('the technician', () => {
  it('notes a chase and a try, and the fee that was never shown stays what it was', async () => {
    await asTechnician();
    const { vehicle } = await desk.ask('vehicle:open', { id });
    const [shown] = vehicle.codeRequests;
    if (!shown) throw new Error('no request');
    expect(shown.feeCents).toBe(0);
    const { entered: _stamp, ...draft } = shown;
    await put({ ...draft, chases: [chase] });
    await asManager();
    const given = { ...request, chases: [chase], answeredOn: '2026-03-13', outcome: 'given' } as const;
    await put({ ...given, chases: [chase] });
    await asTechnician();
    await put({ ...given, feeCents: 0, chases: [chase], tries: [attempt] });
    await asManager();
    const after = await desk.ask('vehicle:open', { id });
    expect(after.vehicle.codeRequests[0]).toMatchObject({ feeCents, chases: [chase], tries: [attempt] });
    expect(JSON.stringify(after.readiness.gates)).toContain('Does not work: immobiliser code');
  });

  it.each([
    ['ask for a new code', (kept: CodeRequestDraft) => ({ ...kept, id: 'request-new' })],
    ['say of whom it was asked', (kept: CodeRequestDraft) => ({ ...kept, askedOf: 'Somebody else' })],
    ['answer it', (kept: CodeRequestDraft) => ({ ...kept, answeredOn: '2026-03-12', outcome: 'given' as const })],
    ['change the proof', (kept: CodeRequestDraft) => ({ ...kept, proof: null })],
    ['close it', (kept: CodeRequestDraft) => ({ ...kept, closedOn: '2026-03-12', closedWhy: 'done' })],
    ['file a form', (kept: CodeRequestDraft) => ({ ...kept, credentialReference: 'mine' })],
  ])('may not %s', async (_what, changed) => {
    await asTechnician();
    expect((await refusedPut({ ...changed(request), feeCents: 0 })).code).toBe('not-allowed');
    await asManager();
    expect((await desk.ask('vehicle:open', { id })).vehicle.codeRequests).toHaveLength(1);
  });

  it('may not remove a request', async () => {
    await asTechnician();
    const change = { kind: 'remove', list: 'codeRequests', id: request.id } as const;
    expect((await desk.refused('vehicle:change', { id, baseRevision: revision, change })).code).toBe('not-allowed');
  });
});

describe('a request', () => {
  it('is not marked asked without proof of ownership, and nothing of it is lost', async () => {
    const { id: _id, ...facts } = request;
    const refused = await refusedPut({ ...facts, id: 'request-two', proof: null });
    expect(refused.problems.map(({ field }) => field)).toEqual(['proof']);
    expect((await desk.ask('vehicle:open', { id })).vehicle.codeRequests).toHaveLength(1);
  });

  it('is told when to chase it, and that there are too few earlier ones to go by', async () => {
    await asTechnician();
    const [usual] = await desk.ask('codes:usual', { id });
    expect(usual).toMatchObject({ requestId: request.id, usual: null, chase: { on: '2026-03-18' } });
    await asManager();
    await put({ ...request, expectedOn: '2026-03-19' });
    const [promised] = await desk.ask('codes:usual', { id });
    expect(promised?.chase).toEqual({ on: '2026-03-20', why: 'the day after the promise, 2026-03-19' });
  });
});

describe('a kind of code', () => {
  it('in use is switched off, not removed; one that nobody uses may go', async () => {
    const { shop } = await desk.ask('shop:read', {});
    const without = (kind: string) => shop.codeKinds.filter((one) => one.id !== kind);
    const refused = await desk.refused(
      'shop:change',
      await changeShop({ part: 'codeKinds', value: without('immobiliser') }),
    );
    expect(refused.problems).toMatchObject([
      { field: 'codeKinds', sentence: expect.stringContaining('“Immobiliser code”') },
    ]);
    const kept = await desk.ask('shop:change', await changeShop({ part: 'codeKinds', value: without('radio') }));
    expect(kept.view.shop.codeKinds.map(({ id: kind }) => kind)).not.toContain('radio');
  });

  it('is called what the shop calls it wherever a person reads of it', async () => {
    const { shop } = await desk.ask('shop:read', {});
    const codeKinds = shop.codeKinds.map((kind) =>
      kind.id === 'immobiliser' ? { ...kind, name: 'Start lock code' } : kind,
    );
    const { desk: now } = await desk.ask('shop:change', await changeShop({ part: 'codeKinds', value: codeKinds }));
    expect(now.shop?.codeKinds[0]?.name).toBe('Start lock code');
    const view = await desk.ask('vehicle:open', { id });
    expect(JSON.stringify(view.readiness.gates)).toContain('for: start lock code');
    expect(JSON.stringify(view.costs?.lines)).toContain('start lock code');
    expect((await desk.ask('waiting:read', {})).lines[0]?.what).toContain('start lock code');
  });

  it('and the rule that a request is filed under stay while a request names them', async () => {
    const filing = {
      schemeId: 'us-secure-data-release',
      transactionOn: null,
      filedOn: null,
      reference: '',
    };
    await put({ ...request, filing });
    const refused = await desk.refused('shop:change', await changeShop({ part: 'filingRules', value: [] }));
    expect(refused.problems.map(({ field }) => field)).toEqual(['filingRules']);
  });
});
