// A list of names like the first column of a ledger, and one field. What is typed leaves this component only for the main process.
import './sign-in.css';
import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import type { Name } from '../../../app/contract/sign-in-view.ts';
import { waitSentence } from '../../../app/domain/people/try-delay.ts';
import { signIn } from '../../state/sign-in-store.ts';
import { roleNames } from '../../text/common.ts';
import { signInText as text } from '../../text/sign-in.ts';
import { Button } from '../../ui/button.tsx';
import { Form } from '../../ui/form.tsx';
import { SecretField } from '../../ui/secret-field.tsx';
import { useWait } from './use-wait.ts';

function NameRow({
  person,
  group,
  isChosen,
  onChoose,
  onGoOn,
}: {
  readonly person: Name;
  readonly group: string;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
  readonly onGoOn: () => void;
}) {
  const { name, role, secretForm } = person;
  return (
    <label className={`name-row${isChosen ? ' is-chosen' : ''}`}>
      <input
        type="radio"
        name={group}
        checked={isChosen}
        onChange={onChoose}
        onClick={(event) => {
          // By pointer; the arrow keys of a list of radio buttons make clicks without one.
          if (event.detail > 0) onGoOn();
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.preventDefault();
          // A letter or digit is the beginning of the secret: it goes where the focus is by the time it is typed.
          const isTyped =
            event.key.length === 1 && event.key !== ' ' && !event.ctrlKey && !event.altKey && !event.metaKey;
          if (event.key === 'Enter' || isTyped) onGoOn();
        }}
      />
      <span className="name-of">{name}</span>
      <span className="quiet">{roleNames[role]}</span>
      <span className="quiet">{secretForm === null ? text.nothingYet : text.forms[secretForm]}</span>
    </label>
  );
}

export function SignInForm({
  people,
  firstId,
  onCancel,
}: {
  readonly people: readonly Name[];
  /** The name that is picked at first: who was at the desk last. */
  readonly firstId: string;
  readonly onCancel?: () => void;
}) {
  const group = useId();
  const [chosenId, setChosenId] = useState(firstId);
  const [secret, setSecret] = useState('');
  const [refusal, setRefusal] = useState('');
  const [isTrying, setIsTrying] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  const chosen = people.find(({ id }) => id === chosenId) ?? people[0];
  const { left, askAgain } = useWait(chosen?.id ?? null);
  useEffect(() => {
    // Read by a dialog that opens around this only now.
    field.current?.setAttribute('autofocus', '');
    field.current?.focus();
  }, []);
  if (chosen === undefined) return <p>{text.nobodyActive}</p>;
  const choose = (id: string) => {
    setChosenId(id);
    setSecret('');
    setRefusal('');
  };
  const step = (event: KeyboardEvent) => {
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
    event.preventDefault();
    const by = event.key === 'ArrowDown' ? 1 : -1;
    const next = people[(people.indexOf(chosen) + by + people.length) % people.length];
    if (next !== undefined) choose(next.id);
  };
  const submit = async () => {
    if (isTrying || left > 0 || chosen.secretForm === null) return;
    if (secret === '') {
      setRefusal(text.typeIt);
      return;
    }
    setIsTrying(true);
    setRefusal('');
    const sentence = await signIn(chosen.id, secret);
    setSecret('');
    setIsTrying(false);
    if (sentence === null) return;
    setRefusal(sentence);
    await askAgain();
    field.current?.focus();
  };
  // The refusal of the main process ends with the wait as it was then; here it goes on counting.
  const ownWords = refusal.replace(/ ?Wait [^.]* before the next try\.$/, '');
  const problem = left > 0 ? `${ownWords} ${waitSentence(left)}`.trim() : ownWords;
  return (
    <Form label={text.title} className="sign-in" onSubmit={() => void submit()}>
      <fieldset className="names">
        <legend className="unseen">{text.who}</legend>
        <div className="name-row is-head" aria-hidden="true">
          <span />
          <span>{text.name}</span>
          <span>{text.role}</span>
          <span>{text.signsInWith}</span>
        </div>
        {people.map((person) => (
          <NameRow
            key={person.id}
            person={person}
            group={group}
            isChosen={person.id === chosen.id}
            onChoose={() => choose(person.id)}
            onGoOn={() => field.current?.focus()}
          />
        ))}
      </fieldset>
      {/* The field stays where there is nothing to type, or the keys that pick a name would end at such a name. */}
      <SecretField
        label={text.field(chosen.secretForm ?? 'pin', chosen.name)}
        problem={problem}
        hint={chosen.secretForm === null ? text.noSecret(chosen.name) : text.fieldHint}
        inputRef={field}
        value={secret}
        isReadOnly={isTrying || chosen.secretForm === null}
        isNumeric={chosen.secretForm === 'pin'}
        onChange={setSecret}
        onKeyDown={step}
      />
      <div className="sign-in-foot">
        {onCancel !== undefined && <Button onPress={onCancel}>{text.cancel}</Button>}
        <Button
          type="submit"
          kind="main"
          isDisabled={isTrying || left > 0 || chosen.secretForm === null}
          whyDisabled={
            left > 0 ? text.waiting : chosen.secretForm === null ? text.noSecret(chosen.name) : text.signingIn
          }
        >
          {isTrying ? text.signingIn : text.signIn}
        </Button>
      </div>
    </Form>
  );
}
