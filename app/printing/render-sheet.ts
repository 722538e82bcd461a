// A sheet as a PDF file: tagged, titled, always dark on white, with its own typefaces. Reads nothing but the sheet, the fonts, and the
// images that it is handed.
import PDFDocument from 'pdfkit';
import { assertNever } from '../domain/shared/assert-never.ts';
import type { Sheet, SheetBlock } from '../domain/sheets/sheet.ts';
import { planBarcodes } from './blocks/barcodes.ts';
import { planCautions } from './blocks/cautions.ts';
import { planFacts } from './blocks/facts.ts';
import { planFigures } from './blocks/figures.ts';
import { planHoldStrip } from './blocks/hold-strip.ts';
import { planLetterHead } from './blocks/letter-head.ts';
import { planMasthead } from './blocks/masthead.ts';
import { planPictures } from './blocks/pictures.ts';
import { planSteps } from './blocks/steps.ts';
import { planStripLegend } from './blocks/strip-legend.ts';
import { planTable } from './blocks/table.ts';
import { planVerdict } from './blocks/verdict.ts';
import { planWindowCard } from './blocks/window-card.ts';
import { planBlankLines, planBullets, planHeading, planParagraph, planSignatures } from './blocks/words.ts';
import { declareStandards } from './declare-standards.ts';
import type { SheetFonts } from './load-fonts.ts';
import { type Logo, openLogo } from './logo.ts';
import type { OpenImage } from './open-image.ts';
import { PageFlow } from './page-flow.ts';
import { pageFrame } from './page-frame.ts';
import { Pen } from './pen.ts';
import type { Desk, Plan } from './plan.ts';
import { planRunningLines } from './running-lines.ts';
import { noImages, openPictures, type SheetImages } from './sheet-images.ts';

export type RenderedSheet = { readonly bytes: Buffer; readonly pages: number };

function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** One line without control characters, which neither a window's title nor the file's own description can hold. */
function titleText(text: string): string {
  return text.replace(/\p{Cc}+/gu, ' ').trim();
}

function makeDocument(sheet: Sheet, title = `${sheet.title}: ${sheet.subject}`): PDFKit.PDFDocument {
  const frame = pageFrame(sheet.paper, sheet.orientation);
  const info = {
    Title: titleText(title),
    Author: titleText(sheet.dealer.name),
    Creator: 'Lotwright',
    CreationDate: new Date(sheet.printedAt),
  };
  const options = {
    size: [frame.pageWidth, frame.pageHeight],
    margin: 0,
    // No font to begin with: the library would else open one of its built-in ones, which hold no Greek and no Cyrillic.
    font: null,
    bufferPages: true,
    pdfVersion: '1.7',
    tagged: true,
    lang: sheet.language,
    displayTitle: true,
    info,
  };
  // The library's types do not know the absence of a font; the library does.
  const doc = new PDFDocument(options as unknown as PDFKit.PDFDocumentOptions);
  // It copies title and author into XML as they are; a dealer called "Smith & Sons" would make that unreadable.
  const endMetadata = doc.endMetadata.bind(doc);
  doc.endMetadata = () => {
    declareStandards(doc);
    doc.info = { ...doc.info, Title: escapeXml(info.Title), Author: escapeXml(info.Author) };
    endMetadata();
  };
  return doc;
}

function planBlock(desk: Desk, block: SheetBlock, title: string): Plan {
  switch (block.kind) {
    case 'masthead':
      return planMasthead(desk, block, title);
    case 'heading':
      return planHeading(desk, block);
    case 'paragraph':
      return planParagraph(desk, block);
    case 'verdict':
      return planVerdict(desk, block);
    case 'facts':
      return planFacts(desk, block);
    case 'figures':
      return planFigures(desk, block);
    case 'window-card':
      return planWindowCard(desk, block);
    case 'letter-head':
      return planLetterHead(desk, block);
    case 'caution':
      return planCautions(desk, [block]);
    case 'bullets':
      return planBullets(desk, block);
    case 'steps':
      return planSteps(desk, block);
    case 'table':
      return planTable(desk, block);
    case 'hold-strip':
      return planHoldStrip(desk, block);
    case 'strip-legend':
      return planStripLegend(desk, block);
    case 'blank-lines':
      return planBlankLines(desk, block);
    case 'signatures':
      return planSignatures(desk, block);
    case 'barcode':
      return planBarcodes(desk, [block]);
    case 'pictures':
      return planPictures(desk, block);
    default:
      return assertNever(block, 'sheet block');
  }
}

/** The blocks that stand together from `start`: a run of cautions, a run of barcodes, else one block. */
function takeTogether(blocks: readonly SheetBlock[], start: number): readonly SheetBlock[] {
  const kind = blocks[start]?.kind;
  if (kind !== 'caution' && kind !== 'barcode') return blocks.slice(start, start + 1);
  let end = start;
  while (blocks[end]?.kind === kind) end += 1;
  return blocks.slice(start, end);
}

function planAll(desk: Desk, sheet: Sheet): readonly Plan[] {
  const plans: Plan[] = [];
  let index = 0;
  while (index < sheet.blocks.length) {
    const together = takeTogether(sheet.blocks, index);
    const cautions = together.filter((block) => block.kind === 'caution');
    const barcodes = together.filter((block) => block.kind === 'barcode');
    if (cautions.length > 0) plans.push(planCautions(desk, cautions));
    else if (barcodes.length > 0) plans.push(planBarcodes(desk, barcodes));
    else for (const block of together) plans.push(planBlock(desk, block, sheet.title));
    index += together.length;
  }
  return plans;
}

function drawAll(desk: Desk, plans: readonly Plan[]): void {
  for (const [index, plan] of plans.entries()) {
    // A heading needs room for itself and for the beginning of what it heads, through any headings between.
    let lead = plan.lead;
    for (let next = index; plans[next]?.leansOnNext === true; next += 1) lead += plans[next + 1]?.lead ?? 0;
    desk.flow.need(Math.min(lead, desk.flow.fullRoom()));
    plan.draw(plans.slice(index + 1).reduce((sum, later) => sum + later.lead, 0));
  }
}

async function collect(doc: PDFKit.PDFDocument): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of doc) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks);
}

/** The PDF of a sheet and how many pages it has. The same sheet with the same images gives the same bytes. */
export async function renderSheet(sheet: Sheet, fonts: SheetFonts, images = noImages): Promise<RenderedSheet> {
  const made = begin(sheet, fonts, images);
  await drawSheet(made, sheet, images);
  return finish(made);
}

/** Sheets one after the other in one file, each with its own paper, running lines and count of pages. Asks for each when it is its turn. */
export async function renderTogether(
  title: string | null,
  sheets: AsyncIterable<Sheet>,
  fonts: SheetFonts,
  images = noImages,
): Promise<RenderedSheet | null> {
  let made: InTheMaking | null = null;
  for await (const sheet of sheets) {
    if (made === null) made = begin(sheet, fonts, images, title ?? undefined);
    else {
      const { pageWidth, pageHeight } = pageFrame(sheet.paper, sheet.orientation);
      // Pages that the flow adds later take these options as well.
      made.doc.options.size = [pageWidth, pageHeight];
      made.doc.addPage();
    }
    await drawSheet(made, sheet, images);
  }
  return made === null ? null : finish(made);
}

type InTheMaking = {
  readonly doc: PDFKit.PDFDocument;
  readonly pen: Pen;
  readonly logo: Logo | null;
  /** Each photograph is in the file once, however many sheets show it. */
  readonly opened: Map<string, OpenImage>;
};

function begin(sheet: Sheet, fonts: SheetFonts, { logo }: SheetImages, title?: string): InTheMaking {
  const doc = makeDocument(sheet, title);
  return { doc, pen: new Pen(doc, fonts), logo: openLogo(doc, logo), opened: new Map() };
}

async function finish({ doc }: InTheMaking): Promise<RenderedSheet> {
  const { count } = doc.bufferedPageRange();
  doc.end();
  return { bytes: await collect(doc), pages: count };
}

/** On the page that is there, and on as many more as it needs. */
async function drawSheet(made: InTheMaking, sheet: Sheet, images: SheetImages): Promise<void> {
  const { doc, pen } = made;
  const pictures = await openPictures(doc, sheet, images, made.opened);
  const first = doc.bufferedPageRange().count - 1;
  const frame = pageFrame(sheet.paper, sheet.orientation);
  const running = planRunningLines(pen, frame, sheet, made.logo);
  const root = doc.struct('Document');
  doc.addStructure(root);
  const flow = new PageFlow(pen, running.bodyTop, running.bodyBottom);
  const desk: Desk = { pen, frame, flow, root, pictures };
  drawAll(desk, planAll(desk, sheet));
  root.end();
  const { start, count } = doc.bufferedPageRange();
  for (let page = first; page < count; page += 1) {
    doc.switchToPage(start + page);
    running.draw(page - first + 1, count - first);
  }
}
