// Pass phrases and recovery keys as they are typed for the vault, with one button. What was typed is forgotten as soon as it was taken.
import './secrets.css';
import './vault.css';
import { type ReactNode, useState } from 'react';
import type { AppError } from '../../../app/contract/app-error.ts';
import type { Result } from '../../../app/domain/shared/result.ts';
import { vaultSetupText as text, vaultSentence } from '../../text/vault.ts';
import { Button } from '../../ui/button.tsx';
import { Form } from '../../ui/form.tsx';
import { SecretField } from '../../ui/secret-field.tsx';

export type VaultSecretFormProps = {
  readonly title: string;
  readonly hint?: string;
  /** Labels; `text.again` repeats the one before it. */
  readonly fields: readonly string[];
  readonly button: string;
  readonly onSubmit: (typed: readonly string[]) => Promise<Result<unknown, AppError>>;
  /** Above the fields. */
  readonly children?: ReactNode;
};

export function VaultSecretForm({ title, hint, fields, button, onSubmit, children }: VaultSecretFormProps) {
  const [typed, setTyped] = useState<readonly string[]>(fields.map(() => ''));
  const [problem, setProblem] = useState<{ readonly at: number; readonly sentence: string } | null>(null);
  const submit = async () => {
    const again = fields.indexOf(text.again);
    if (again > 0 && typed[again] !== typed[again - 1]) return setProblem({ at: again, sentence: text.notSame });
    const answer = await onSubmit(typed);
    setProblem(answer.ok ? null : { at: 0, sentence: vaultSentence(answer.error) });
    if (answer.ok) setTyped(fields.map(() => ''));
  };
  return (
    <Form label={title} className="secret-form vault-form" onSubmit={() => void submit()}>
      <h3 className="vault-head">{title}</h3>
      {hint !== undefined && <p className="setup-hint">{hint}</p>}
      {children}
      {fields.map((label, index) => (
        <SecretField
          key={label}
          label={label}
          value={typed[index] ?? ''}
          onChange={(value) => setTyped(typed.map((before, at) => (at === index ? value : before)))}
          problem={problem?.at === index ? problem.sentence : undefined}
          mostCharacters={400}
        />
      ))}
      {fields.length > 0 && <Button type="submit">{button}</Button>}
    </Form>
  );
}
