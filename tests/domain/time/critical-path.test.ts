// The critical path on any network: against the longest path found by trying all, and what always holds. Published solutions are in
// tests/reference.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../../app/domain/shared/day.ts';
import { type CriticalPath, criticalPath, type Task } from '../../../app/domain/time/critical-path.ts';
import { finishDayNumber, workingTimeline } from '../../../app/domain/time/timeline.ts';

/** Each task waits for some of those before it, so there is no cycle. */
const networks: fc.Arbitrary<Task[]> = fc
  .array(
    fc.record({
      duration: fc.nat({ max: 9 }),
      links: fc.array(fc.nat({ max: 20 }), { maxLength: 3 }),
      time: fc.constantFrom('calendar', 'working'),
    }),
    { maxLength: 9 },
  )
  .map((drafts) =>
    drafts.map(({ duration, links, time }, at) => ({
      id: `t${at}`,
      duration,
      time,
      after: at === 0 ? [] : links.map((link) => `t${link % at}`),
    })),
  );

function solve(tasks: readonly Task[], options = {}): CriticalPath {
  const result = criticalPath(tasks, options);
  if (!result.ok) throw new Error('not a network');
  return result.value;
}

function longest(tasks: readonly Task[], id: string): number {
  const task = tasks.find((one) => one.id === id);
  return (task?.duration ?? 0) + Math.max(0, ...(task?.after ?? []).map((before) => longest(tasks, before)));
}

const shop = { workDays: [1, 2, 3, 4, 5], minutesPerDay: 480, holidays: ['2026-04-06'] };
const timeline = workingTimeline(shop);
const start = dayNumber('2026-03-30');

describe('without a calendar', () => {
  it('the end is the longest path, found by trying all of them', () => {
    fc.assert(
      fc.property(networks, (tasks) => {
        expect(solve(tasks).finish).toBe(Math.max(0, ...tasks.map(({ id }) => longest(tasks, id))));
      }),
    );
  });

  it('each critical chain takes the whole time, and each task on none has room', () => {
    fc.assert(
      fc.property(networks, (tasks) => {
        const path = solve(tasks);
        const durations = new Map(tasks.map(({ id, duration }) => [id, duration]));
        for (const chain of path.chains)
          expect(chain.reduce((sum, id) => sum + (durations.get(id) ?? 0), 0)).toBe(path.finish);
        const onChain = new Set(path.chains.flat());
        for (const { id, totalFloat, freeFloat } of path.tasks) {
          expect(totalFloat > 0).toBe(!onChain.has(id));
          expect(freeFloat).toBeGreaterThanOrEqual(0);
          expect(freeFloat).toBeLessThanOrEqual(totalFloat);
        }
      }),
    );
  });

  it('a task that slips by its float moves nothing, and by more moves the end', () => {
    fc.assert(
      fc.property(networks, fc.nat({ max: 8 }), (tasks, pick) => {
        const path = solve(tasks);
        const slipped = path.tasks[pick];
        if (!slipped) return;
        const longer = (by: number) =>
          solve(tasks.map((task) => (task.id === slipped.id ? { ...task, duration: task.duration + by } : task)))
            .finish;
        expect(longer(slipped.totalFloat)).toBe(path.finish);
        expect(longer(slipped.totalFloat + 1)).toBe(path.finish + 1);
      }),
    );
  });
});

describe('on the calendar of a shop', () => {
  it('adding a task never makes the whole ready earlier', () => {
    fc.assert(
      fc.property(networks, fc.nat({ max: 9 }), fc.array(fc.nat({ max: 8 })), (tasks, duration, links) => {
        const after = links.flatMap((link) => tasks[link]?.id ?? []);
        const [first] = tasks;
        // The new one stands before the first task and behind some others only when that makes no cycle.
        const behind = [...tasks, { id: 'new', duration, after, time: 'working' as const }];
        const before = first
          ? [{ id: 'new', duration, after: [] }, { ...first, after: ['new'] }, ...tasks.slice(1)]
          : behind;
        const finish = solve(tasks, { start, timeline }).finish;
        expect(solve(behind, { start, timeline }).finish).toBeGreaterThanOrEqual(finish);
        expect(solve(before, { start, timeline }).finish).toBeGreaterThanOrEqual(finish);
      }),
    );
  });

  it('no task begins before what it waits for, and none has less room than none', () => {
    fc.assert(
      fc.property(networks, (tasks) => {
        const path = solve(tasks, { start, timeline });
        const byId = new Map(path.tasks.map((task) => [task.id, task]));
        for (const task of tasks)
          for (const id of task.after)
            expect(byId.get(task.id)?.earliestStart).toBeGreaterThanOrEqual(byId.get(id)?.earliestFinish ?? 0);
        for (const { totalFloat } of path.tasks) expect(totalFloat).toBeGreaterThanOrEqual(0);
        if (tasks.length > 0) expect(path.tasks.some(({ isCritical }) => isCritical)).toBe(true);
      }),
    );
  });

  it('parts of a day add up within the day, weekends and holidays pass by', () => {
    // Thursday 2 April, a quarter of a day; then half a day; then a whole day over Good Friday worked, Easter Monday off.
    const tasks: Task[] = [
      { id: 'strip', duration: 0.25, after: [], time: 'working' },
      { id: 'fit', duration: 0.5, after: ['strip'], time: 'working' },
      { id: 'test', duration: 1.5, after: ['fit'], time: 'working' },
    ];
    const thursday = dayNumber('2026-04-02');
    const path = solve(tasks, { start: thursday, timeline });
    expect(path.tasks.map(({ earliestFinish }) => earliestFinish - thursday)).toEqual([0.25, 0.75, 5.25]);
    expect(finishDayNumber(path.finish, thursday)).toBe(dayNumber('2026-04-07'));
  });

  it('what runs day and night runs over the weekend, and the shop goes on when it opens', () => {
    const friday = dayNumber('2026-03-27');
    const tasks: Task[] = [
      { id: 'paint', duration: 1, after: [], time: 'working' },
      { id: 'cure', duration: 2, after: ['paint'], time: 'calendar' },
      { id: 'polish', duration: 1, after: ['cure'], time: 'working' },
      { id: 'paper', duration: 2, after: [], time: 'calendar' },
    ];
    const path = solve(tasks, { start: friday, timeline });
    expect(path.finish).toBe(dayNumber('2026-03-31'));
    expect(finishDayNumber(path.finish, friday)).toBe(dayNumber('2026-03-30'));
    expect(path.tasks.map(({ totalFloat }) => totalFloat)).toEqual([0, 0, 0, 2]);
    expect(path.chains).toEqual([['paint', 'cure', 'polish']]);
  });

  it('a task finished at once is finished on the day it begins', () => {
    expect(finishDayNumber(start, start)).toBe(start);
    expect(finishDayNumber(start + 1, start)).toBe(start);
    expect(finishDayNumber(start + 1.25, start)).toBe(start + 1);
  });
});
