// A manager gives a person the first PIN or pass phrase. Typed twice, kept nowhere in the page.
import { useState } from 'react';
import type { Name } from '../../../app/contract/sign-in-view.ts';
import { notify } from '../../state/notice-store.ts';
import { giveSecret, type SecretProblems } from '../../state/sign-in-store.ts';
import { commonText } from '../../text/common.ts';
import { signInText as text } from '../../text/sign-in.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { Form } from '../../ui/form.tsx';
import { SecretField } from '../../ui/secret-field.tsx';
import { useNewSecret } from './new-secret.ts';

export function GiveSecretDialog({ person, onClose }: { readonly person: Name; readonly onClose: () => void }) {
  const typed = useNewSecret();
  const [problems, setProblems] = useState<SecretProblems>(null);
  const submit = async () => {
    const found = typed.problems('secret') ?? (await giveSecret(person.id, typed.secret));
    setProblems(found);
    if (found !== null) return;
    notify('done', text.given(person.name));
    onClose();
  };
  const label = text.giveTo(person.name);
  return (
    <Dialog title={label} onClose={onClose} footer={null}>
      <Form label={label} className="secret-form" onSubmit={() => void submit()}>
        <SecretField
          label={text.newSecret}
          hint={text.newSecretHint}
          value={typed.secret}
          onChange={typed.setSecret}
          problem={problems?.secret}
        />
        <SecretField label={text.again} value={typed.again} onChange={typed.setAgain} problem={problems?.again} />
        <div className="secret-foot">
          <Button onPress={onClose}>{commonText.cancel}</Button>
          <Button type="submit" kind="main">
            {text.keep}
          </Button>
        </div>
      </Form>
    </Dialog>
  );
}
