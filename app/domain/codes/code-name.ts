// What a kind of code and a request are called, by the shop's own names. Never says anything about a code itself.
import { type CodeKindFacts, shippedCodeKinds } from './code-kinds.ts';

export type NamedKinds = readonly Pick<CodeKindFacts, 'id' | 'name'>[];

const nameWithout = 'unlock code';

/** As a word inside a sentence: its first letter small, unless the name begins with an abbreviation. */
function inSentence(name: string): string {
  return /^\p{Lu}(?!\p{Lu})/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}

/** The shop's facts about the kind; null when the shop does not know it any more. */
export function codeKindOf<Kind extends { readonly id: string }>(kinds: readonly Kind[], id: string): Kind | null {
  return kinds.find((kind) => kind.id === id) ?? null;
}

/** 'Radio code', for a column; where the shop knows the kind no more, the name that it was shipped with, or 'Unlock code'. */
export function codeKindName(id: string, kinds: NamedKinds = shippedCodeKinds): string {
  return (codeKindOf(kinds, id) ?? codeKindOf(shippedCodeKinds, id))?.name ?? 'Unlock code';
}

/** 'radio code', for a sentence. */
export function codeKindWords(id: string, kinds: NamedKinds = shippedCodeKinds): string {
  return inSentence((codeKindOf(kinds, id) ?? codeKindOf(shippedCodeKinds, id))?.name ?? nameWithout);
}

/** 'immobiliser code for Body control module'; 'radio code' where the unit says nothing more. */
export function codeName(
  { kind, module }: { readonly kind: string; readonly module: string },
  kinds: NamedKinds = shippedCodeKinds,
): string {
  const words = codeKindWords(kind, kinds);
  return module === '' || words.toLowerCase().startsWith(module.toLowerCase()) ? words : `${words} for ${module}`;
}
