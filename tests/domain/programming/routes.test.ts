// Ranking the routes left from the shop's own history. Means are worked by hand: (worked + 1) / (tried + 2).
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ProgrammingRoute } from '../../../app/domain/programming/programming-route.ts';
import type { RouteTally } from '../../../app/domain/programming/route-history.ts';
import { betaBinomialMean, offerRoutes, rankRoutes } from '../../../app/domain/programming/routes.ts';

const cases = (route: ProgrammingRoute, worked: number, failed: number): RouteTally => ({
  route,
  worked,
  tried: worked + failed,
});
const routes: readonly ProgrammingRoute[] = ['on-vehicle', 'pass-through', 'bench'];

describe('the estimate for a route', () => {
  it.each([
    [0, 0, 1 / 2],
    [1, 1, 2 / 3],
    [0, 1, 1 / 3],
    [3, 4, 2 / 3],
    [9, 10, 10 / 12],
  ])('after %i of %i is the mean of the beta distribution from Beta(1, 1)', (worked, tried, mean) => {
    expect(betaBinomialMean(worked, tried)).toBeCloseTo(mean, 12);
  });

  it('equals the mean of the posterior density, integrated numerically', () => {
    const integrate = (of: (p: number) => number) => {
      const steps = 20_000;
      let sum = 0;
      for (let at = 0; at < steps; at++) sum += of((at + 0.5) / steps) / steps;
      return sum;
    };
    for (const [worked, tried] of [
      [2, 5],
      [7, 7],
      [0, 3],
    ] as const) {
      const likelihood = (p: number) => p ** worked * (1 - p) ** (tried - worked);
      expect(betaBinomialMean(worked, tried)).toBeCloseTo(
        integrate((p) => p * likelihood(p)) / integrate(likelihood),
        6,
      );
    }
  });
});

describe('the routes left', () => {
  it('come with the most promising first, with how many cases stand behind it', () => {
    const ranked = rankRoutes([cases('bench', 3, 1), cases('on-vehicle', 1, 4)], routes);
    expect(ranked.map(({ route, worked, tried }) => [route, worked, tried])).toEqual([
      ['bench', 3, 4],
      ['pass-through', 0, 0],
      ['on-vehicle', 1, 5],
    ]);
    expect(ranked[0]?.sentence).toContain('worked in 3 of 4 tries');
    expect(ranked[0]?.mean).toBeCloseTo(2 / 3, 12);
  });

  it('say that there is no history instead of showing a number', () => {
    const [only] = rankRoutes([], ['bench']);
    expect(only).toMatchObject({ mean: null, tried: 0 });
    expect(only?.sentence).toContain('no history');
  });

  it('prefer ten of twelve to one of one', () => {
    const ranked = rankRoutes([cases('on-vehicle', 1, 0), cases('bench', 10, 2)], ['on-vehicle', 'bench']);
    expect(ranked.map(({ route }) => route)).toEqual(['bench', 'on-vehicle']);
  });
});

describe('the offer after a failure', () => {
  it('puts the failed route last, however well it worked before', () => {
    const offer = offerRoutes({ routes }, ['on-vehicle'], [cases('on-vehicle', 20, 1)]);
    expect(offer.routes.map(({ route, failedHere }) => [route, failedHere])).toEqual([
      ['pass-through', false],
      ['bench', false],
      ['on-vehicle', true],
    ]);
    expect(offer.sentence).toContain('Go on to the next route');
    expect(offer.sentence).toContain('no history');
  });

  it('says so when every route has failed', () => {
    const offer = offerRoutes({ routes }, routes, []);
    expect(offer.routes.every(({ failedHere }) => failedHere)).toBe(true);
    expect(offer.sentence).toContain('Every route has failed');
  });

  it('never loses a route, never invents one, and never puts a failed one before one that is left', () => {
    const history = fc.uniqueArray(
      fc
        .tuple(fc.constantFrom(...routes), fc.nat(9), fc.nat(9))
        .map(([route, worked, failed]) => cases(route, worked, failed)),
      { selector: ({ route }) => route },
    );
    fc.assert(
      fc.property(history, fc.subarray([...routes]), (known, failed) => {
        const offered = offerRoutes({ routes }, failed, known).routes;
        expect(offered.map(({ route }) => route).toSorted()).toEqual(routes.toSorted());
        const flags = offered.map(({ failedHere }) => failedHere);
        expect(flags.toSorted((a, b) => Number(a) - Number(b))).toEqual(flags);
        expect(offered.filter(({ failedHere }) => failedHere)).toHaveLength(failed.length);
      }),
    );
  });
});
