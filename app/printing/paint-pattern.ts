// Fills the shapes of a barcode at a place on the page. Decides no size: whoever plans the page does.
import type { BarcodePattern } from './barcode-pattern.ts';
import type { Pen } from './pen.ts';
import { ink } from './type-scale.ts';

/** `module` and `height` in points; the height is of the bars of a linear code, a matrix is as high as it is. */
export function paintPattern(
  pen: Pen,
  pattern: BarcodePattern,
  at: { readonly left: number; readonly top: number },
  module: number,
  height: number,
): void {
  const stretch = pattern.isLinear ? height : module;
  for (const shape of pattern.shapes)
    pen.doc.polygon(...shape.map(([x, y]) => [at.left + x * module, at.top + y * stretch]));
  pen.doc.fill(ink, 'even-odd');
}
