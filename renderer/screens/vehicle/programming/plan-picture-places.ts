// Where the steps of a plan lie in its picture: a column for each layer, and in it one below the other. Pure arithmetic; draws nothing.
import type { StepProgress } from '../../../../app/domain/programming/job-progress.ts';
import type { KeptPlan } from '../../../../app/domain/programming/kept-plan.ts';
import { neededLinks } from '../../../../app/domain/programming/linear-extension.ts';

export const columnWidth = 44;
export const rowHeight = 30;

export type PicturePlace = { readonly progress: StepProgress; readonly x: number; readonly y: number };
export type PictureLink = { readonly from: PicturePlace; readonly to: PicturePlace };

export type Picture = {
  readonly places: readonly PicturePlace[];
  readonly links: readonly PictureLink[];
  readonly columns: number;
  readonly width: number;
  readonly height: number;
};

/** Each column is centred on the same line; links that others imply are not drawn. */
export function pictureOf(plan: KeptPlan, steps: readonly StepProgress[]): Picture {
  const columns = new Map<number, StepProgress[]>();
  for (const progress of steps) {
    const { layer } = progress.step;
    columns.set(layer, [...(columns.get(layer) ?? []), progress]);
  }
  const tallest = Math.max(1, ...[...columns.values()].map(({ length }) => length));
  const count = Math.max(0, ...columns.keys()) + 1;
  const height = tallest * rowHeight;
  const places = [...columns].flatMap(([layer, inColumn]) =>
    inColumn.map((progress, at) => ({
      progress,
      x: layer * columnWidth + columnWidth / 2,
      y: height / 2 + (at - (inColumn.length - 1) / 2) * rowHeight,
    })),
  );
  const placeOf = new Map(places.map((place) => [place.progress.step.id, place]));
  const order = plan.steps.map(({ id }) => id);
  const links = neededLinks(order, plan.links).flatMap(({ before, after }) => {
    const [from, to] = [placeOf.get(before), placeOf.get(after)];
    return from && to ? [{ from, to }] : [];
  });
  return { places, links, columns: count, width: count * columnWidth, height };
}
