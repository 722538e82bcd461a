// Reads the sources for the tests of how the house is built: which files there are, what each imports, what stands in it.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

export const projectFolder = path.join(import.meta.dirname, '..', '..');

const notSources = new Set(['app/built', 'node_modules', '.git', '.cache']);

/** Paths below a folder of the project, with forward slashes, from the project's folder on. */
export function filesBelow(folder: string, pattern: RegExp): string[] {
  if (notSources.has(folder)) return [];
  const entries = readdirSync(path.join(projectFolder, folder), { withFileTypes: true });
  return entries
    .flatMap((entry) => {
      const place = `${folder}/${entry.name}`;
      if (entry.isDirectory()) return filesBelow(place, pattern);
      return pattern.test(entry.name) ? [place] : [];
    })
    .sort();
}

export function readSource(file: string): string {
  return readFileSync(path.join(projectFolder, file), 'utf8');
}

/** Program sources in TypeScript, without the tools and configurations that only build and start it. */
export function programSources(): string[] {
  const files = [...filesBelow('app', /\.tsx?$/), ...filesBelow('renderer', /\.tsx?$/)];
  return files.filter((file) => !file.startsWith('app/dev/') && !file.endsWith('.config.ts'));
}

export type Import = {
  readonly file: string;
  readonly line: number;
  /** As it is written. */
  readonly specifier: string;
  /** Project path of a relative import; null for a package. */
  readonly target: string | null;
  /** True when it vanishes at build time. */
  readonly isTypeOnly: boolean;
};

const importForms = [
  /^[ \t]*(import|export)\s+(type\s+)?(?:[\w*{}\s,$]+?\s+from\s+)?(['"])([^'"\n]+)\3/gm,
  /\b(import|require)(\s*)\(\s*(['"])([^'"\n]+)\3/g,
] as const;

/** Blanks comments out, so that a sentence about an import is none. Keeps the lines. */
function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm, (comment) => comment.replace(/[^\n]/g, ' '));
}

export function importsOf(file: string, text: string): Import[] {
  const code = withoutComments(text);
  return importForms.flatMap((form) =>
    [...code.matchAll(form)].map((match) => {
      const specifier = match[4] ?? '';
      const start = match.index + (match[0].length - match[0].trimStart().length);
      return {
        file,
        line: code.slice(0, start).split('\n').length,
        specifier,
        target: specifier.startsWith('.') ? path.posix.join(path.posix.dirname(file), specifier) : null,
        isTypeOnly: match[2]?.trim() === 'type',
      };
    }),
  );
}
