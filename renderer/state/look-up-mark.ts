// Asks which sheet has a mark, typed or scanned. Says nothing itself: whoever asks shows the sentences.
import type { FoundSheet } from '../../app/contract/sheet-channels.ts';
import { readMark } from '../../app/domain/sheets/sheet-mark.ts';
import { ask } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';
import { sheetJobText } from '../text/sheet-job.ts';

export type MarkAnswer = {
  /** What is wrong with what was typed, or with asking. */
  readonly problem: string;
  /** That nothing is known of it. */
  readonly sentence: string;
  readonly found: readonly FoundSheet[];
};
export const noMarkAnswer: MarkAnswer = { problem: '', sentence: '', found: [] };

export async function lookUpMark(typed: string): Promise<MarkAnswer> {
  // A slip of the pen is told at once, before anything is asked.
  const read = readMark(typed);
  if (!read.ok) return { ...noMarkAnswer, problem: read.sentence };
  const answer = await ask('sheet:find-mark', { mark: read.mark });
  if (!answer.ok) return { ...noMarkAnswer, problem: errorSentence(answer.error) };
  const { found, problem } = answer.value;
  return { problem, found, sentence: found.length === 0 && problem === '' ? sheetJobText.notFound(read.mark) : '' };
}
