// Every input that carries a secret is declared in one place, and what fails on it is told without a word of what was typed.
import { describe, expect, it } from 'vitest';
import { channels } from '../../app/contract/channels.ts';
import {
  carriesSecret,
  problemsWithoutWords,
  secretInputs,
  secretTextSchema,
  withoutWords,
} from '../../app/contract/secret-inputs.ts';

const fieldsOf = (input: unknown) => Object.entries((input as { shape?: Record<string, unknown> }).shape ?? {});

describe('inputs with secrets', () => {
  it('are those that the contract types so, no more and no fewer', () => {
    const typed = Object.entries(channels).flatMap(([name, { input }]) => {
      const fields = fieldsOf(input).filter(([, schema]) => schema === secretTextSchema);
      return fields.length === 0 ? [] : [[name, fields.map(([field]) => field)] as const];
    });
    expect(Object.fromEntries(typed)).toEqual(secretInputs);
    expect(typed.length).toBeGreaterThan(4);
  });

  it('hide behind no other name', () => {
    const suspicious = /phrase|pin$|secret|password|recoverykey|^code$|^value$/i;
    const fields = Object.entries(channels).flatMap(([name, { input }]) =>
      fieldsOf(input)
        .filter(([field]) => suspicious.test(field) && !secretInputs[name]?.includes(field))
        .map(([field]) => `${name} ${field}`),
    );
    expect(fields).toEqual([]);
  });
});

describe('a failed call that carried a secret', () => {
  it('tells its kind and place, and none of its words', () => {
    const told = withoutWords(new RangeError('the value 48213 is wrong'));
    expect(`${told.name} ${told.message} ${told.stack}`).not.toContain('48213');
    expect(told.name).toBe('RangeError');
    expect(told.stack).toContain('secret-inputs.test.ts');
    expect(withoutWords('48213').stack).not.toContain('48213');
  });

  it('tells the fields, and only sentences of its own', () => {
    const { input } = channels['vault:put-code'];
    const judged = input.safeParse({ vehicleId: 'x', value: '', 'the code 48213': 1 });
    if (judged.success) throw new Error('This was to be refused.');
    const problems = problemsWithoutWords(judged.error);
    expect(JSON.stringify(problems)).not.toContain('48213');
    expect(problems).toContainEqual({ field: 'value', sentence: 'Type it here.' });
    expect(carriesSecret('vault:put-code')).toBe(true);
    expect(carriesSecret('vault:look')).toBe(false);
  });
});
