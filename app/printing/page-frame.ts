// Where things may stand on a page of each paper, in points (1/72 inch). Margins of 16 mm at the sides keep clear of every printer's edge.
import type { Sheet } from '../domain/sheets/sheet.ts';

const pointsPerMillimetre = 72 / 25.4;

export function millimetres(length: number): number {
  return length * pointsPerMillimetre;
}

/** Paper sizes in points: ISO 216 A4, 210 × 297 mm; US Letter, 8.5 × 11 in. */
export const paperSizes: Readonly<Record<Sheet['paper'], readonly [width: number, height: number]>> = {
  a4: [millimetres(210), millimetres(297)],
  letter: [612, 792],
};

export type PageFrame = {
  readonly pageWidth: number;
  readonly pageHeight: number;
  readonly left: number;
  readonly right: number;
  readonly width: number;
  /** Where the running head begins, and where the running foot must end. */
  readonly headTop: number;
  readonly footBottom: number;
};

export function pageFrame(paper: Sheet['paper'], orientation: Sheet['orientation']): PageFrame {
  const [shorter, longer] = paperSizes[paper];
  const [pageWidth, pageHeight] = orientation === 'landscape' ? [longer, shorter] : [shorter, longer];
  const side = millimetres(16);
  return {
    pageWidth,
    pageHeight,
    left: side,
    right: pageWidth - side,
    width: pageWidth - 2 * side,
    headTop: millimetres(11),
    footBottom: pageHeight - millimetres(11),
  };
}
