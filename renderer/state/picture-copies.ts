// The two smaller pictures that are kept beside a photograph: one for the list, one for paper. Upright as the camera says it was held, on
// white where the picture is see-through. Decoding and writing JPEG go on beside the page's own work, so there is no worker of ours; asks
// nothing of the main process.
import { mostPrintBytes, mostSmallBytes, printEdgeDots, smallEdgeDots } from '../../app/domain/vehicle/attachment.ts';

export type PictureCopies = {
  readonly small: Uint8Array<ArrayBuffer> | null;
  readonly print: Uint8Array<ArrayBuffer> | null;
};

type Size = { readonly width: number; readonly height: number };

/** The size at which the longer edge is at most `edge`; never larger than it is, never less than one dot. */
export function fitWithin({ width, height }: Size, edge: number): Size {
  const scale = Math.min(1, edge / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** Best first: where a picture is too rich for its bytes it is written more coarsely. */
const qualities = [0.82, 0.7, 0.55, 0.4, 0.25];

function drawOnWhite(picture: ImageBitmap | OffscreenCanvas, edge: number): OffscreenCanvas | null {
  const { width, height } = fitWithin(picture, edge);
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d', { alpha: false });
  if (pen === null) return null;
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(picture, 0, 0, width, height);
  return canvas;
}

async function asJpeg(canvas: OffscreenCanvas | null, mostBytes: number): Promise<Uint8Array<ArrayBuffer> | null> {
  if (canvas === null) return null;
  for (const quality of qualities) {
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality });
    if (blob.size <= mostBytes) return new Uint8Array(await blob.arrayBuffer());
  }
  return null;
}

/** None of what cannot be shown: a document, a picture of another kind, a damaged one. The main process judges the file itself. */
export async function makeCopies(file: Blob): Promise<PictureCopies> {
  try {
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const large = drawOnWhite(picture, printEdgeDots);
    picture.close();
    // The small one out of the large one: two short steps of shrinking look better than one long one, and cost less.
    const small = large === null ? null : drawOnWhite(large, smallEdgeDots);
    return { small: await asJpeg(small, mostSmallBytes), print: await asJpeg(large, mostPrintBytes) };
  } catch {
    return { small: null, print: null };
  }
}
