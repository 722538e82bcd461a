// Where the window opens: never where nobody can take hold of it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bounds, placeWindow, smallestWindow } from '../../app/shell/place-window.ts';

const main: Bounds = { x: 0, y: 0, width: 1920, height: 1040 };
const left: Bounds = { x: -1600, y: 40, width: 1600, height: 860 };
const saved: Bounds = { x: 200, y: 100, width: 1300, height: 800 };

function visible(window: Bounds, area: Bounds): [number, number] {
  const across = Math.min(window.x + window.width, area.x + area.width) - Math.max(window.x, area.x);
  const down = Math.min(window.y + window.height, area.y + area.height) - Math.max(window.y, area.y);
  return [across, down];
}

describe('placeWindow', () => {
  it('opens in the middle of the main screen the first time', () => {
    expect(placeWindow(null, [main, left])).toEqual({ x: 240, y: 70, width: 1440, height: 900 });
  });

  it('opens where it was', () => {
    expect(placeWindow(saved, [main])).toEqual(saved);
    const onTheLeft = { x: -1500, y: 60, width: 1100, height: 720 };
    expect(placeWindow(onTheLeft, [main, left])).toEqual(onTheLeft);
  });

  it('opens in the middle again, as large as it was, when its screen is gone', () => {
    const onTheLeft = { x: -1500, y: 60, width: 1100, height: 720 };
    expect(placeWindow(onTheLeft, [main])).toEqual({ x: 410, y: 160, width: 1100, height: 720 });
  });

  it('takes 64 by 64 visible pixels for enough, and one less for too little', () => {
    const edge = { ...saved, x: main.width - 64, y: main.height - 64 };
    expect(placeWindow(edge, [main])).toEqual(edge);
    expect(placeWindow({ ...edge, x: edge.x + 1 }, [main])).not.toMatchObject({ x: edge.x + 1 });
    expect(placeWindow({ ...edge, y: edge.y + 1 }, [main])).not.toMatchObject({ y: edge.y + 1 });
  });

  it('brings a title bar above the screen down to its upper edge', () => {
    expect(placeWindow({ ...saved, y: -300 }, [main])).toEqual({ ...saved, y: 0 });
  });

  it('makes a window that was too small or too large fit', () => {
    expect(placeWindow({ ...saved, width: 300, height: 200 }, [main])).toMatchObject(smallestWindow);
    expect(placeWindow({ ...saved, width: 9000, height: 9000 }, [main])).toMatchObject({ width: 1920, height: 1040 });
  });

  it('keeps the smallest size on a screen that is smaller', () => {
    const small: Bounds = { x: 0, y: 0, width: 800, height: 600 };
    expect(placeWindow(null, [small])).toEqual({ x: 0, y: 0, ...smallestWindow });
  });

  it('always leaves enough to take hold of, at a whole pixel, in a size that holds', () => {
    const anyBounds = fc.record({
      x: fc.integer({ min: -50_000, max: 50_000 }),
      y: fc.integer({ min: -50_000, max: 50_000 }),
      width: fc.integer({ min: 100, max: 20_000 }),
      height: fc.integer({ min: 100, max: 20_000 }),
    });
    fc.assert(
      fc.property(anyBounds, (bounds) => {
        const placed = placeWindow(bounds, [main, left]);
        expect([main, left].some((area) => visible(placed, area).every((pixels) => pixels >= 64))).toBe(true);
        expect(Object.values(placed).every(Number.isInteger)).toBe(true);
        expect(placed.width).toBeGreaterThanOrEqual(smallestWindow.width);
        expect(placed.height).toBeGreaterThanOrEqual(smallestWindow.height);
      }),
    );
  });
});
