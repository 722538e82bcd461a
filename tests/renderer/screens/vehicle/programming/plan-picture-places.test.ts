// Where steps lie in the picture: what comes before lies further left, nothing lies on anything else.
import { describe, expect, it } from 'vitest';
import { jobProgress } from '../../../../../app/domain/programming/job-progress.ts';
import { pictureOf } from '../../../../../renderer/screens/vehicle/programming/plan-picture-places.ts';
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
    for (const { from, to } of picture.links) expect(from.x).toBeLessThan(to.x);
    const pairs = picture.links.map(({ from, to }) => `${from.progress.step.id} ${to.progress.step.id}`);
    expect(pairs).toContain('scan-before compare-vins');
    expect(pairs).toContain('write-vin--body write-config--body');
    // By way of the VIN.
    expect(pairs).not.toContain('write-software--body write-config--body');
  });
});
