// The pass phrase field of a dialog about codes, where the vault is locked; and why nothing can be done where it cannot be opened at all.
import type { VaultState } from '../../../../app/contract/vault-view.ts';
import { vaultText } from '../../../text/vault.ts';
import { SecretField } from '../../../ui/secret-field.tsx';

/** Null when the vault can be opened, or is open. */
export function whyNoVault(vault: VaultState | null): string | null {
  if (vault === null || vault.state === 'none') return vaultText.noVault;
  if (vault.state === 'damaged') return vault.sentence;
  return vault.hasKey ? null : vaultText.noKey;
}

export function PhraseField({
  vault,
  value,
  onChange,
  problem,
}: {
  readonly vault: VaultState | null;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly problem: string | undefined;
}) {
  if (vault?.state !== 'locked') return null;
  return (
    <SecretField
      label={vaultText.passPhrase}
      hint={vaultText.passPhraseHint}
      value={value}
      onChange={onChange}
      problem={problem}
      mostCharacters={400}
      isRequired
    />
  );
}
