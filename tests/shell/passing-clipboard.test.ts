// A code on the clipboard goes again: after its time, when it is to be forgotten, and never what somebody has copied since.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createPassingClipboard } from '../../app/shell/passing-clipboard.ts';

let text = '';
const clipboard = {
  writeText: (written: string) => {
    text = written;
  },
  readText: () => text,
  clear: () => {
    text = '';
  },
};

beforeEach(() => {
  text = '';
  vi.useFakeTimers();
});
afterEach(() => vi.useRealTimers());

describe('the clipboard', () => {
  it('holds the code for its time and is cleared then', async () => {
    const passing = createPassingClipboard(clipboard, () => {});
    await passing.copyPassing('7305', 30);
    await vi.advanceTimersByTimeAsync(29_000);
    expect(text).toBe('7305');
    await vi.advanceTimersByTimeAsync(1_000);
    expect(text).toBe('');
  });

  it('is cleared at once when the code is to be forgotten', async () => {
    const passing = createPassingClipboard(clipboard, () => {});
    await passing.copyPassing('7305', 30);
    await passing.forgetCopied();
    expect(text).toBe('');
  });

  it('keeps what somebody has copied since', async () => {
    const passing = createPassingClipboard(clipboard, () => {});
    await passing.copyPassing('7305', 30);
    text = 'a telephone number';
    await vi.advanceTimersByTimeAsync(31_000);
    expect(text).toBe('a telephone number');
  });

  it('counts the time of the last code when two are copied', async () => {
    const passing = createPassingClipboard(clipboard, () => {});
    await passing.copyPassing('7305', 30);
    await vi.advanceTimersByTimeAsync(20_000);
    await passing.copyPassing('48213', 30);
    await vi.advanceTimersByTimeAsync(20_000);
    expect(text).toBe('48213');
    await vi.advanceTimersByTimeAsync(10_000);
    expect(text).toBe('');
  });

  it('tells of a clipboard that cannot be read', async () => {
    const troubles: unknown[] = [];
    const broken = { ...clipboard, readText: () => Promise.reject(new Error('no display')) };
    const passing = createPassingClipboard(broken, (error) => void troubles.push(error));
    await passing.copyPassing('7305', 30);
    await passing.forgetCopied();
    expect(troubles).toHaveLength(1);
  });
});
