// The vault in Setup: making it, opening and locking it, who has a key, and what to do when a pass phrase or the recovery key is lost.
// Pass phrases and the recovery key live in these components only, and are gone when they are.
import { useState } from 'react';
import type { AppError } from '../../../app/contract/app-error.ts';
import type { Desk } from '../../../app/contract/views.ts';
import type { Result } from '../../../app/domain/shared/result.ts';
import { ask } from '../../bridge.ts';
import { notify } from '../../state/notice-store.ts';
import { useVault } from '../../state/vault-store.ts';
import { vaultSetupText as text, vaultSentence } from '../../text/vault.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { Form } from '../../ui/form.tsx';
import { SecretField } from '../../ui/secret-field.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { SelectField } from '../../ui/select-field.tsx';

/** Fields of secrets with one button; what was typed is forgotten as soon as it was taken. */
function SecretForm({
  title,
  hint,
  fields,
  button,
  onSubmit,
}: {
  readonly title: string;
  readonly hint?: string;
  /** Labels. */
  readonly fields: readonly string[];
  readonly button: string;
  readonly onSubmit: (typed: readonly string[]) => Promise<Result<unknown, AppError>>;
}) {
  const [typed, setTyped] = useState<readonly string[]>(fields.map(() => ''));
  const [problem, setProblem] = useState('');
  const submit = async () => {
    const again = fields.indexOf(text.again);
    if (again > 0 && typed[again] !== typed[again - 1]) return setProblem(text.notSame);
    const answer = await onSubmit(typed);
    setProblem(answer.ok ? '' : vaultSentence(answer.error));
    if (answer.ok) setTyped(fields.map(() => ''));
  };
  return (
    <Form label={title} onSubmit={() => void submit()}>
      <SectionHead title={title} level={3} />
      {hint !== undefined && <p className="setup-hint">{hint}</p>}
      {fields.map((label, index) => (
        <SecretField
          key={label}
          label={label}
          value={typed[index] ?? ''}
          onChange={(value) => setTyped(typed.map((before, at) => (at === index ? value : before)))}
          problem={index === 0 ? problem : undefined}
        />
      ))}
      <Button type="submit">{button}</Button>
    </Form>
  );
}

function RecoveryKeyDialog({ recoveryKey, onClose }: { readonly recoveryKey: string; readonly onClose: () => void }) {
  const [isWritten, setIsWritten] = useState(false);
  const close = () => {
    if (isWritten) onClose();
  };
  const done = (
    <Button kind="main" isDisabled={!isWritten} whyDisabled={text.keyNotYet} onPress={onClose}>
      {text.keyDone}
    </Button>
  );
  return (
    <Dialog title={text.keyTitle} onClose={close} footer={done}>
      <p>{text.keyWords}</p>
      <p>
        <output aria-label={text.recoveryKey}>{recoveryKey}</output>
      </p>
      <CheckField label={text.keyWritten} value={isWritten} onChange={setIsWritten} />
    </Dialog>
  );
}

export function VaultSection({ desk }: { readonly desk: Desk }) {
  const vault = useVault();
  const [recoveryKey, setRecoveryKey] = useState('');
  const [personId, setPersonId] = useState('');
  if (vault === null) return null;
  const tell = async (asked: Promise<Result<unknown, AppError>>, said = '') => {
    const answer = await asked;
    if (!answer.ok) notify('problem', vaultSentence(answer.error));
    else if (said !== '') notify('done', said);
  };
  const taking = async (asked: Promise<Result<{ readonly recoveryKey: string }, AppError>>) => {
    const answer = await asked;
    if (answer.ok) setRecoveryKey(answer.value.recoveryKey);
    return answer;
  };
  const isOpen = vault.state === 'open';
  const without = desk.people.filter(
    (person) => person.isActive && person.role !== 'sales' && !vault.peopleIds.includes(person.id),
  );
  return (
    <section className="setup-section" aria-label={text.title}>
      <SectionHead title={text.title} aside={text.states[vault.state]} />
      <p className="setup-hint">{vault.state === 'damaged' ? `${vault.sentence} ${text.anewHint}` : text.hint}</p>
      {vault.state === 'damaged' && (
        <Button kind="danger" onPress={() => void tell(ask('vault:start-anew', {}))}>
          {text.anew}
        </Button>
      )}
      {vault.state === 'none' && (
        <SecretForm
          title={text.make}
          hint={text.makeHint}
          fields={[text.passPhrase, text.again]}
          button={text.make}
          onSubmit={([passPhrase = '']) => taking(ask('vault:make', { passPhrase }))}
        />
      )}
      {vault.state === 'locked' && vault.hasKey && (
        <SecretForm
          title={text.unlock}
          fields={[text.passPhrase]}
          button={text.unlock}
          onSubmit={([passPhrase = '']) => ask('vault:unlock', { passPhrase })}
        />
      )}
      {vault.state === 'locked' && (
        <SecretForm
          title={text.recoverTitle}
          hint={text.recoverHint}
          fields={[text.recoveryKey, text.fresh, text.again]}
          button={text.recover}
          onSubmit={([key = '', passPhrase = '']) => taking(ask('vault:recover', { recoveryKey: key, passPhrase }))}
        />
      )}
      {isOpen && (
        <>
          <p>{text.held(vault.heldCodes)}</p>
          <Button onPress={() => void tell(ask('vault:lock', {}))}>{text.lock}</Button>
          <Button kind="quiet" onPress={() => void tell(taking(ask('vault:new-recovery-key', {})))}>
            {text.renew}
          </Button>
          <SectionHead title={text.people} level={3} />
          <ul>
            {vault.peopleIds.map((id) => {
              const name = desk.people.find((person) => person.id === id)?.name ?? id;
              return (
                <li key={id}>
                  {name}{' '}
                  <Button
                    kind="quiet"
                    label={text.takeAwayFrom(name)}
                    onPress={() => void tell(ask('vault:remove-person', { personId: id }), text.takenAway(name))}
                  >
                    {text.takeAway}
                  </Button>
                </li>
              );
            })}
          </ul>
          {without.length > 0 && (
            <>
              <SelectField
                label={text.person}
                value={personId}
                onChange={setPersonId}
                options={[
                  { value: '', label: text.choose },
                  ...without.map((person) => ({ value: person.id, label: person.name })),
                ]}
              />
              {personId !== '' && (
                <SecretForm
                  key={personId}
                  title={text.addTitle}
                  hint={text.addHint}
                  fields={[text.passPhrase, text.again]}
                  button={text.add}
                  onSubmit={([passPhrase = '']) => ask('vault:add-person', { personId, passPhrase })}
                />
              )}
            </>
          )}
          <SecretForm
            title={text.changeTitle}
            fields={[text.old, text.fresh, text.again]}
            button={text.change}
            onSubmit={([oldPassPhrase = '', newPassPhrase = '']) =>
              ask('vault:change-pass-phrase', { oldPassPhrase, newPassPhrase })
            }
          />
        </>
      )}
      {recoveryKey !== '' && <RecoveryKeyDialog recoveryKey={recoveryKey} onClose={() => setRecoveryKey('')} />}
    </section>
  );
}
