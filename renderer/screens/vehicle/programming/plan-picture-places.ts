// Where the steps of a plan lie in its picture: a column for each layer, and in it one below the other. A link that passes columns keeps a
// lane of its own there, so that it never runs through a step it has nothing to do with. Pure arithmetic; draws nothing.
import type { StepProgress } from '../../../../app/domain/programming/job-progress.ts';
import type { KeptPlan } from '../../../../app/domain/programming/kept-plan.ts';
import { neededLinks } from '../../../../app/domain/programming/linear-extension.ts';

export const columnWidth = 44;
export const rowHeight = 30;
/** How far from a step, or from another lane, a lane keeps. */
const laneHeight = 15;

export type Point = { readonly x: number; readonly y: number };
export type PicturePlace = Point & { readonly progress: StepProgress };
/** From the first point, a step, over the lanes of the columns between, to the last, a step. */
export type PictureLink = { readonly from: string; readonly to: string; readonly points: readonly Point[] };

export type Picture = {
  readonly places: readonly PicturePlace[];
  readonly links: readonly PictureLink[];
  readonly columns: number;
  readonly width: number;
  readonly height: number;
};

type Slot = { readonly key: string; readonly progress: StepProgress | null; readonly wanted: number };

/**
 * Heights as near as possible (least squares) to the wanted ones, in this order and at least their gap apart: isotonic regression by
 * pooling neighbours that violate it, once the gaps are taken off.
 */
export function spreadOut(wanted: readonly number[], gaps: readonly number[]): readonly number[] {
  const offsets: number[] = [];
  for (let at = 0; at < wanted.length; at++)
    offsets.push((offsets[at - 1] ?? 0) + (at === 0 ? 0 : (gaps[at - 1] ?? 0)));
  const blocks: { sum: number; size: number }[] = [];
  for (const [at, value] of wanted.entries()) {
    let block = { sum: value - (offsets[at] ?? 0), size: 1 };
    for (let last = blocks.at(-1); last && last.sum / last.size > block.sum / block.size; last = blocks.at(-1)) {
      blocks.pop();
      block = { sum: block.sum + last.sum, size: block.size + last.size };
    }
    blocks.push(block);
  }
  const levels = blocks.flatMap(({ sum, size }) => Array.from({ length: size }, () => sum / size));
  return levels.map((level, at) => level + (offsets[at] ?? 0));
}

const lane = (from: string, layer: number) => `${from} over ${layer}`;

/** Links that others imply are not drawn; those of one step that pass the same column share one lane. */
export function pictureOf(plan: KeptPlan, steps: readonly StepProgress[]): Picture {
  const columns = Math.max(0, ...steps.map(({ step }) => step.layer + 1));
  const layerOf = new Map(steps.map(({ step }) => [step.id, step.layer]));
  const order = plan.steps.map(({ id }) => id);
  const links = neededLinks(order, plan.links).flatMap(({ before, after }) => {
    const [first, last] = [layerOf.get(before), layerOf.get(after)];
    return first === undefined || last === undefined ? [] : [{ before, after, first, last }];
  });
  const heights = new Map<string, number>();
  const keyAt = (from: string, first: number, layer: number) => (layer === first ? from : lane(from, layer));
  for (let layer = 0; layer < columns; layer++) {
    const meanOf = (keys: readonly string[]) =>
      keys.reduce((sum, key) => sum + (heights.get(key) ?? 0), 0) / Math.max(1, keys.length);
    const ofSteps = steps
      .filter(({ step }) => step.layer === layer)
      .map((progress): Slot => {
        const from = links.filter(({ after }) => after === progress.step.id);
        const wanted = meanOf(from.map(({ before, first, last }) => keyAt(before, first, last - 1)));
        return { key: progress.step.id, progress, wanted };
      });
    const passing = new Map(
      links
        .filter(({ first, last }) => first < layer && layer < last)
        .map(({ before, first }) => [before, keyAt(before, first, layer - 1)]),
    );
    const ofLanes = [...passing].map(
      ([from, key]): Slot => ({ key: lane(from, layer), progress: null, wanted: meanOf([key]) }),
    );
    const slots = [...ofSteps, ...ofLanes].toSorted((a, b) => a.wanted - b.wanted);
    const gaps = slots
      .slice(1)
      .map(({ progress }, at) =>
        progress && slots[at]?.progress ? rowHeight : laneHeight + (progress || slots[at]?.progress ? 4 : 0),
      );
    const spread = spreadOut(
      slots.map(({ wanted }) => wanted),
      gaps,
    );
    for (const [at, { key }] of slots.entries()) heights.set(key, spread[at] ?? 0);
  }
  const top = Math.min(0, ...heights.values());
  const height = Math.max(0, ...heights.values()) - top + rowHeight;
  const point = (key: string, layer: number): Point => ({
    x: layer * columnWidth + columnWidth / 2,
    y: (heights.get(key) ?? 0) - top + rowHeight / 2,
  });
  return {
    places: steps.map((progress) => ({ progress, ...point(progress.step.id, progress.step.layer) })),
    links: links.map(({ before, after, first, last }) => ({
      from: before,
      to: after,
      points: [
        ...Array.from({ length: last - first }, (_, at) => point(keyAt(before, first, first + at), first + at)),
        point(after, last),
      ],
    })),
    columns,
    width: columns * columnWidth,
    height,
  };
}
