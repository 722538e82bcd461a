// The dialog in which a code is seen: first why, then the code for half a minute. It lives in this component only, and is dropped when
// the time is over, the window loses the focus, the vault is locked or the dialog is closed.
import { useCallback, useEffect, useRef, useState } from 'react';
import type { AppError } from '../../../../app/contract/app-error.ts';
import { ask, on } from '../../../bridge.ts';
import { notify } from '../../../state/notice-store.ts';
import { unlockVault, useKeptCode, useVault } from '../../../state/vault-store.ts';
import { commonText } from '../../../text/common.ts';
import { vaultSentence, vaultText } from '../../../text/vault.ts';
import { Button } from '../../../ui/button.tsx';
import { Dialog } from '../../../ui/dialog.tsx';
import { Form } from '../../../ui/form.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { type CodeDialog, closeCodeDialog } from './code-value-open.ts';
import { PhraseField, whyNoVault } from './code-value-phrase.tsx';

/** Counts down once a second and calls `onOver` at nought, and as soon as the window is left or the vault is locked. */
function useSecondsLeft(seconds: number, onOver: () => void): number {
  const [left, setLeft] = useState(seconds);
  useEffect(() => {
    const until = Date.now() + seconds * 1000;
    const timer = setInterval(() => {
      const now = Math.ceil((until - Date.now()) / 1000);
      setLeft(Math.max(0, now));
      if (now <= 0) onOver();
    }, 250);
    const whenUnseen = () => {
      if (document.hidden) onOver();
    };
    window.addEventListener('blur', onOver);
    document.addEventListener('visibilitychange', whenUnseen);
    const stop = on('vault:locked', onOver);
    return () => {
      clearInterval(timer);
      window.removeEventListener('blur', onOver);
      document.removeEventListener('visibilitychange', whenUnseen);
      stop();
    };
  }, [seconds, onOver]);
  return left;
}

/** Takes the focus when it is drawn: what had it before is gone, and Esc has to find this dialog. */
function useFocusHere() {
  const here = useRef<HTMLDivElement>(null);
  useEffect(() => here.current?.focus(), []);
  return here;
}

function HiddenAgain({ isHandOver }: { readonly isHandOver: boolean }) {
  const here = useFocusHere();
  return (
    <div ref={here} tabIndex={-1} className="code-value-hidden">
      <p role="status">
        {vaultText.hidden} {isHandOver && vaultText.notHandedOver}
      </p>
    </div>
  );
}

/** The code, large, and for how long yet. */
function Shown({
  value,
  seconds,
  said,
  onOver,
}: {
  readonly value: string;
  readonly seconds: number;
  readonly said: string;
  readonly onOver: () => void;
}) {
  const left = useSecondsLeft(seconds, onOver);
  const here = useFocusHere();
  return (
    <div ref={here} tabIndex={-1} className="code-value-sight">
      <p className="code-value-shown">{value}</p>
      <p className="quiet" role="timer">
        {vaultText.secondsLeft(left)}
      </p>
      <p role="status">{said}</p>
    </div>
  );
}

type Seen = { readonly value: string; readonly hiddenAfterSeconds: number };

export function SeeCodeDialog({ open }: { readonly open: CodeDialog }) {
  const { id, role } = useVehicle();
  const vault = useVault();
  const code = useKeptCode(open.requestId);
  const [phrase, setPhrase] = useState('');
  const [why, setWhy] = useState('');
  const [step, setStep] = useState('');
  const [error, setError] = useState<AppError | null>(null);
  const [seen, setSeen] = useState<Seen | null>(null);
  const [wasHidden, setWasHidden] = useState(false);
  const [said, setSaid] = useState('');
  const hide = useCallback(() => {
    setSeen(null);
    setWasHidden(true);
    void ask('vault:hide', {});
  }, []);
  useEffect(() => () => void ask('vault:hide', {}), []);
  const isHandOver = open.kind === 'hand-over';
  const steps = isHandOver ? [] : (code?.steps ?? []);
  const look = async () => {
    const unlocked = await unlockVault(phrase);
    if (!unlocked.ok) return setError(unlocked.error);
    setPhrase('');
    const chosen = steps.find((one) => `${one.jobId} ${one.stepId}` === step);
    const answer = await ask('vault:look', {
      vehicleId: id,
      requestId: open.requestId,
      why,
      step: chosen === undefined ? null : { jobId: chosen.jobId, stepId: chosen.stepId },
      isHandOver,
    });
    setError(answer.ok ? null : answer.error);
    if (answer.ok) setSeen(answer.value);
  };
  const title = (isHandOver ? vaultText.handOverTitle : vaultText.seeTitle)(open.name);
  const noVault = whyNoVault(vault);
  const at = (field: string) => error?.problems.find((problem) => problem.field === field)?.sentence;
  if (noVault !== null)
    return (
      <Dialog title={title} onClose={closeCodeDialog}>
        <p>{noVault}</p>
      </Dialog>
    );
  const place = { vehicleId: id, requestId: open.requestId };
  const copy = async () => {
    const answer = await ask('vault:copy', place);
    setSaid(answer.ok ? vaultText.copied : vaultSentence(answer.error));
  };
  const destroy = async () => {
    const answer = await ask('vault:destroy', { ...place, why: vaultText.handedOverWhy });
    if (!answer.ok) return setSaid(vaultSentence(answer.error));
    notify('done', vaultText.nowDestroyed);
    closeCodeDialog();
  };
  if (seen !== null)
    return (
      <Dialog
        title={title}
        onClose={closeCodeDialog}
        footer={
          <>
            {isHandOver ? (
              <Button kind="danger" onPress={() => void destroy()}>
                {vaultText.handedOver}
              </Button>
            ) : (
              <Button onPress={() => void copy()}>{vaultText.copy}</Button>
            )}
            <Button kind="main" onPress={closeCodeDialog}>
              {vaultText.hide}
            </Button>
          </>
        }
      >
        <Shown value={seen.value} seconds={seen.hiddenAfterSeconds} said={said} onOver={hide} />
      </Dialog>
    );
  if (wasHidden)
    return (
      <Dialog title={title} onClose={closeCodeDialog}>
        <HiddenAgain isHandOver={isHandOver} />
      </Dialog>
    );
  return (
    <Dialog title={title} onClose={closeCodeDialog} footer={false}>
      <Form label={title} className="code-value-form" onSubmit={() => void look()}>
        {error !== null && error.problems.length === 0 && (
          <p role="alert" className="field-problem">
            {vaultSentence(error)}
          </p>
        )}
        <PhraseField vault={vault} value={phrase} onChange={setPhrase} problem={at('passPhrase')} />
        {steps.length > 0 && (
          <SelectField
            label={vaultText.step}
            value={step}
            onChange={setStep}
            problem={at('step')}
            options={[
              { value: '', label: role === 'technician' ? vaultText.chooseStep : vaultText.noStep },
              ...steps.map((one) => ({
                value: `${one.jobId} ${one.stepId}`,
                label: vaultText.stepName(one.number, one.title),
              })),
            ]}
          />
        )}
        <TextField
          label={isHandOver ? vaultText.handOverWhy : vaultText.why}
          hint={vaultText.whyHint}
          value={why}
          onChange={setWhy}
          problem={at('why')}
          isRequired
        />
        <div className="code-value-foot">
          <Button onPress={closeCodeDialog}>{commonText.cancel}</Button>
          <Button type="submit" kind="main">
            {vaultText.show}
          </Button>
        </div>
      </Form>
    </Dialog>
  );
}
