// One cell of a code request: whether a code is kept, and what may be done with it. The code is never drawn here.
import './code-value.css';
import { useKeptCode, useKeptCodes } from '../../../state/vault-store.ts';
import { sayDay } from '../../../text/say-day.ts';
import { vaultText } from '../../../text/vault.ts';
import { Button } from '../../../ui/button.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { type CodeDialog, codeDialogStore } from './code-value-open.ts';

export function CodeValueCell({ requestId, name }: { readonly requestId: string; readonly name: string }) {
  const { today, desk } = useVehicle();
  const all = useKeptCodes();
  const code = useKeptCode(requestId);
  if (all === null || code === null) return null;
  const button = (kind: CodeDialog['kind'], words: string, why = '') => (
    <Button
      kind={kind === 'about' ? 'quiet' : 'plain'}
      label={vaultText.actionFor(words, name)}
      isDisabled={why !== ''}
      whyDisabled={why}
      onPress={() => codeDialogStore.set({ kind, requestId, name })}
    >
      {words}
    </Button>
  );
  const mayKeep = all.mayKeep && desk.readOnlyReason === null;
  return (
    <span className="code-value">
      <span className={code.state === 'held' ? '' : 'quiet'}>
        {code.state === 'none' && vaultText.none}
        {code.state === 'held' &&
          (code.destroyedOn === null ? vaultText.held : vaultText.goesOn(sayDay(code.destroyedOn, today)))}
        {code.state === 'destroyed' && vaultText.destroyed(sayDay((code.destroyedAt ?? '').slice(0, 10), today))}
      </span>
      {code.state !== 'held' && mayKeep && button('keep', vaultText.keep)}
      {code.state === 'held' && !all.mayHandOver && button('see', vaultText.see, code.whyNoLook)}
      {code.state === 'held' && all.mayHandOver && button('hand-over', vaultText.handOver)}
      {(code.state !== 'none' || code.happenings.length > 0) && button('about', vaultText.about)}
    </span>
  );
}
