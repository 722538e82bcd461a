// A small log file for finding faults, in the program's own data folder. Holds no codes, prices or names, and no path of
// a person's documents: quoted text and paths are masked before anything is written.
import { appendFileSync, existsSync, mkdirSync, readFileSync, renameSync, statSync } from 'node:fs';
import path from 'node:path';

/** When the file is longer than this at a write, it becomes the first of the earlier ones and a new one begins. */
export const longestLogBytes = 512 * 1024;
/** How many earlier ones are kept: `lotwright.log.1` is the youngest of them. */
export const earlierLogs = 3;

export type Log = {
  readonly info: (topic: string, text: string) => void;
  readonly warn: (topic: string, text: string, error?: unknown) => void;
  readonly error: (topic: string, text: string, error?: unknown) => void;
};

export type LogOptions = {
  readonly file: string;
  /** ISO instant. */
  readonly clock: () => string;
  /** In development: also shows each warning and error where the program was started. */
  readonly echo: boolean;
};

/** Where in our own program: the bundle and the line are worth keeping, the folder is not. */
const ownPlace = /[^\s('"]*[\\/]((?:main|preload)\.cjs:\d+:\d+)/g;
const quoted = /'[^'\n]*'|"[^"\n]*"|`[^`\n]*`/g;
const absolutePath = /(?:[A-Za-z]:[\\/]|\\\\|(?<![\w.])\/)[^\s'"<>|:)]+/g;

/** Takes out of a text what may be somebody's: everything in quotes, and every path but our own bundle's name. */
export function maskForLog(text: string): string {
  return text.replace(quoted, '<text>').replace(ownPlace, '$1').replace(absolutePath, '<path>');
}

function errorText(error: unknown): string {
  if (error === undefined) return '';
  return ` | ${error instanceof Error ? (error.stack ?? `${error.name}: ${error.message}`) : String(error)}`;
}

function makeRoom(file: string): void {
  const length = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  if (length <= longestLogBytes) return;
  for (let age = earlierLogs - 1; age >= 1; age -= 1)
    if (existsSync(`${file}.${age}`)) renameSync(`${file}.${age}`, `${file}.${age + 1}`);
  renameSync(file, `${file}.1`);
}

/** The last lines that were written, oldest first, also across the change to a new file. */
export function readLastLines(file: string, count: number): readonly string[] {
  const linesOf = (place: string) =>
    existsSync(place)
      ? readFileSync(place, 'utf8')
          .split('\n')
          .filter((line) => line !== '')
      : [];
  const lines = linesOf(file);
  return (lines.length < count ? [...linesOf(`${file}.1`), ...lines] : lines).slice(-count);
}

/** Opens the log. Written at once and in place, so that the last lines before a crash are there too. */
export function openLog({ file, clock, echo }: LogOptions): Log {
  function write(level: string, topic: string, text: string, error?: unknown): void {
    const message = maskForLog(`${text}${errorText(error)}`).replace(/\s*\n\s*/g, ' / ');
    if (echo && level !== 'info') console.error(`${level} ${topic}: ${text}${errorText(error)}`);
    try {
      mkdirSync(path.dirname(file), { recursive: true });
      makeRoom(file);
      appendFileSync(file, `${clock()} ${level} ${topic}: ${message}\n`);
    } catch (failure) {
      // A log that cannot be written must not stop the work it would have told about.
      console.error('The log could not be written.', failure);
    }
  }
  return {
    info: (topic, text) => write('info', topic, text),
    warn: (topic, text, error) => write('warn', topic, text, error),
    error: (topic, text, error) => write('error', topic, text, error),
  };
}
