// Decides about one call of the page: who asks, how much, in which form; then lets the desk answer. Knows no Electron,
// and never throws: whatever goes wrong becomes a result with an error.
import type { z } from 'zod';
import type { AppError } from '../contract/app-error.ts';
import { type ChannelName, channels } from '../contract/channels.ts';
import { carriesSecret, problemsWithoutWords, withoutWords } from '../contract/secret-inputs.ts';
import { fail, type Result } from '../domain/shared/result.ts';
import type { DeskSession } from '../services/desk-session.ts';
import type { Log } from './log.ts';
import { isPageOrigin } from './page-origin.ts';

/** Four million characters of JSON: far above any honest call, far below what would stop the program. */
export const longestCall = 4_000_000;
const mostProblems = 20;

/** Where a call came from, as Electron tells it. `url` is that of the asking frame. */
export type Sender = { readonly contentsId: number; readonly isMainFrame: boolean; readonly url: string };

export type Call = { readonly channel: ChannelName; readonly input: unknown; readonly sender: Sender | null };

export type Answering = {
  /** The contents of our own window, or null while there is none. */
  readonly windowContentsId: () => number | null;
  /** Waited for while the fleet is being opened; null when it never will be, because the person quits. */
  readonly session: () => Promise<Pick<DeskSession, 'answer'> | null>;
  readonly log: Log;
  /** In development and tests what goes out is held against the contract too. */
  readonly checksOutput: boolean;
};

/** Only the main frame of our own window, showing our own page, may ask. */
export function isTrustedSender(sender: Sender | null, windowContentsId: number | null): boolean {
  if (sender === null || windowContentsId === null) return false;
  return sender.contentsId === windowContentsId && sender.isMainFrame && isPageOrigin(sender.url);
}

function refusal(code: AppError['code'], detail: string, problems: AppError['problems'] = []) {
  return fail<AppError>({ code, detail, problems });
}

/** As many bytes as the largest file that is handed over, with the pictures made of it. */
export const mostCallBytes = 30_000_000;

type Size = { readonly characters: number; readonly bytes: number };

/** The length as JSON, and the bytes of files beside it; null for what JSON cannot hold (a loop, a bigint). */
function callSize(input: unknown): Size | null {
  let bytes = 0;
  const weigh = (_key: string, value: unknown) => {
    if (!(value instanceof Uint8Array)) return value;
    bytes += value.byteLength;
    return null;
  };
  try {
    return { characters: JSON.stringify(input, weigh)?.length ?? 0, bytes };
  } catch {
    return null;
  }
}

function problemsOf(error: z.ZodError): AppError['problems'] {
  return error.issues.slice(0, mostProblems).map((issue) => ({ field: issue.path.join('.'), sentence: issue.message }));
}

/** Fields and kinds of fault only: what a person typed does not belong in a log. */
function faultsForLog(error: z.ZodError): string {
  const faults = error.issues.slice(0, mostProblems).map((issue) => `${issue.path.join('.') || '(all)'}=${issue.code}`);
  return faults.join(' ');
}

export async function answerCall(call: Call, answering: Answering): Promise<Result<unknown, AppError>> {
  const { channel, input, sender } = call;
  const { log } = answering;
  if (!isTrustedSender(sender, answering.windowContentsId())) {
    log.warn('call', `${channel} refused: not asked by our own page`);
    return refusal('not-allowed', 'Only the page of this program may ask.');
  }
  const size = callSize(input);
  if (size === null || size.characters > longestCall || size.bytes > mostCallBytes) {
    const why = size === null ? 'not plain data' : `${size.characters} characters, ${size.bytes} bytes`;
    log.warn('call', `${channel} refused: ${why}`);
    return refusal('bad-request', size === null ? 'This is not plain data.' : 'This is too much for one step.');
  }
  const spec = channels[channel];
  const parsed = spec.input.safeParse(input);
  if (!parsed.success) {
    log.warn('call', `${channel} refused: ${faultsForLog(parsed.error)}`);
    const problems = carriesSecret(channel) ? problemsWithoutWords(parsed.error) : problemsOf(parsed.error);
    return refusal('bad-request', '', problems);
  }
  try {
    const session = await answering.session();
    if (session === null) return refusal('folder-gone', '');
    const startedAt = performance.now();
    const result = await session.answer(channel, parsed.data);
    // What was done and how it ended, never what was in it: the name of the channel says which sort of thing.
    if (spec.mutates || !result.ok) {
      const took = `${Math.round(performance.now() - startedAt)} ms`;
      log.info('call', `${channel} ${result.ok ? 'done' : `refused, ${result.error.code}`}, ${took}`);
    }
    if (!result.ok || !answering.checksOutput) return result;
    const output = spec.output.safeParse(result.value);
    if (output.success) return result;
    log.error('call', `${channel} answered against the contract: ${faultsForLog(output.error)}`);
    return refusal('unexpected', '');
  } catch (error) {
    log.error('call', `${channel} failed`, carriesSecret(channel) ? withoutWords(error) : error);
    return refusal('unexpected', '');
  }
}
