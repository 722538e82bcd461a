// Covers the whole window while the desk is locked: the fleet's name, the list of names, one field. Above any open dialog; nothing closes it
// but signing in.
import './sign-in.css';
import { useEffect, useRef, useState } from 'react';
import type { Desk } from '../../../app/contract/views.ts';
import { askDesk } from '../../state/desk-store.ts';
import { chooseFleet } from '../../state/other-fleet.ts';
import { bringBackKeys } from '../../state/sign-in-store.ts';
import { signInText as text } from '../../text/sign-in.ts';
import { Button } from '../../ui/button.tsx';
import { SignInForm } from './sign-in-form.tsx';

function Trouble({ sentence }: { readonly sentence: string }) {
  const [refusal, setRefusal] = useState('');
  return (
    <div role="alert" className="sign-in-trouble">
      <p>{sentence}</p>
      <p>{text.troubleWayOut}</p>
      {refusal !== '' && <p>{refusal}</p>}
      <div className="sign-in-foot">
        <Button onPress={() => void chooseFleet()}>{text.otherFleet}</Button>
        <Button kind="main" onPress={async () => setRefusal((await bringBackKeys()) ?? '')}>
          {text.bringBack}
        </Button>
      </div>
    </div>
  );
}

export function LockedCover({ desk, hasDraftsBelow }: { readonly desk: Desk; readonly hasDraftsBelow: boolean }) {
  const element = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = element.current;
    if (dialog !== null && !dialog.open) dialog.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={element}
      className="locked-cover"
      aria-label={text.locked}
      aria-describedby="locked-purpose"
      onCancel={(event) => event.preventDefault()}
      // Escape pressed twice closes a dialog whatever its cancelling says.
      onClose={() => element.current?.isConnected && element.current.showModal()}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <main className="locked-sheet">
        <p className="locked-fleet">{desk.fleetName}</p>
        <h1>{text.locked}</h1>
        {desk.signIn.trouble === null && (
          <p id="locked-purpose" className="quiet">
            {text.purpose}
          </p>
        )}
        {hasDraftsBelow && <p className="quiet">{text.lockedHint}</p>}
        {desk.readOnlyReason !== null && (
          <p className="quiet">
            {text.readOnly(desk.readOnlyReason)}{' '}
            {desk.canTakeOver && (
              <Button kind="quiet" onPress={() => void askDesk('fleet:take-over', {})}>
                {text.takeOver}
              </Button>
            )}
          </p>
        )}
        {desk.signIn.trouble === null ? (
          <SignInForm people={desk.people} firstId={desk.person.id} />
        ) : (
          <Trouble sentence={desk.signIn.trouble} />
        )}
      </main>
    </dialog>
  );
}
