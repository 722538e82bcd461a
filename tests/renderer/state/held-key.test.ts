// The letter of a command waits for a scanner's second key: by a clock that the test moves.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { doHeldKey, dropHeldKey, heldMs, holdKey } from '../../../renderer/state/held-key.ts';
import { slowestGapMs } from '../../../renderer/state/scan-reader.ts';

let done: string[] = [];
const takeIn = () => done.push('take in');

beforeEach(() => {
  done = [];
  vi.useFakeTimers();
});
afterEach(() => {
  dropHeldKey();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

describe('a held letter', () => {
  it('is done once no scanner can have sent it any more, before a person notices', () => {
    holdKey(takeIn);
    vi.advanceTimersByTime(slowestGapMs);
    expect(done).toEqual([]);
    vi.advanceTimersByTime(heldMs - slowestGapMs);
    expect(done).toEqual(['take in']);
    // What comes within a tenth of a second is felt as at once (common practice, no source).
    expect(heldMs).toBeLessThan(100);
    vi.advanceTimersByTime(1_000);
    expect(done).toHaveLength(1);
  });

  it('is dropped when it was the first of a scan', () => {
    holdKey(takeIn);
    vi.advanceTimersByTime(12);
    dropHeldKey();
    vi.advanceTimersByTime(1_000);
    expect(done).toEqual([]);
  });

  it('is done before the key that no scanner sends, and only once', () => {
    holdKey(takeIn);
    vi.advanceTimersByTime(12);
    doHeldKey();
    expect(done).toEqual(['take in']);
    vi.advanceTimersByTime(1_000);
    doHeldKey();
    expect(done).toHaveLength(1);
  });

  it('waits once more where the page was busy: the second key may stand in line behind the timer', () => {
    const clock = vi.spyOn(performance, 'now');
    clock.mockReturnValue(5_000);
    holdKey(takeIn);
    clock.mockReturnValue(5_400);
    vi.advanceTimersByTime(heldMs);
    expect(done).toEqual([]);
    clock.mockReturnValue(5_440);
    vi.advanceTimersByTime(heldMs);
    expect(done).toEqual(['take in']);
  });
});
