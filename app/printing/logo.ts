// The dealer's logo at the head of every page, as decoration: the name of the dealer stands beside it as text. Embedded once in a file.
import { openImage } from './open-image.ts';

export type Logo = {
  /** In the box whose top left corner this is; as wide as it then is, in points. */
  readonly widthAt: (height: number) => number;
  readonly draw: (x: number, y: number, height: number) => void;
};

const widest = 120;

/** As high as the box allows, unless it then is wider than a third of the page's width. Null without one. */
export function openLogo(doc: PDFKit.PDFDocument, bytes: Buffer | null): Logo | null {
  if (bytes === null) return null;
  const image = openImage(doc, bytes);
  const sizeAt = (height: number) => {
    const scale = Math.min(height / image.height, widest / image.width);
    return [image.width * scale, image.height * scale] as const;
  };
  return {
    widthAt: (height) => sizeAt(height)[0],
    draw: (x, y, height) => {
      const [width, drawn] = sizeAt(height);
      doc.image(image, x, y + (height - drawn) / 2, { width, height: drawn });
    },
  };
}
