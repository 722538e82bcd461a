// What happened with the code of a request: kept, looked at, copied, destroyed, by whom and why; and destroying or replacing it.
import { useState } from 'react';
import { ask } from '../../../bridge.ts';
import { notify } from '../../../state/notice-store.ts';
import { useKeptCode, useKeptCodes } from '../../../state/vault-store.ts';
import { showMoment } from '../../../text/instant.ts';
import { vaultSentence, vaultText } from '../../../text/vault.ts';
import { Button } from '../../../ui/button.tsx';
import { Dialog } from '../../../ui/dialog.tsx';
import { Form } from '../../../ui/form.tsx';
import { SectionHead } from '../../../ui/section-head.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { type CodeDialog, closeCodeDialog, codeDialogStore } from './code-value-open.ts';

function DestroyForm({ open }: { readonly open: CodeDialog }) {
  const { id } = useVehicle();
  const [why, setWhy] = useState('');
  const [problem, setProblem] = useState('');
  const destroy = async () => {
    if (why.trim() === '') return setProblem(vaultText.destroyWhy);
    const answer = await ask('vault:destroy', { vehicleId: id, requestId: open.requestId, why });
    if (!answer.ok) return setProblem(vaultSentence(answer.error));
    notify('done', vaultText.nowDestroyed);
    closeCodeDialog();
  };
  return (
    <Form label={vaultText.destroyHead} onSubmit={() => void destroy()}>
      <SectionHead title={vaultText.destroyHead} level={3} />
      <TextField
        label={vaultText.destroyWhy}
        hint={vaultText.destroyHint}
        value={why}
        onChange={setWhy}
        problem={problem}
        isRequired
      />
      <div className="code-value-foot">
        <Button type="submit" kind="danger">
          {vaultText.destroy}
        </Button>
        <Button kind="quiet" onPress={() => codeDialogStore.set({ ...open, kind: 'replace' })}>
          {vaultText.replace}
        </Button>
      </div>
    </Form>
  );
}

export function AboutCodeDialog({ open }: { readonly open: CodeDialog }) {
  const { desk } = useVehicle();
  const all = useKeptCodes();
  const code = useKeptCode(open.requestId);
  const nameOf = (id: string) =>
    id === 'program' ? vaultText.program : (desk.people.find((person) => person.id === id)?.name ?? id);
  const happenings = code?.happenings ?? [];
  return (
    <Dialog title={vaultText.aboutTitle(open.name)} onClose={closeCodeDialog} isWide>
      {happenings.length === 0 ? (
        <p className="quiet">{vaultText.nothingYet}</p>
      ) : (
        <table className="code-value-log">
          <thead>
            <tr>
              <th scope="col">{vaultText.when}</th>
              <th scope="col">{vaultText.who}</th>
              <th scope="col">{vaultText.what}</th>
              <th scope="col">{vaultText.reason}</th>
            </tr>
          </thead>
          <tbody>
            {happenings.map(({ at, by, label, reason }) => (
              <tr key={`${at} ${label}`}>
                <td>{showMoment(at)}</td>
                <td>{nameOf(by)}</td>
                <td>{label}</td>
                <td>{reason}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {code?.state === 'held' && all?.mayDestroy === true && desk.readOnlyReason === null && (
        <DestroyForm open={open} />
      )}
    </Dialog>
  );
}
