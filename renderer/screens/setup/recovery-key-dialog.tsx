// The recovery key, shown this once: large, in groups as it is written down. It lives in this dialog only, and is gone when that is.
import { useState } from 'react';
import { vaultSetupText as text } from '../../text/vault.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';

export function RecoveryKeyDialog({
  recoveryKey,
  onClose,
}: {
  readonly recoveryKey: string;
  readonly onClose: () => void;
}) {
  const [isWritten, setIsWritten] = useState(false);
  const close = () => {
    if (isWritten) onClose();
  };
  const done = (
    <Button kind="main" isDisabled={!isWritten} whyDisabled={text.keyNotYet} onPress={onClose}>
      {text.keyDone}
    </Button>
  );
  const parts = recoveryKey.split('-');
  const groups = parts.map((letters, at) => ({
    id: `group ${at + 1}`,
    letters: at < parts.length - 1 ? `${letters}-` : letters,
  }));
  return (
    <Dialog title={text.keyTitle} onClose={close} footer={done}>
      <p className="recovery-key-now">{text.keyNow}</p>
      <p>{text.keyWords}</p>
      <output className="recovery-key" aria-label={text.recoveryKey}>
        {groups.map(({ id, letters }) => (
          <span key={id}>{letters}</span>
        ))}
      </output>
      <CheckField label={text.keyWritten} value={isWritten} onChange={setIsWritten} />
    </Dialog>
  );
}
