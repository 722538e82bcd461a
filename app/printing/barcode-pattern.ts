// Barcodes as shapes in units of one module, quiet zones included. No drawing: the pen does that.
import { code39, code128, type DrawingContext, datamatrix } from 'bwip-js/generic';
import type { SheetBlock } from '../domain/sheets/sheet.ts';

export type Symbology = Extract<SheetBlock, { kind: 'barcode' }>['symbology'];
type Point = readonly [x: number, y: number];

export type BarcodePattern = {
  readonly isLinear: boolean;
  /** Size in modules, quiet zones included. Bars of a linear code are 1 high, to be stretched by the caller. */
  readonly width: number;
  readonly height: number;
  /** Outlines to be filled together by the even-odd rule. */
  readonly shapes: readonly (readonly Point[])[];
};

/** Clear space in modules beside the bars and around the matrix (ISO/IEC 16388 and 15417: ten; Data Matrix: one). From memory. */
const quietModules: Readonly<Record<Symbology, number>> = { code39: 10, code128: 10, datamatrix: 1 };

/** The library draws into this. Asked for two pixels a module, so that the middle of every bar falls on a whole number. */
function shapeCollector(quiet: number) {
  let pixels = 1;
  let size: Point = [0, 0];
  let isLinear = false;
  const shapes: Point[][] = [];
  const context: DrawingContext<null> = {
    scale: (x) => {
      pixels = x;
      return null;
    },
    measure: () => ({ width: 0, ascent: 0, descent: 0 }),
    init: (width, height) => {
      size = [width / pixels, height / pixels];
    },
    line: (middle, _y0, _x1, _y1, lineWidth) => {
      isLinear = true;
      const left = (middle - lineWidth / 2) / pixels + quiet;
      const right = left + lineWidth / pixels;
      shapes.push([
        [left, 0],
        [right, 0],
        [right, 1],
        [left, 1],
      ]);
    },
    polygon: (points) => {
      shapes.push(points.map(([x, y]) => [x / pixels + quiet, y / pixels + quiet]));
    },
    hexagon: () => undefined,
    ellipse: () => undefined,
    fill: () => undefined,
    text: () => undefined,
    end: () => null,
  };
  const pattern = (): BarcodePattern => ({
    isLinear,
    width: size[0] + 2 * quiet,
    height: isLinear ? 1 : size[1] + 2 * quiet,
    shapes,
  });
  return { context, pattern };
}

const encoders = { code39, code128, datamatrix } as const;

/**
 * The pattern of a value, or null when the symbology cannot hold it. Code 39 with wide elements three times the narrow ones, no check
 * character (ISO/IEC 16388 leaves it optional).
 */
export function barcodePattern(symbology: Symbology, value: string): BarcodePattern | null {
  // Other characters would be coded as bytes that no reader shows again as they were.
  if (!/^[\x20-\x7e]+$/.test(value)) return null;
  const { context, pattern } = shapeCollector(quietModules[symbology]);
  try {
    encoders[symbology]({ bcid: symbology, text: value, scale: 2, includetext: false }, context);
  } catch {
    // Thrown for characters outside the symbology; the value is then printed without bars.
    return null;
  }
  const made = pattern();
  return made.shapes.length === 0 ? null : made;
}
