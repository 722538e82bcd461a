// Who has a PIN or pass phrase: the manager gives the first one and takes it away.
import './secrets.css';
import { useId, useState } from 'react';
import type { Name } from '../../../app/contract/sign-in-view.ts';
import type { Desk } from '../../../app/contract/views.ts';
import { notify } from '../../state/notice-store.ts';
import { askToSignIn, takeSecret } from '../../state/sign-in-store.ts';
import { commonText, roleNames } from '../../text/common.ts';
import { signInText as text } from '../../text/sign-in.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { GiveSecretDialog } from './give-secret-dialog.tsx';

function TakeDialog({ person, onClose }: { readonly person: Name; readonly onClose: () => void }) {
  const take = async () => {
    const isTaken = await takeSecret(person.id);
    onClose();
    if (isTaken) notify('done', text.taken(person.name));
  };
  return (
    <Dialog
      title={text.takeTitle(person.name)}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{commonText.cancel}</Button>
          <Button kind="danger" onPress={() => void take()}>
            {text.take}
          </Button>
        </>
      }
    >
      <p>{text.takeSentence(person.name)}</p>
    </Dialog>
  );
}

export function SecretsSection({ desk }: { readonly desk: Desk }) {
  const headId = useId();
  const [asked, setAsked] = useState<{ readonly person: Name; readonly what: 'give' | 'take' } | null>(null);
  const { managerHasSecret, signedInId, trouble } = desk.signIn;
  const mustSignIn = managerHasSecret && signedInId === null;
  const whyNot = desk.readOnlyReason ?? trouble ?? (mustSignIn ? text.signInFirst : null);
  const close = () => setAsked(null);
  return (
    <section aria-labelledby={headId} className="setup-section">
      <SectionHead id={headId} title={text.secrets} />
      <p className="setup-hint">{text.secretsHint}</p>
      {trouble !== null && (
        <p className="setup-hint is-below-nought" role="alert">
          {trouble} {text.troubleWayOut}
        </p>
      )}
      {mustSignIn && (
        <p className="setup-hint">
          {text.signInFirst} <Button onPress={askToSignIn}>{text.signIn}</Button>
        </p>
      )}
      <table className="setup-table">
        <thead>
          <tr>
            <th scope="col">{text.name}</th>
            <th scope="col">{text.role}</th>
            <th scope="col">{text.signsInWith}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {desk.people
            .filter((person) => person.isActive)
            .map((person) => (
              <tr key={person.id}>
                <th scope="row" className="secret-name">
                  {person.name}
                </th>
                <td>{roleNames[person.role]}</td>
                <td>{person.secretForm === null ? text.nothingYet : text.forms[person.secretForm]}</td>
                <td className="setup-last">
                  <Button
                    kind="quiet"
                    label={person.secretForm === null ? text.giveOneTo(person.name) : text.takeFrom(person.name)}
                    isDisabled={whyNot !== null}
                    whyDisabled={whyNot ?? undefined}
                    onPress={() => setAsked({ person, what: person.secretForm === null ? 'give' : 'take' })}
                  >
                    {person.secretForm === null ? text.give : text.take}
                  </Button>
                </td>
              </tr>
            ))}
        </tbody>
      </table>
      {asked?.what === 'give' && <GiveSecretDialog person={asked.person} onClose={close} />}
      {asked?.what === 'take' && <TakeDialog person={asked.person} onClose={close} />}
    </section>
  );
}
