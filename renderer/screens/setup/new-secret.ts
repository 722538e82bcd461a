// Two fields in which a new secret is typed twice, as state: what stands against them before the main process is asked. Pure but for state.
import { useState } from 'react';
import { signInSecretProblem } from '../../../app/domain/people/pass-phrase.ts';
import { signInText as text } from '../../text/sign-in.ts';

export function useNewSecret() {
  const [secret, setSecret] = useState('');
  const [again, setAgain] = useState('');
  const forget = () => {
    setSecret('');
    setAgain('');
  };
  /** Field → sentence; null: it may be asked for. */
  const problems = (field: string): Readonly<Record<string, string>> | null => {
    const weak = signInSecretProblem(secret);
    if (weak !== null) return { [field]: weak };
    return secret === again ? null : { again: text.notTheSame };
  };
  return { secret, setSecret, again, setAgain, forget, problems };
}
