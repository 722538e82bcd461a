// Who has a key to the vault, in Setup, while it is open: taking one away, and giving one to somebody else who may see codes.
import { useState } from 'react';
import type { AppError } from '../../../app/contract/app-error.ts';
import type { Desk } from '../../../app/contract/views.ts';
import type { Result } from '../../../app/domain/shared/result.ts';
import { ask } from '../../bridge.ts';
import { notify } from '../../state/notice-store.ts';
import { vaultSetupText as text } from '../../text/vault.ts';
import { Button } from '../../ui/button.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { VaultSecretForm } from './vault-secret-form.tsx';

export function VaultPeople({
  desk,
  peopleIds,
  tell,
}: {
  readonly desk: Desk;
  readonly peopleIds: readonly string[];
  readonly tell: (asked: Promise<Result<unknown, AppError>>, said: string) => Promise<void>;
}) {
  const [chosenId, setChosenId] = useState('');
  const without = desk.people.filter(
    (person) => person.isActive && person.role !== 'sales' && !peopleIds.includes(person.id),
  );
  const chosen = without.find(({ id }) => id === chosenId);
  const give = async (passPhrase: string) => {
    const answer = await ask('vault:add-person', { personId: chosenId, passPhrase });
    if (answer.ok && chosen) notify('done', text.added(chosen.name));
    return answer;
  };
  return (
    <div>
      <h3 className="vault-head">{text.people}</h3>
      <ul className="vault-people">
        {peopleIds.map((id) => {
          const name = desk.people.find((person) => person.id === id)?.name ?? id;
          return (
            <li key={id}>
              {name}
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
      {without.length === 0 ? (
        <p className="quiet">{text.nobodyToAdd}</p>
      ) : (
        <VaultSecretForm
          key={chosen?.id ?? ''}
          title={text.addTitle}
          hint={text.addHint}
          fields={chosen ? [text.passPhrase, text.again] : []}
          button={text.add}
          onSubmit={([passPhrase = '']) => give(passPhrase)}
        >
          <SelectField
            label={text.person}
            value={chosen?.id ?? ''}
            onChange={setChosenId}
            options={[
              { value: '', label: text.choose },
              ...without.map((person) => ({ value: person.id, label: person.name })),
            ]}
          />
        </VaultSecretForm>
      )}
    </div>
  );
}
