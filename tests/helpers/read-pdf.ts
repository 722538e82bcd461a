// Reads a PDF back with programs that have nothing to do with the one that wrote it: the poppler tools and qpdf.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const packageOf = {
  pdftotext: 'poppler-utils',
  pdfinfo: 'poppler-utils',
  pdffonts: 'poppler-utils',
  qpdf: 'qpdf',
} as const;

function run(tool: keyof typeof packageOf, words: readonly string[]): string {
  try {
    return execFileSync(tool, words, { encoding: 'utf8', maxBuffer: 64_000_000, stdio: ['ignore', 'pipe', 'pipe'] });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT')
      throw new Error(
        `This test reads PDF files with ${tool}, which is not installed. On Debian or Ubuntu: apt-get install -y ${packageOf[tool]}`,
      );
    throw error;
  }
}

function withFile<Outcome>(bytes: Uint8Array, read: (path: string) => Outcome): Outcome {
  const folder = mkdtempSync(join(tmpdir(), 'lotwright-pdf-'));
  try {
    const path = join(folder, 'sheet.pdf');
    writeFileSync(path, bytes);
    return read(path);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The text of each page, laid out as on paper. */
export function pageTexts(bytes: Uint8Array): readonly string[] {
  const text = withFile(bytes, (path) => run('pdftotext', ['-layout', '-enc', 'UTF-8', path, '-']));
  return text.split('\f').slice(0, -1);
}

/** All text with every run of white space as one space, for looking up sentences that break over lines. */
export function flatText(bytes: Uint8Array): string {
  const text = withFile(bytes, (path) => run('pdftotext', ['-raw', '-enc', 'UTF-8', path, '-']));
  return text.replace(/\s+/g, ' ');
}

export type PlacedWord = {
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly text: string;
};
export type PlacedWords = {
  readonly pages: readonly { readonly width: number; readonly height: number }[];
  readonly words: readonly PlacedWord[];
};

/** Every word with its place in points, counted from the upper left corner of its page. */
export function placedWords(bytes: Uint8Array): PlacedWords {
  const html = withFile(bytes, (path) => run('pdftotext', ['-bbox', '-enc', 'UTF-8', path, '-']));
  const pages: { width: number; height: number }[] = [];
  const words: PlacedWord[] = [];
  const pattern =
    /<page width="([\d.]+)" height="([\d.]+)">|<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">([^<]*)</g;
  for (const [, width, height, left, top, right, bottom, text = ''] of html.matchAll(pattern)) {
    if (width !== undefined) pages.push({ width: Number(width), height: Number(height) });
    else
      words.push({
        page: pages.length,
        left: Number(left),
        top: Number(top),
        right: Number(right),
        bottom: Number(bottom),
        text,
      });
  }
  return { pages, words };
}

/** What the file says about itself: 'Title', 'Tagged', 'Pages', … */
export function pdfFacts(bytes: Uint8Array): ReadonlyMap<string, string> {
  const text = withFile(bytes, (path) => run('pdfinfo', [path]));
  return new Map(
    text.split('\n').map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()]),
  );
}

/** The structure tree with its text, indented, in reading order. */
export function structureTree(bytes: Uint8Array): string {
  return withFile(bytes, (path) => run('pdfinfo', ['-struct-text', path]));
}

export type FontLine = { readonly name: string; readonly isEmbedded: boolean; readonly hasUnicodeMap: boolean };

export function fontsOf(bytes: Uint8Array): readonly FontLine[] {
  const lines = withFile(bytes, (path) => run('pdffonts', [path]))
    .split('\n')
    .slice(2);
  return lines
    .filter((line) => line !== '')
    .map((line) => {
      const flags = /\s(yes|no)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$/.exec(line);
      return { name: line.split(' ')[0] ?? '', isEmbedded: flags?.[1] === 'yes', hasUnicodeMap: flags?.[3] === 'yes' };
    });
}

/** Throws with what is wrong when the file is not sound. */
export function checkSoundness(bytes: Uint8Array): string {
  return withFile(bytes, (path) => run('qpdf', ['--check', path]));
}

/** The file's objects with streams uncompressed, as text. */
export function plainObjects(bytes: Uint8Array): string {
  return withFile(bytes, (path) =>
    run('qpdf', ['--qdf', '--object-streams=disable', '--newline-before-endstream', path, '-']),
  );
}
