// The mark of a sheet as bars at the foot of each page, for a scanner: decoration, since the mark stands beside it in letters.
import { barcodePattern } from './barcode-pattern.ts';
import { millimetres, type PageFrame } from './page-frame.ts';
import { paintPattern } from './paint-pattern.ts';
import type { Pen } from './pen.ts';

/** As in blocks/barcodes.ts: reads from 150 dpi. */
const moduleWidth = millimetres(0.33);
const barHeight = millimetres(7);
/** Clear space beside the bars (ISO/IEC 15417), as the pattern brings it. */
const quietModules = 10;

export type MarkBars = {
  /** Kept free of words at the right, clear space included. */
  readonly width: number;
  readonly height: number;
  readonly draw: (top: number) => void;
};

/** Null for a sheet without a mark. The clear space at the right lies in the margin. */
export function planMarkBars(pen: Pen, frame: PageFrame, mark: string): MarkBars | null {
  const pattern = mark === '' ? null : barcodePattern('code128', mark);
  if (pattern === null) return null;
  const width = (pattern.width - quietModules) * moduleWidth;
  return {
    width,
    height: barHeight,
    draw: (top) => paintPattern(pen, pattern, { left: frame.right - width, top }, moduleWidth, barHeight),
  };
}
