// Critical paths against published solutions: a project-network handout (N1, N2), a textbook's solutions manual in arrow form (N4), the
// pollution-control case of Heizer and Render (N7; durations published, solution computed) and the three-point example of an
// encyclopedia (N9; from memory, solution computed).
import { describe, expect, it } from 'vitest';
import { type CriticalPath, criticalPath, type Task } from '../../app/domain/time/critical-path.ts';

/** 'A6 B2<A C2<A' */
function network(text: string): Task[] {
  return text.split(' ').map((word) => {
    const match = /^([a-zA-Z])([\d./]+)(?:<([a-zA-Z,]+))?$/.exec(word);
    if (!match) throw new Error(`Not a task: ${word}`);
    const [, id = '', duration = '', after] = match;
    return { id, duration: Number(duration), after: after ? after.split(',') : [] };
  });
}

function solve(tasks: readonly Task[]): CriticalPath {
  const result = criticalPath(tasks);
  if (!result.ok) throw new Error(result.error.map(({ sentence }) => sentence).join(' '));
  return result.value;
}

function rows(path: CriticalPath): Record<string, number[]> {
  return Object.fromEntries(
    path.tasks.map((task) => [
      task.id,
      [task.earliestStart, task.earliestFinish, task.latestStart, task.latestFinish, task.totalFloat],
    ]),
  );
}

function chains(path: CriticalPath): string[] {
  return path.chains.map((chain) => chain.join('-'));
}

/** Arrow form: an activity i-j follows every activity that ends in i. */
function arrows(list: readonly (readonly [from: number, to: number, duration: number])[]): Task[] {
  return list.map(([from, to, duration]) => ({
    id: `${from}-${to}`,
    duration,
    after: list.filter(([, end]) => end === from).map(([start, end]) => `${start}-${end}`),
  }));
}

describe('published networks', () => {
  it('N1: 16 hours, critical A-B-D-E-G, floats of one hour on C and F', () => {
    const path = solve(network('A6 B2<A C2<A D3<B F2<C E4<D,F G1<E'));
    expect(path.finish).toBe(16);
    expect(chains(path)).toEqual(['A-B-D-E-G']);
    expect(rows(path)).toEqual({
      A: [0, 6, 0, 6, 0],
      B: [6, 8, 6, 8, 0],
      C: [6, 8, 7, 9, 1],
      D: [8, 11, 8, 11, 0],
      F: [8, 10, 9, 11, 1],
      E: [11, 15, 11, 15, 0],
      G: [15, 16, 15, 16, 0],
    });
    expect(path.tasks.map(({ id, freeFloat }) => [id, freeFloat])).toContainEqual(['C', 0]);
    expect(path.tasks.map(({ id, freeFloat }) => [id, freeFloat])).toContainEqual(['F', 1]);
  });

  it('N2: 19, every float nothing, and both critical paths, of which the source names one', () => {
    const path = solve(network('A4 B3<A C5<A D2<B E6<C,D F4<E'));
    expect(path.finish).toBe(19);
    expect(path.tasks.every(({ totalFloat, isCritical }) => totalFloat === 0 && isCritical)).toBe(true);
    expect(chains(path)).toEqual(['A-B-D-E-F', 'A-C-E-F']);
  });

  it('N4: 20, critical 1-3-4-5-6', () => {
    const path = solve(
      arrows([
        [1, 2, 7],
        [1, 3, 10],
        [2, 4, 6],
        [3, 4, 5],
        [3, 5, 4],
        [4, 5, 3],
        [5, 6, 2],
      ]),
    );
    expect(path.finish).toBe(20);
    expect(rows(path)).toMatchObject({
      '1-2': [0, 7, 2, 9, 2],
      '2-4': [7, 13, 9, 15, 2],
      '3-5': [10, 14, 14, 18, 4],
    });
    expect(path.chains).toEqual([['1-3', '3-4', '4-5', '5-6']]);
  });

  it('N7: 15 weeks, critical A-C-E-G-H, floats B 1, D 1, F 6', () => {
    const path = solve(network('A2 B3 C2<A D4<A,B E4<C F3<C G5<D,E H2<F,G'));
    expect(path.finish).toBe(15);
    expect(chains(path)).toEqual(['A-C-E-G-H']);
    const floats = Object.fromEntries(path.tasks.map(({ id, totalFloat }) => [id, totalFloat]));
    expect(floats).toEqual({ A: 0, B: 1, C: 0, D: 1, E: 0, F: 6, G: 0, H: 0 });
  });

  it('N9: exactly 19.5 from three-point estimates, nothing rounded in between', () => {
    const points: Record<string, [number, number, number, string[]]> = {
      a: [2, 4, 6, []],
      b: [3, 5, 9, []],
      c: [4, 5, 7, ['a']],
      d: [4, 6, 10, ['a']],
      e: [4, 5, 7, ['b', 'c']],
      f: [3, 4, 8, ['d']],
      g: [3, 5, 8, ['e']],
    };
    const tasks = Object.entries(points).map(([id, [least, likely, most, after]]) => ({
      id,
      duration: (least + 4 * likely + most) / 6,
      after,
    }));
    const path = solve(tasks);
    // adding the figures rounded to hundredths would give 19.51
    expect(path.finish).toBeCloseTo(19.5, 9);
    expect(chains(path)).toEqual(['a-c-e-g']);
  });
});

describe('edge cases', () => {
  it('a single task is critical, and nothing at all is finished at once', () => {
    expect(solve(network('A3'))).toMatchObject({ finish: 3, chains: [['A']] });
    expect(solve([])).toEqual({ tasks: [], finish: 0, chains: [], hasMoreChains: false });
  });

  it('two chains without a link are reckoned against the same end', () => {
    const path = solve(network('A3 B2<A C4 D0<C'));
    expect(path.finish).toBe(5);
    expect(rows(path)).toMatchObject({ C: [0, 4, 1, 5, 1], D: [4, 4, 5, 5, 1] });
    expect(chains(path)).toEqual(['A-B']);
  });

  it('tasks without a duration may lie on the critical path', () => {
    expect(chains(solve(network('A3 Z0<A B2<Z')))).toEqual(['A-Z-B']);
    expect(solve(network('A0 B0<A'))).toMatchObject({ finish: 0, chains: [['A', 'B']] });
  });

  it('a cycle is named in its order, with no task that only hangs on it', () => {
    const result = criticalPath(network('S1 A1<C,S B1<A C1<B X1<C Y1<X'));
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.error).toHaveLength(1);
    const [problem] = result.error;
    expect(problem?.code).toBe('cycle');
    const named = problem?.code === 'cycle' ? problem.tasks : [];
    expect([...named].sort()).toEqual(['A', 'B', 'C']);
    expect('ABCABC').toContain(named.join(''));
    expect(problem?.sentence).toContain(`“${named[0]}” → “${named[1]}”`);
  });

  it('a task that waits for itself is a cycle of one', () => {
    expect(criticalPath(network('A1<A'))).toMatchObject({ ok: false, error: [{ code: 'cycle', tasks: ['A'] }] });
  });

  it('every missing predecessor, double name and impossible duration is named at once', () => {
    const result = criticalPath([
      { id: 'A', duration: 1, after: ['ghost', 'other'] },
      { id: 'B', duration: -1, after: [] },
      { id: 'B', duration: Number.NaN, after: [] },
    ]);
    expect(result.ok ? [] : result.error.map(({ code }) => code)).toEqual([
      'unknown-task',
      'unknown-task',
      'bad-duration',
      'twice',
      'bad-duration',
    ]);
    expect(result.ok ? '' : result.error[0]?.sentence).toBe('“A” waits for “ghost”, which is not among the tasks.');
  });

  it('chains beyond number are cut short, and that is said', () => {
    const tasks: Task[] = [{ id: 's0', duration: 1, after: [] }];
    for (let rung = 1; rung <= 12; rung += 1) {
      tasks.push({ id: `a${rung}`, duration: 1, after: [`s${rung - 1}`] });
      tasks.push({ id: `b${rung}`, duration: 1, after: [`s${rung - 1}`] });
      tasks.push({ id: `s${rung}`, duration: 1, after: [`a${rung}`, `b${rung}`] });
    }
    const path = solve(tasks);
    expect(path.finish).toBe(25);
    expect(path.chains).toHaveLength(100);
    expect(path.hasMoreChains).toBe(true);
  });
});
