// An image as the library takes it: opened once in a file and handed to each place. Given bytes, the library would embed them every time.

export type OpenImage = PDFKit.Mixins.ImageSrc & { readonly width: number; readonly height: number };

/** @throws what the library throws where the bytes are no PNG or JPEG. */
export function openImage(doc: PDFKit.PDFDocument, bytes: Buffer): OpenImage {
  const { openImage: open } = doc as unknown as { readonly openImage: (from: Buffer) => OpenImage };
  return open.call(doc, bytes);
}
