// Where steps lie in the picture: what comes before lies further left, nothing lies on anything else.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobProgress } from '../../../../../app/domain/programming/job-progress.ts';
import { pictureOf, spreadOut } from '../../../../../renderer/screens/vehicle/programming/plan-picture-places.ts';
import { bodyExchange } from '../../../../helpers/planned-job.ts';

const { vehicle, job } = bodyExchange('2026-03-02');
const { steps } = jobProgress(vehicle, job);
const picture = pictureOf(job.plan, steps);

describe('the picture of a plan', () => {
  it('has each step once and in a place of its own, inside the picture', () => {
    expect(picture.places.map(({ progress }) => progress.number).toSorted((a, b) => a - b)).toEqual(
      steps.map(({ number }) => number),
    );
    expect(new Set(picture.places.map(({ x, y }) => `${x} ${y}`)).size).toBe(steps.length);
    for (const { x, y } of picture.places) {
      expect(x > 0 && x < picture.width).toBe(true);
      expect(y > 0 && y < picture.height).toBe(true);
    }
  });

  it('draws every link from left to right, and none that others imply', () => {
    for (const { points } of picture.links)
      for (const [at, { x }] of points.slice(1).entries()) expect(x).toBeGreaterThan(points[at]?.x ?? Infinity);
    const pairs = picture.links.map(({ from, to }) => `${from} ${to}`);
    expect(pairs).toContain('scan-before compare-vins');
    expect(pairs).toContain('write-vin--body write-config--body');
    // By way of the VIN.
    expect(pairs).not.toContain('write-software--body write-config--body');
  });

  it('keeps a link that passes columns clear of the steps there', () => {
    const passing = picture.links.flatMap(({ points }) => points.slice(1, -1));
    expect(passing.length).toBeGreaterThan(3);
    for (const { x, y } of passing)
      for (const place of picture.places) if (place.x === x) expect(Math.abs(place.y - y)).toBeGreaterThan(13);
  });
});

describe('spreading what lies in a column', () => {
  it('leaves everything where it wants to be when there is room', () => {
    expect(spreadOut([0, 40, 90], [30, 30])).toEqual([0, 40, 90]);
  });

  it('moves neighbours that want the same place apart by equal amounts', () => {
    expect(spreadOut([10, 10], [30])).toEqual([-5, 25]);
    expect(spreadOut([0, 0, 60], [30, 15])).toEqual([-15, 15, 60]);
  });

  it('keeps every gap and the order, whatever is wanted', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -100, max: 100 }), { maxLength: 8 }), (any) => {
        const wanted = any.toSorted((a, b) => a - b);
        const gaps = wanted.slice(1).map((_, at) => 10 + at);
        const spread = spreadOut(wanted, gaps);
        for (const [at, gap] of gaps.entries())
          expect((spread[at + 1] ?? Number.NaN) - (spread[at] ?? Number.NaN)).toBeGreaterThanOrEqual(gap - 1e-9);
        const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
        expect(sum(spread)).toBeCloseTo(sum(wanted));
      }),
    );
  });
});
