// What makes a pass phrase or PIN good enough, and the one form in which it is compared. Keeps none, derives nothing from it.

const fewestPhraseCharacters = 12;
const fewestPinDigits = 4;
const mostCharacters = 200;

/** The same phrase typed on two keyboards can differ in its code points: NFKC (Unicode Annex 15), without spaces at the ends. */
export function phraseForm(text: string): string {
  return text.normalize('NFKC').trim();
}

function isMonotonous(form: string): boolean {
  return new Set(form.toLowerCase()).size < Math.min(5, form.length);
}

/**
 * Why this may not guard codes, in a sentence; null when it may. Whoever copies the file can try phrases without waiting, so a PIN is
 * not enough here. Own rule ("common practice, no source").
 */
export function passPhraseProblem(text: string): string | null {
  const form = phraseForm(text);
  const length = [...form].length;
  if (length > mostCharacters) return `At most ${mostCharacters} characters.`;
  if (length < fewestPhraseCharacters)
    return `A pass phrase for codes has at least ${fewestPhraseCharacters} characters: four or five words are easy to keep in mind.`;
  if (isMonotonous(form)) return 'This repeats the same few characters. Choose several different words.';
  return null;
}

export type SignInSecretForm = 'pin' | 'pass-phrase';

export function signInSecretForm(text: string): SignInSecretForm {
  return /^\d+$/.test(phraseForm(text)) ? 'pin' : 'pass-phrase';
}

/** Why this may not be used for signing in, in a sentence; null when it may. A PIN keeps colleagues apart, not thieves out. */
export function signInSecretProblem(text: string): string | null {
  const form = phraseForm(text);
  const length = [...form].length;
  if (length > mostCharacters) return `At most ${mostCharacters} characters.`;
  if (signInSecretForm(form) === 'pin') {
    if (length < fewestPinDigits) return `A PIN has at least ${fewestPinDigits} digits.`;
    const isRun = '01234567890'.includes(form) || '09876543210'.includes(form);
    if (new Set(form).size === 1 || isRun) return 'This PIN is the first that anybody would try. Choose another one.';
    return null;
  }
  return length < 8 ? 'A pass phrase has at least 8 characters; a PIN has digits only.' : null;
}
