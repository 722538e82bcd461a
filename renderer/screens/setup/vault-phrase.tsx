// Whoever has a key to the vault changes their own pass phrase for codes, the present one first. For every role that may have a key.
import type { Desk } from '../../../app/contract/views.ts';
import { ask } from '../../bridge.ts';
import { notify } from '../../state/notice-store.ts';
import { useVault } from '../../state/vault-store.ts';
import { vaultSetupText as text } from '../../text/vault.ts';
import { SectionHead } from '../../ui/section-head.tsx';
import { VaultSecretForm } from './vault-secret-form.tsx';

export function ChangePhraseForm() {
  const change = async (typed: readonly string[]) => {
    const [oldPassPhrase = '', newPassPhrase = ''] = typed;
    const answer = await ask('vault:change-pass-phrase', { oldPassPhrase, newPassPhrase });
    if (answer.ok) notify('done', text.changed);
    return answer;
  };
  return (
    <VaultSecretForm
      title={text.changeTitle}
      hint={text.changeHint}
      fields={[text.old, text.fresh, text.again]}
      button={text.change}
      onSubmit={change}
    />
  );
}

/** Drawn for who has a key and no more to do with the vault than that. */
export function OwnVaultSection({ desk }: { readonly desk: Desk }) {
  return desk.person.role === 'technician' ? <OwnVault /> : null;
}

function OwnVault() {
  const vault = useVault();
  if (vault === null || !vault.hasKey) return null;
  return (
    <section className="setup-section" aria-label={text.title}>
      <SectionHead title={text.title} aside={text.states[vault.state]} />
      <ChangePhraseForm />
    </section>
  );
}
