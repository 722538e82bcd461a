// The words of a sheet in the order of its blocks, as somebody who listens to the printed sheet should hear them.
import type { Sheet, SheetBlock } from '../../app/domain/sheets/sheet.ts';

function ofBlock(block: SheetBlock, title: string): readonly string[] {
  switch (block.kind) {
    case 'masthead':
      return [title, block.number, block.name, ...block.tags.flatMap(({ label, value }) => [label, value])];
    case 'heading':
    case 'paragraph':
      return [block.text];
    case 'verdict':
      return [block.text, ...block.reasons];
    case 'facts':
      return block.rows.flatMap(({ label, value }) => [label, value]);
    case 'figures':
      return block.items.flatMap(({ label, value }) => [label, value]);
    case 'window-card': {
      const { number, name, lines, verdict, price, told, more } = block;
      return [
        number,
        name,
        ...lines,
        verdict,
        price,
        ...(told.items.length > 0 ? [told.title] : []),
        ...told.items,
        more,
      ];
    }
    case 'letter-head':
      return [block.addressee, ...block.rows.flatMap(({ label, value }) => [label, value]), block.about];
    case 'caution':
      return [block.title, block.text];
    case 'bullets':
      return block.items;
    case 'steps':
      return block.items.flatMap(({ text, detail, marks, needs }) => [
        text,
        detail,
        ...marks.map((mark) => mark.text),
        ...(needs ?? []).map((need) => need.text),
      ]);
    case 'table':
      return block.rows.length === 0
        ? [block.whenEmpty]
        : [...block.columns.map((column) => column.title), ...block.rows.flat().map((cell) => cell.text)];
    case 'hold-strip':
    case 'strip-legend':
      return [];
    case 'blank-lines':
      return [block.label];
    case 'signatures':
      return block.labels;
    case 'barcode':
      return [`${block.label} ${block.value}`];
    case 'pictures':
      return block.items.map(({ caption }) => caption);
  }
}

/** Without white space, in composed form, because lines break where they like. */
export function bare(text: string): string {
  return text.normalize('NFKC').replace(/\s+/g, '');
}

export function wordsInOrder(sheet: Sheet): readonly string[] {
  return sheet.blocks
    .flatMap((block) => ofBlock(block, sheet.title))
    .map(bare)
    .filter((words) => words !== '');
}
