// Bounded text as people type it: trimmed, no control characters. Keeps one paste from making a record unusable.
import { z } from 'zod';

// biome-ignore lint/suspicious/noControlCharactersInRegex: finding control characters is the point.
const controlCharacters = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/;

/** One line, at most `maximum` characters; may be empty. */
export function lineSchema(maximum = 120) {
  return z
    .string()
    .max(maximum, `At most ${maximum} characters.`)
    .refine((text) => !controlCharacters.test(text) && !/[\r\n]/.test(text), 'One line of plain text.');
}

/** One line that says something. */
export function filledLineSchema(maximum = 120) {
  return lineSchema(maximum).refine((text) => text.trim() !== '', 'Write something here.');
}

/** Several lines, at most `maximum` characters; may be empty. */
export function paragraphSchema(maximum = 4000) {
  return z
    .string()
    .max(maximum, `At most ${maximum} characters.`)
    .refine((text) => !controlCharacters.test(text), 'Plain text only.');
}

export function plural(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}
