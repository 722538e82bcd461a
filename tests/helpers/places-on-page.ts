// Where the words of a printed sheet stand: outside the page's margins, or one over the other.
import { millimetres } from '../../app/printing/page-frame.ts';
import type { PlacedWord, PlacedWords } from './read-pdf.ts';

const margins = { side: millimetres(16) - 0.5, end: millimetres(9) };

/** The words that reach out of the margins, with their page. */
export function wordsOutside({ pages, words }: PlacedWords): readonly string[] {
  return words
    .filter(({ page, left, right, top, bottom }) => {
      const { width, height } = pages[page - 1] ?? { width: 0, height: 0 };
      return left < margins.side || right > width - margins.side || top < margins.end || bottom > height - margins.end;
    })
    .map(({ page, text }) => `page ${page}: ${text}`);
}

/**
 * The inked core of a word: from the top of a capital to the line it stands on. The box that poppler gives is that of the whole typeface
 * (1.02 em up, 0.4 em down), and those of lines set close always overlap.
 */
function core({ left, right, top, bottom }: PlacedWord) {
  const height = bottom - top;
  return { left: left + 0.3, right: right - 0.3, top: top + height * 0.28, bottom: top + height * 0.71 };
}

/** Pairs of words that lie over each other. */
export function wordsOverlapping({ words }: PlacedWords): readonly string[] {
  const found: string[] = [];
  const pages = new Map<number, { readonly text: string; readonly box: ReturnType<typeof core> }[]>();
  for (const word of words) {
    const before = pages.get(word.page) ?? [];
    const box = core(word);
    for (const other of before) {
      const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
      const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
      if (across > 0.2 && down > 0.2) found.push(`page ${word.page}: ${other.text} and ${word.text}`);
    }
    before.push({ text: word.text, box });
    pages.set(word.page, before);
  }
  return found;
}
