// Says in which way a file is not JSON: a power cut leaves other traces than a stray edit, and a person wants to know which.

export type UnreadableText = {
  readonly kind: 'empty' | 'zero-filled' | 'truncated' | 'not-json';
  readonly reason: string;
};

/** True when the text stops inside a string, an object or a list. */
function endsTooEarly(text: string): boolean {
  let depth = 0;
  let isInString = false;
  for (let at = 0; at < text.length; at++) {
    const character = text[at];
    if (isInString) {
      if (character === '\\') at++;
      else if (character === '"') isInString = false;
    } else if (character === '"') isInString = true;
    else if (character === '{' || character === '[') depth++;
    else if (character === '}' || character === ']') depth--;
  }
  return isInString || depth > 0;
}

/** For bytes that JSON.parse (or the UTF-8 decoder) has refused. `text` is null when they are not UTF-8. */
export function describeUnreadable(bytes: Uint8Array, text: string | null): UnreadableText {
  if (bytes.length === 0 || (text !== null && text.trim() === '')) {
    return { kind: 'empty', reason: 'The file is empty.' };
  }
  if (bytes.at(-1) === 0) {
    const isAll = bytes.every((byte) => byte === 0);
    const what = isAll ? 'holds nothing but zero bytes' : 'ends in zero bytes';
    return { kind: 'zero-filled', reason: `The file ${what}, as a power cut leaves it.` };
  }
  if (text?.trimStart().startsWith('{') && endsTooEarly(text)) {
    return { kind: 'truncated', reason: 'The file is cut off: its end is missing.' };
  }
  return { kind: 'not-json', reason: 'The file is not in the form this program writes (it is not JSON).' };
}
