// Asked before a request is removed for which a code is kept: the code goes with it, and undo does not bring it back.
import { commonText } from '../../../text/common.ts';
import { vaultText } from '../../../text/vault.ts';
import { Button } from '../../../ui/button.tsx';
import { Dialog } from '../../../ui/dialog.tsx';
import type { RemoveAnswers } from '../ledger/fact-form.tsx';

export function RemoveWithCode({ name, onRemove, onKeep }: RemoveAnswers & { readonly name: string }) {
  const footer = (
    <>
      <Button onPress={onKeep}>{commonText.cancel}</Button>
      <Button kind="danger" onPress={onRemove}>
        {vaultText.removeBoth}
      </Button>
    </>
  );
  return (
    <Dialog title={vaultText.removeTitle(name)} onClose={onKeep} footer={footer}>
      <p>{vaultText.removeHint}</p>
    </Dialog>
  );
}
