// Decides where the window opens: where it was, unless that place is no longer on any screen. Pure; knows no Electron.

export type Bounds = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** In device-independent pixels. */
export const smallestWindow = { width: 1024, height: 700 } as const;
const usualWindow = { width: 1440, height: 900 } as const;
/** So much of the window, at least, has to be seen for a person to be able to drag it back. */
const leastVisible = 64;

function overlap(startA: number, lengthA: number, startB: number, lengthB: number): number {
  return Math.min(startA + lengthA, startB + lengthB) - Math.max(startA, startB);
}

function isVisible(window: Bounds, area: Bounds): boolean {
  const across = overlap(window.x, window.width, area.x, area.width);
  const down = overlap(window.y, window.height, area.y, area.height);
  return across >= leastVisible && down >= leastVisible;
}

function within(value: number, least: number, most: number): number {
  return Math.round(Math.max(least, Math.min(value, most)));
}

/** As large as asked for, as far as the screen has room, and never smaller than the smallest window. */
function fittedSize(wanted: { readonly width: number; readonly height: number }, area: Bounds) {
  return {
    width: within(wanted.width, smallestWindow.width, area.width),
    height: within(wanted.height, smallestWindow.height, area.height),
  };
}

function centred(wanted: { readonly width: number; readonly height: number }, area: Bounds): Bounds {
  const { width, height } = fittedSize(wanted, area);
  const x = Math.round(area.x + Math.max(0, (area.width - width) / 2));
  const y = Math.round(area.y + Math.max(0, (area.height - height) / 2));
  return { x, y, width, height };
}

/**
 * Bounds for the window.
 * @param saved where it was when it was last closed, or null
 * @param workAreas of all screens in device-independent pixels, the main one first
 */
export function placeWindow(saved: Bounds | null, workAreas: readonly [Bounds, ...Bounds[]]): Bounds {
  const [mainArea] = workAreas;
  if (saved === null) return centred(usualWindow, mainArea);
  for (const area of workAreas) {
    // The title bar must stay below the upper edge, or nobody can take hold of it.
    const y = Math.max(Math.round(saved.y), area.y);
    const placed = { x: Math.round(saved.x), y, ...fittedSize(saved, area) };
    const isReachable = saved.y + saved.height - area.y >= leastVisible;
    if (isReachable && isVisible(placed, area)) return placed;
  }
  return centred(saved, mainArea);
}
