// The vault in Setup: making it, opening and locking it, who has a key, and what to do when a pass phrase or the recovery key is lost.
// Holds the recovery key only until it was written down.
import './vault.css';
import { useState } from 'react';
import type { AppError } from '../../../app/contract/app-error.ts';
import type { Desk } from '../../../app/contract/views.ts';
import type { Result } from '../../../app/domain/shared/result.ts';
import { ask } from '../../bridge.ts';
import { notify } from '../../state/notice-store.ts';
import { useVault } from '../../state/vault-store.ts';
import { vaultSetupText as text, vaultSentence } from '../../text/vault.ts';
import { Button } from '../../ui/button.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { RecoveryKeyDialog } from './recovery-key-dialog.tsx';
import { VaultPeople } from './vault-people.tsx';
import { ChangePhraseForm } from './vault-phrase.tsx';
import { VaultSecretForm } from './vault-secret-form.tsx';

export function VaultSection({ desk }: { readonly desk: Desk }) {
  const vault = useVault();
  const [recoveryKey, setRecoveryKey] = useState('');
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
        <VaultSecretForm
          title={text.make}
          hint={text.makeHint}
          fields={[text.passPhrase, text.again]}
          button={text.make}
          onSubmit={([passPhrase = '']) => taking(ask('vault:make', { passPhrase }))}
        />
      )}
      {vault.state === 'locked' && (
        <div className="vault-columns">
          {vault.hasKey && (
            <VaultSecretForm
              title={text.unlock}
              hint={text.held(vault.heldCodes)}
              fields={[text.passPhrase]}
              button={text.unlock}
              onSubmit={([passPhrase = '']) => ask('vault:unlock', { passPhrase })}
            />
          )}
          <VaultSecretForm
            title={text.recoverTitle}
            hint={text.recoverHint}
            fields={[text.recoveryKey, text.fresh, text.again]}
            button={text.recover}
            onSubmit={([key = '', passPhrase = '']) => taking(ask('vault:recover', { recoveryKey: key, passPhrase }))}
          />
        </div>
      )}
      {isOpen && (
        <>
          <div className="vault-state">
            <span>{text.held(vault.heldCodes)}</span>
            <Button onPress={() => void tell(ask('vault:lock', {}))}>{text.lock}</Button>
            <Button onPress={() => void tell(taking(ask('vault:new-recovery-key', {})))}>{text.renew}</Button>
          </div>
          <div className="vault-columns">
            <VaultPeople desk={desk} peopleIds={vault.peopleIds} tell={tell} />
            <ChangePhraseForm />
          </div>
        </>
      )}
      {recoveryKey !== '' && <RecoveryKeyDialog recoveryKey={recoveryKey} onClose={() => setRecoveryKey('')} />}
    </section>
  );
}
