// Whoever is at the desk changes their own PIN or pass phrase, the present one first. For every role.
import './secrets.css';
import { useId, useState } from 'react';
import type { Desk } from '../../../app/contract/views.ts';
import { notify } from '../../state/notice-store.ts';
import { changeSecret, type SecretProblems } from '../../state/sign-in-store.ts';
import { signInText as text } from '../../text/sign-in.ts';
import { Button } from '../../ui/button.tsx';
import { Form } from '../../ui/form.tsx';
import { SecretField } from '../../ui/secret-field.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { useNewSecret } from './new-secret.ts';

export function OwnSecretSection({ desk }: { readonly desk: Desk }) {
  const headId = useId();
  const [old, setOld] = useState('');
  const typed = useNewSecret();
  const [problems, setProblems] = useState<SecretProblems>(null);
  const { id, name } = desk.person;
  if (!desk.people.some((person) => person.id === id && person.secretForm !== null)) return null;
  const submit = async () => {
    const found = typed.problems('newSecret') ?? (await changeSecret(old, typed.secret));
    setProblems(found);
    if (found !== null) return;
    setOld('');
    typed.forget();
    notify('done', text.changed);
  };
  return (
    <section aria-labelledby={headId} className="setup-section">
      <SectionHead id={headId} title={text.own} />
      <p className="setup-hint">{text.ownHint(name)}</p>
      <Form label={text.own} className="secret-form" onSubmit={() => void submit()}>
        <SecretField label={text.old} value={old} onChange={setOld} problem={problems?.oldSecret ?? problems?.secret} />
        <SecretField
          label={text.newSecret}
          hint={text.newSecretHint}
          value={typed.secret}
          onChange={typed.setSecret}
          problem={problems?.newSecret}
        />
        <SecretField label={text.again} value={typed.again} onChange={typed.setAgain} problem={problems?.again} />
        <Button type="submit">{text.change}</Button>
      </Form>
    </section>
  );
}
