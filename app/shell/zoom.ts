// The steps in which a person makes everything larger or smaller. Pure.

export const zoomStepsPercent = [75, 90, 100, 110, 125, 150, 175, 200] as const;

/** The next step upwards (1) or downwards (-1), or the natural size (0). The last step stays; any zoom may come in. */
export function nextZoomPercent(percent: number, direction: 1 | -1 | 0): number {
  if (direction === 0) return 100;
  if (direction === 1) return zoomStepsPercent.find((step) => step > percent) ?? Math.max(...zoomStepsPercent);
  return zoomStepsPercent.findLast((step) => step < percent) ?? Math.min(...zoomStepsPercent);
}
