// Calls of the page: who may ask, how much, in which form, and that nothing is ever thrown.
import { describe, expect, it, vi } from 'vitest';
import { ok, type Result } from '../../app/domain/shared/result.ts';
import { answerCall, isTrustedSender, longestCall, mostCallBytes, type Sender } from '../../app/shell/answer-call.ts';
import { silentLog } from './silent-log.ts';

const ours: Sender = { contentsId: 7, isMainFrame: true, url: 'app://lotwright/index.html' };
const goodChange = { personId: 'person-1' };

function desk(answer: () => Promise<Result<unknown, unknown>>, checksOutput = true) {
  const log = silentLog();
  const session = { answer: vi.fn(answer) };
  const answering = {
    windowContentsId: () => 7,
    session: async () => session as never,
    log: log.log,
    checksOutput,
  };
  return { answering, session, lines: log.lines };
}

describe('isTrustedSender', () => {
  it('trusts the main frame of our window showing our page', () => {
    expect(isTrustedSender(ours, 7)).toBe(true);
    expect(isTrustedSender({ ...ours, url: 'app://lotwright/index.html#/vehicle/3' }, 7)).toBe(true);
  });

  it.each([
    ['no frame any more', null],
    ['another window', { ...ours, contentsId: 8 }],
    ['a frame inside the page', { ...ours, isMainFrame: false }],
    ['an empty page', { ...ours, url: 'about:blank' }],
    ['no address', { ...ours, url: '' }],
    ['a web address', { ...ours, url: 'https://lotwright/index.html' }],
    ['our origin inside another address', { ...ours, url: 'https://example.invalid/?app://lotwright/' }],
    ['our host as the beginning of another', { ...ours, url: 'app://lotwright.example.invalid/index.html' }],
    ['our host as a name before another', { ...ours, url: 'app://lotwright@example.invalid/index.html' }],
    ['a name before our host', { ...ours, url: 'app://someone@lotwright/index.html' }],
    ['a port', { ...ours, url: 'app://lotwright:8080/index.html' }],
    ['our host in capitals', { ...ours, url: 'app://LOTWRIGHT/index.html' }],
    ['a file', { ...ours, url: 'file:///lotwright/index.html' }],
    ['a blob of our origin', { ...ours, url: 'blob:app://lotwright/1' }],
  ])('does not trust %s', (_what, sender) => {
    expect(isTrustedSender(sender, 7)).toBe(false);
  });

  it('trusts nobody while there is no window', () => {
    expect(isTrustedSender(ours, null)).toBe(false);
  });
});

describe('answerCall', () => {
  it('hands what the schema read to the desk, and its answer back', async () => {
    const { answering, session, lines } = desk(async () => ok({}));
    const result = await answerCall({ channel: 'sheet:show-folder', input: {}, sender: ours }, answering);
    expect(result).toEqual({ ok: true, value: {} });
    expect(session.answer).toHaveBeenCalledExactlyOnceWith('sheet:show-folder', {});
    expect(lines).toEqual([]);
  });

  it('refuses a foreign sender without asking the desk, and logs it', async () => {
    const { answering, session, lines } = desk(async () => ok({}));
    const call = { channel: 'sheet:show-folder', input: {}, sender: { ...ours, isMainFrame: false } } as const;
    expect(await answerCall(call, answering)).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    expect(session.answer).not.toHaveBeenCalled();
    expect(lines).toEqual([expect.stringContaining('warn call sheet:show-folder refused')]);
  });

  it('names the fields that stand against a call, and logs no value of them', async () => {
    const { answering, session, lines } = desk(async () => ok({}));
    const input = { personId: 'SECRET 4711' };
    const result = await answerCall({ channel: 'desk:set-person', input, sender: ours }, answering);
    expect(result).toMatchObject({ ok: false, error: { code: 'bad-request', problems: [{ field: 'personId' }] } });
    expect(session.answer).not.toHaveBeenCalled();
    expect(lines.join()).toContain('personId=');
    expect(lines.join()).not.toContain('4711');
  });

  it.each([
    ['nothing', undefined],
    ['null', null],
    ['a text', 'desk'],
    ['a list', [goodChange]],
    ['an unknown key beside the known ones', { ...goodChange, path: '/somewhere' }],
  ])('refuses %s as a bad request', async (_what, input) => {
    const { answering, session } = desk(async () => ok({}));
    const result = await answerCall({ channel: 'desk:set-person', input, sender: ours }, answering);
    expect(result).toMatchObject({ ok: false, error: { code: 'bad-request' } });
    expect(session.answer).not.toHaveBeenCalled();
  });

  it('refuses what is too long before any schema looks at it', async () => {
    const { answering, session, lines } = desk(async () => ok({}));
    const input = { personId: 'a'.repeat(longestCall) };
    const result = await answerCall({ channel: 'desk:set-person', input, sender: ours }, answering);
    expect(result).toMatchObject({ ok: false, error: { code: 'bad-request', problems: [] } });
    expect(lines.join().length).toBeLessThan(200);
    expect(session.answer).not.toHaveBeenCalled();
  });

  it('hands bytes on as they are, and refuses more of them than any file has', async () => {
    const { answering, session, lines } = desk(async () => ok({}), false);
    const input = {
      id: 'kept-one',
      baseRevision: 1,
      name: 'front.jpg',
      bytes: new Uint8Array([1, 2, 3]),
      small: null,
      print: null,
      on: '2026-03-18',
      caption: '',
    };
    const call = (changed: object) =>
      answerCall({ channel: 'attachment:add', input: { ...input, ...changed }, sender: ours }, answering);
    expect(await call({})).toMatchObject({ ok: true });
    expect(session.answer).toHaveBeenCalledExactlyOnceWith('attachment:add', input);
    expect(await call({ bytes: new Uint8Array(mostCallBytes + 1) })).toMatchObject({ error: { code: 'bad-request' } });
    expect(await call({ bytes: new Uint8Array(0) })).toMatchObject({ error: { code: 'bad-request' } });
    expect(await call({ bytes: [1, 2, 3] })).toMatchObject({ error: { code: 'bad-request' } });
    expect(await call({ bytes: '/etc/passwd' })).toMatchObject({ error: { code: 'bad-request' } });
    expect(session.answer).toHaveBeenCalledTimes(1);
    expect(lines.join().length).toBeLessThan(1000);
  });

  it('refuses what is no plain data', async () => {
    const { answering } = desk(async () => ok({}));
    const loop: Record<string, unknown> = {};
    loop.self = loop;
    for (const input of [loop, { personId: 10n }]) {
      const result = await answerCall({ channel: 'desk:set-person', input, sender: ours }, answering);
      expect(result).toMatchObject({ ok: false, error: { code: 'bad-request' } });
    }
  });

  it('turns a fault of the desk into an answer and logs it', async () => {
    const { answering, lines } = desk(async () => {
      throw new Error('broken');
    });
    const result = await answerCall({ channel: 'lot:read', input: {}, sender: ours }, answering);
    expect(result).toEqual({ ok: false, error: { code: 'unexpected', detail: '', problems: [] } });
    expect(lines).toEqual([expect.stringContaining('error call lot:read failed')]);
  });

  it('holds answers against the contract where it is told to, and only there', async () => {
    const wrong = async () => ok({ surprise: 1 });
    const call = { channel: 'sheet:show-folder', input: {}, sender: ours } as const;
    const checking = desk(wrong);
    expect(await answerCall(call, checking.answering)).toMatchObject({ ok: false, error: { code: 'unexpected' } });
    expect(checking.lines).toEqual([expect.stringContaining('against the contract')]);
    expect(await answerCall(call, desk(wrong, false).answering)).toEqual(ok({ surprise: 1 }));
  });

  it('passes a refusal of the desk on as it is', async () => {
    const refusal = { ok: false, error: { code: 'stale-revision', detail: 'x', problems: [] } } as const;
    const { answering } = desk(async () => refusal);
    expect(await answerCall({ channel: 'lot:read', input: {}, sender: ours }, answering)).toEqual(refusal);
  });

  it('answers too when the person quits before a fleet is open', async () => {
    const { answering } = desk(async () => ok([]));
    const quitting = { ...answering, session: async () => null };
    const result = await answerCall({ channel: 'lot:read', input: {}, sender: ours }, quitting);
    expect(result).toMatchObject({ ok: false });
  });
});
