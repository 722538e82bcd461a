// What was typed and not saved: survives a refusal and a record read again underneath, and says at which field something is wrong.
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { partDraftSchema } from '../../../app/domain/parts/part.ts';
import { labourDraftSchema } from '../../../app/domain/work/labour.ts';
import {
  draftValue,
  type EditDraft,
  emptyDraft,
  isTouched,
  schemaProblems,
  sentenceAt,
  sentencesForWhole,
  typeInto,
} from '../../../renderer/state/edit-draft.ts';

type Small = { what: string; priceCents: number | null; decision: { reason: string } | null };
const untouched = emptyDraft as EditDraft<Small>;
const base: Small = { what: 'Body module', priceCents: null, decision: null };

describe('a draft over a fact', () => {
  it('shows the kept fact until something is typed', () => {
    expect(draftValue(base, untouched)).toEqual(base);
    expect(isTouched(base, untouched)).toBe(false);
  });

  it('keeps what was typed when the fact underneath is read again, and takes over the rest', () => {
    const draft = typeInto(untouched, { priceCents: 4200 });
    const readAgain = { ...base, what: 'Body module, rear' };
    expect(draftValue(readAgain, draft)).toEqual({ what: 'Body module, rear', priceCents: 4200, decision: null });
  });

  it('is untouched again when the old value is typed back', () => {
    const changed = typeInto(untouched, { what: 'Something else' });
    expect(isTouched(base, changed)).toBe(true);
    expect(isTouched(base, typeInto(changed, { what: 'Body module' }))).toBe(false);
  });

  it('compares nested values by what they say', () => {
    const withReason = { ...base, decision: { reason: 'old' } };
    expect(isTouched(withReason, typeInto(untouched, { decision: { reason: 'old' } }))).toBe(false);
    expect(isTouched(withReason, typeInto(untouched, { decision: { reason: 'new' } }))).toBe(true);
  });

  it('takes back the sentence at a field that is typed in, and only that one', () => {
    const refused: EditDraft<Small> = {
      edits: {},
      problems: [
        { field: 'decision.reason', sentence: 'Say why.' },
        { field: 'what', sentence: 'Write something here.' },
      ],
    };
    const typed = typeInto(refused, { decision: { reason: 'cosmetic' } });
    expect(sentenceAt(typed.problems, 'decision.reason')).toBeNull();
    expect(sentenceAt(typed.problems, 'what')).toBe('Write something here.');
  });
});

function problemsUnder(schema: z.ZodType, value: unknown) {
  const parsed = schema.safeParse(value);
  return parsed.success ? [] : schemaProblems(parsed.error);
}

describe('problems of a draft', () => {
  it('are found at a field and inside it, but not at one whose name only begins alike', () => {
    const problems = [{ field: 'modules.2.codes.0.code', sentence: 'Not a trouble code.' }];
    expect(sentenceAt(problems, 'modules.2')).toBe('Not a trouble code.');
    expect(sentenceAt(problems, 'modules.20')).toBeNull();
    expect(sentenceAt(problems, 'mod')).toBeNull();
  });

  it('belong to the whole when no field of the fact carries them', () => {
    const problems = [
      { field: '', sentence: 'Somebody removed it.' },
      { field: 'elsewhere.x', sentence: 'A field that this form does not have.' },
      { field: 'what', sentence: 'At its field.' },
    ];
    expect(sentencesForWhole(problems, base)).toEqual([
      'Somebody removed it.',
      'A field that this form does not have.',
    ]);
  });

  it('speak to people, never in the words of the schema library', () => {
    const sentences = [
      ...problemsUnder(partDraftSchema, { id: 'part-0001', quantity: 0, what: '', priceCents: -1 }),
      ...problemsUnder(labourDraftSchema, { id: 'work-0001', minutes: null, what: 'x', area: 'nothing' }),
    ];
    for (const { sentence } of sentences) expect(sentence).not.toMatch(/expected|received|Invalid|Too small|undefined/);
    expect(sentenceAt(sentences, 'quantity')).toBe('At least 1.');
    expect(sentenceAt(sentences, 'minutes')).toBe('Fill this in.');
    expect(sentenceAt(sentences, 'what')).toBe('Write something here.');
  });

  it('are none for a fact that is complete', () => {
    const labour = {
      id: 'work-0001',
      workedOn: '2026-03-04',
      person: 'rosa-lind',
      minutes: 45,
      what: 'Read the old module',
      area: 'control-module',
      faultId: null,
    };
    expect(problemsUnder(labourDraftSchema, labour)).toEqual([]);
  });
});
