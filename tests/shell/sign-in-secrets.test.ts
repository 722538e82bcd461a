// A PIN or pass phrase is found in nothing that the program writes or says about calls that were refused, failed or went through.
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { peopleChannels } from '../../app/contract/people-channels.ts';
import { secretInputs } from '../../app/contract/secret-inputs.ts';
import { DeskSignIn } from '../../app/services/desk-sign-in.ts';
import { type Answering, answerCall, type Sender } from '../../app/shell/answer-call.ts';
import { openLog } from '../../app/shell/log.ts';
import { openTestDesk, type TestDesk } from '../helpers/open-test-desk.ts';

/** Not in quotes, not a path, no word of the program: nothing but silence keeps it out. */
const secret = 'zebra-kettle-9041-violin';
const sender: Sender = { contentsId: 7, isMainFrame: true, url: 'app://lotwright/index.html' };
const secretChannels = Object.keys(peopleChannels).filter((name) => name in secretInputs) as (
  | 'people:sign-in'
  | 'people:give-secret'
  | 'people:change-secret'
)[];

let folder: string;
let desk: TestDesk;
let said: string[];
let log: Answering['log'];

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lotwright-log-'));
  desk = await openTestDesk();
  said = [];
  for (const method of ['log', 'info', 'warn', 'error', 'debug'] as const)
    vi.spyOn(console, method).mockImplementation((...words) => void said.push(words.map(String).join(' ')));
  log = openLog({ file: join(folder, 'program.log'), clock: () => '2026-03-18T09:00:00.000Z', echo: true });
});
afterEach(async () => {
  vi.restoreAllMocks();
  await desk.discard();
  await rm(folder, { recursive: true });
});

function ask(channel: (typeof secretChannels)[number], input: unknown, answer: Answering['session'] | null = null) {
  const session = answer ?? (async () => desk.session);
  return answerCall({ channel, input, sender }, { windowContentsId: () => 7, session, log, checksOutput: true });
}

async function everythingWritten(place: string): Promise<string> {
  const entries = await readdir(place, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  return (await Promise.all(files.map((file) => readFile(file, 'latin1')))).join('\n');
}

function goodInput(channel: (typeof secretChannels)[number]): Record<string, string> {
  const fields = Object.fromEntries((secretInputs[channel] ?? []).map((field) => [field, secret]));
  return channel === 'people:change-secret' ? fields : { personId: 'manager', ...fields };
}

it('covers every call of signing in that carries a secret', () => {
  expect(secretChannels).toEqual(['people:sign-in', 'people:change-secret', 'people:give-secret']);
});

it.each(secretChannels)('of %s, whatever is wrong with the call', async (channel) => {
  const good = goodInput(channel);
  const [field = ''] = secretInputs[channel] ?? [];
  const answers = [
    await ask(channel, good),
    await ask(channel, good),
    await ask(channel, { ...good, [field]: { [secret]: secret } }),
    await ask(channel, { ...good, [field]: secret.repeat(40) }),
    await ask(channel, { ...good, [secret]: secret }),
    await ask(channel, { ...good, personId: secret.toUpperCase() + secret }),
    await ask(channel, secret),
    await ask(channel, [secret]),
    await ask(channel, good, async () => {
      throw new Error(`It failed at ${secret}`);
    }),
    await ask(channel, good, async () => ({
      answer: async () => {
        throw Object.assign(new TypeError(`It failed at ${secret}`), { code: secret });
      },
    })),
  ];
  expect(answers.some((answer) => !answer.ok)).toBe(true);
  const outside = [JSON.stringify(answers), said.join('\n'), JSON.stringify(desk.emitted), String(desk.reported)];
  expect(outside.join('\n')).not.toContain(secret);
  expect(await everythingWritten(folder)).not.toContain(secret);
  expect(await everythingWritten(desk.folder)).not.toContain(secret);
  // What is looked through is what is written there.
  expect(await everythingWritten(folder)).toContain(`${channel} refused`);
});

it('of a use case that throws with it in its words', async () => {
  vi.spyOn(DeskSignIn.prototype, 'giveSecret').mockRejectedValue(new Error(`It failed at ${secret}`));
  const answer = await desk.session.answer('people:give-secret', { personId: 'manager', secret });
  expect(answer).toMatchObject({ ok: false, error: { code: 'unexpected' } });
  const told = desk.reported.map((error) =>
    error instanceof Error ? `${error.message} ${error.stack}` : String(error),
  );
  expect(told).toHaveLength(1);
  expect(told.join()).not.toContain(secret);
});
