// Background work stands back for what a person does, and never for longer than is safe.
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { Foreground } from '../../app/storage/foreground.ts';

beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] }));
afterEach(() => void vi.useRealTimers());

async function turns(count = 3): Promise<void> {
  for (let turn = 0; turn < count; turn += 1) await new Promise((resolve) => setImmediate(resolve));
}

function pausing(foreground: Foreground): { isOver: boolean } {
  const watched = { isOver: false };
  void foreground.pause().then(() => {
    watched.isOver = true;
  });
  return watched;
}

it('lets background work go on at once while nobody waits', async () => {
  const watched = pausing(new Foreground());
  expect(watched.isOver).toBe(false);
  await turns();
  expect(watched.isOver).toBe(true);
});

it('holds it until the last of several calls is over, counting each once', async () => {
  const foreground = new Foreground();
  const first = foreground.begin();
  const second = foreground.begin();
  const watched = pausing(foreground);
  first();
  first();
  await turns();
  expect(watched.isOver).toBe(false);
  second();
  await turns();
  expect(watched.isOver).toBe(false);
  // Nor at once: a call seldom comes alone.
  foreground.begin()();
  await vi.advanceTimersByTimeAsync(90);
  await turns();
  expect([watched.isOver, foreground.isBusy]).toEqual([false, true]);
  await vi.advanceTimersByTimeAsync(20);
  await turns();
  expect([watched.isOver, foreground.isBusy]).toEqual([true, false]);
});

it('lets it go on after two seconds, because the call may itself be waiting for it', async () => {
  const foreground = new Foreground();
  foreground.begin();
  const watched = pausing(foreground);
  await vi.advanceTimersByTimeAsync(1900);
  await turns();
  expect(watched.isOver).toBe(false);
  await vi.advanceTimersByTimeAsync(200);
  await turns();
  expect(watched.isOver).toBe(true);
  // And no longer at all once the call has taken so long.
  const next = pausing(foreground);
  await turns();
  expect(next.isOver).toBe(true);
});
