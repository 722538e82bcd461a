// Who is at the desk, at the right of the top bar: a list to pick from where nobody has to sign in, else a name with Switch and Lock.
import type { Desk } from '../../../app/contract/views.ts';
import { askDesk } from '../../state/desk-store.ts';
import { askToSignIn, lockNow } from '../../state/sign-in-store.ts';
import { roleNames } from '../../text/common.ts';
import { frameText } from '../../text/frame.ts';
import { signInText as text } from '../../text/sign-in.ts';
import { Button } from '../../ui/button.tsx';

function PersonSelect({ desk }: { readonly desk: Desk }) {
  const people = desk.people.filter((person) => person.isActive || person.id === desk.person.id);
  return (
    <label className="bar-field">
      <span>{frameText.atTheDesk}</span>
      <select
        value={desk.person.id}
        onChange={(event) => void askDesk('desk:set-person', { personId: event.currentTarget.value })}
      >
        {people.map(({ id, name, role }) => (
          <option key={id} value={id}>
            {`${name}, ${roleNames[role]}`}
          </option>
        ))}
      </select>
    </label>
  );
}

export function AtTheDesk({ desk }: { readonly desk: Desk }) {
  const { wantsSignIn, signedInId, adds } = desk.signIn;
  const { id, name, role } = desk.person;
  const hasSecret = desk.people.some((person) => person.id === id && person.secretForm !== null);
  return (
    <div className="at-the-desk">
      {wantsSignIn ? (
        <>
          <span className="bar-field" title={frameText.atTheDesk}>{`${name}, ${roleNames[role]}`}</span>
          <Button kind="quiet" tip={text.switchTip} onPress={askToSignIn}>
            {text.switchTo}
          </Button>
        </>
      ) : (
        <PersonSelect desk={desk} />
      )}
      {signedInId === null && adds.length > 0 && hasSecret && (
        <Button kind="quiet" tip={text.adds(adds)} onPress={askToSignIn}>
          {text.signIn}
        </Button>
      )}
      {signedInId !== null && (
        <Button
          kind="quiet"
          shortcut="Ctrl+L"
          tip={wantsSignIn ? text.lockTip : text.leaveTip}
          onPress={() => void lockNow()}
        >
          {wantsSignIn ? text.lock : text.leave}
        </Button>
      )}
    </div>
  );
}
