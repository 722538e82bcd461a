// The dialog in which a code is typed and sealed. What is typed lives here only, and is gone when the dialog is.
import { useState } from 'react';
import type { AppError } from '../../../../app/contract/app-error.ts';
import { ask } from '../../../bridge.ts';
import { notify } from '../../../state/notice-store.ts';
import { unlockVault, useVault } from '../../../state/vault-store.ts';
import { commonText } from '../../../text/common.ts';
import { vaultSentence, vaultText } from '../../../text/vault.ts';
import { Button } from '../../../ui/button.tsx';
import { Dialog } from '../../../ui/dialog.tsx';
import { Form } from '../../../ui/form.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { type CodeDialog, closeCodeDialog } from './code-value-open.ts';
import { PhraseField, whyNoVault } from './code-value-phrase.tsx';

export function KeepCodeDialog({ open }: { readonly open: CodeDialog }) {
  const { id } = useVehicle();
  const vault = useVault();
  const [phrase, setPhrase] = useState('');
  const [value, setValue] = useState('');
  const [keptBecause, setKeptBecause] = useState('');
  const [error, setError] = useState<AppError | null>(null);
  const [isAsking, setIsAsking] = useState(false);
  const why = whyNoVault(vault);
  const at = (field: string) => error?.problems.find((problem) => problem.field === field)?.sentence;
  const wantsReason = at('keptBecause') !== undefined || keptBecause !== '';
  const keep = async () => {
    if (isAsking) return;
    setIsAsking(true);
    const unlocked = await unlockVault(phrase);
    const answer = unlocked.ok
      ? await ask('vault:put-code', {
          vehicleId: id,
          requestId: open.requestId,
          value,
          keptBecause,
          replaces: open.kind === 'replace',
        })
      : unlocked;
    setIsAsking(false);
    if (unlocked.ok) setPhrase('');
    if (!answer.ok) return setError(answer.error);
    notify('done', vaultText.kept);
    closeCodeDialog();
  };
  const title = vaultText.keepTitle(open.name);
  if (why !== null)
    return (
      <Dialog title={title} onClose={closeCodeDialog}>
        <p>{why}</p>
      </Dialog>
    );
  return (
    <Dialog title={title} onClose={closeCodeDialog} footer={false}>
      <Form label={title} className="code-value-form" onSubmit={() => void keep()}>
        {error !== null && error.problems.length === 0 && (
          <p role="alert" className="field-problem">
            {vaultSentence(error)}
          </p>
        )}
        <PhraseField vault={vault} value={phrase} onChange={setPhrase} problem={at('passPhrase')} />
        <TextField
          label={vaultText.value}
          hint={open.kind === 'replace' ? vaultText.replaces : vaultText.valueHint}
          value={value}
          onChange={setValue}
          problem={at('value')}
          code
          isRequired
        />
        {wantsReason && (
          <TextField
            label={vaultText.keptBecause}
            hint={vaultText.keptBecauseHint}
            value={keptBecause}
            onChange={setKeptBecause}
            problem={at('keptBecause')}
          />
        )}
        <div className="code-value-foot">
          <Button onPress={closeCodeDialog}>{commonText.cancel}</Button>
          <Button type="submit" kind="main">
            {vaultText.keepNow}
          </Button>
        </div>
      </Form>
    </Dialog>
  );
}
