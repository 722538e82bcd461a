// Breaks text into lines that fit a width. Pure: how wide a piece is, the caller says. Nothing is ever cut off. A line that ends between
// words keeps a space at its end, so that whoever reads the lines one after the other does not join two words.

type Piece = { readonly text: string; readonly spaces: string };

/** A character with the marks that sit on it; marks are never parted from their letter. */
const characterWithMarks = /\P{M}\p{M}*|\p{M}+/gu;

/** Words, also split after hyphens and slashes, each with the spaces before it. No-break spaces hold words together. */
function pieces(line: string): Piece[] {
  return [...line.matchAll(/([ \t]*)([^ \t]+)/g)].flatMap(([, spaces = '', word = '']) =>
    word.split(/(?<=[-/–—](?!$))/).map((text, index) => ({ text, spaces: index === 0 ? spaces : '' })),
  );
}

/** The longest beginning of the word that fits; at least one character, or nothing would ever get smaller. */
function splitWord(word: string, width: number, measure: (text: string) => number): readonly [string, string] {
  const characters = word.match(characterWithMarks) ?? [word];
  let low = 1;
  let high = characters.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (measure(characters.slice(0, middle).join('')) <= width) low = middle;
    else high = middle - 1;
  }
  return [characters.slice(0, low).join(''), characters.slice(low).join('')];
}

function breakOneLine(line: string, width: number, measure: (text: string) => number): string[] {
  const lines: string[] = [];
  let current = '';
  for (const piece of pieces(line)) {
    const extended = current === '' ? piece.text : current + piece.spaces + piece.text;
    if (measure(extended) <= width) {
      current = extended;
      continue;
    }
    if (current !== '') lines.push(piece.spaces === '' ? current : `${current} `);
    let rest = piece.text;
    while (measure(rest) > width) {
      const [head, tail] = splitWord(rest, width, measure);
      if (tail === '') break;
      lines.push(head);
      rest = tail;
    }
    current = rest;
  }
  lines.push(current === '' ? '' : `${current} `);
  return lines;
}

/** Lines in order, each measured without the space at its end; none for text that is empty. Line breaks in the text are kept, several in a row as one empty line. */
export function breakLines(text: string, width: number, measure: (text: string) => number): readonly string[] {
  if (text.trim() === '') return [];
  return text
    .replace(/\r\n?/g, '\n')
    .trim()
    .replace(/\n{3,}/g, '\n\n')
    .split('\n')
    .flatMap((line) => breakOneLine(line.trimEnd(), width, measure));
}
