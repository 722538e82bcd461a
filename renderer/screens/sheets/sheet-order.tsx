// Which sheets, in one file or several, and where they go; how far they are, and stopping them.
import './sheet-order.css';
import { useEffect, useState } from 'react';
import type { SheetTarget } from '../../../app/contract/sheet-channels.ts';
import { type AnySheetKind, fleetSheetKindSchema } from '../../../app/domain/sheets/sheet.ts';
import { ask } from '../../bridge.ts';
import { cancelSheets, makeSheets, sheetJobStore } from '../../state/sheet-job-store.ts';
import { useStore } from '../../state/store.ts';
import { sheetJobText } from '../../text/sheet-job.ts';
import { sheetsText } from '../../text/sheets.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';

export function isOfFleet(kind: AnySheetKind): boolean {
  return fleetSheetKindSchema.safeParse(kind).success;
}

export function SheetProgressLine() {
  const { progress, isCancelling } = useStore(sheetJobStore);
  if (progress === null) return null;
  const { done, total, now } = progress;
  return (
    <div className="sheet-progress">
      <progress aria-label={sheetJobText.progressLabel} value={total === 0 ? undefined : done} max={total || 1} />
      <span>{isCancelling ? sheetJobText.cancelling : sheetJobText.progress(done, total, now)}</span>
      <Button onPress={() => void cancelSheets()} isDisabled={isCancelling} whyDisabled={sheetJobText.cancelling}>
        {sheetJobText.cancel}
      </Button>
    </div>
  );
}

export type SheetOrderProps = {
  readonly kinds: readonly AnySheetKind[];
  readonly kind: AnySheetKind;
  readonly onKind: (kind: AnySheetKind) => void;
  /** Of these; for a fleet sheet none means the whole fleet. */
  readonly vehicleIds: readonly string[];
};

/** What was chosen last at this desk, read once; the kind that is seen is set by it too. */
function useLastChoice(onKind: (kind: AnySheetKind) => void) {
  const [extra, setExtra] = useState<ReadonlySet<AnySheetKind>>(new Set());
  const [isJoint, setIsJoint] = useState(false);
  const [to, setTo] = useState<SheetTarget>('folder');
  // biome-ignore lint/correctness/useExhaustiveDependencies: read once, when the screen opens.
  useEffect(() => {
    let isWanted = true;
    void ask('sheet:choice', {}).then((answer) => {
      if (!isWanted || !answer.ok || answer.value === null) return;
      const [first, ...others] = answer.value.kinds;
      if (first !== undefined) onKind(first);
      setExtra(new Set(others));
      setIsJoint(answer.value.isJoint);
      setTo(answer.value.to);
    });
    return () => {
      isWanted = false;
    };
  }, []);
  return { extra, setExtra, isJoint, setIsJoint, to, setTo };
}

export function SheetOrder({ kinds, kind, onKind, vehicleIds }: SheetOrderProps) {
  const { extra, setExtra, isJoint, setIsJoint, to, setTo } = useLastChoice(onKind);
  const { progress } = useStore(sheetJobStore);
  const ofFleet = isOfFleet(kind);
  const others = kinds.filter((one) => one !== kind && isOfFleet(one) === ofFleet);
  const chosenKinds = [kind, ...others.filter((one) => extra.has(one))];
  const count = ofFleet ? chosenKinds.length : chosenKinds.length * vehicleIds.length;
  const isDisabled = count === 0 || progress !== null;
  const whyDisabled = progress === null ? sheetJobText.nothingChosen : sheetJobText.isBusy;
  const make = (target: SheetTarget) => {
    setTo(target);
    void makeSheets({ kinds: chosenKinds, vehicleIds: [...vehicleIds], to: target, isJoint: isJoint && count > 1 });
  };
  const button = (target: SheetTarget, words: string, tip: string) => (
    <Button
      kind={target === to ? 'main' : 'plain'}
      tip={tip}
      isDisabled={isDisabled}
      whyDisabled={whyDisabled}
      onPress={() => make(target)}
    >
      {words}
    </Button>
  );
  return (
    <div className="sheet-order">
      <div className="sheet-order-kind">
        <SelectField
          label={sheetsText.kind}
          value={kind}
          onChange={onKind}
          options={kinds.map((value) => ({ value, label: sheetJobText.kinds[value] }))}
        />
        <p className="quiet">
          {sheetJobText.kindsFor[kind]}
          {ofFleet && kind !== 'money-summary' && (
            <> {vehicleIds.length === 0 ? sheetJobText.wholeFleet : sheetJobText.partOfFleet(vehicleIds.length)}</>
          )}
        </p>
      </div>
      {others.length > 0 && (
        <details className="sheet-order-more">
          <summary>{sheetJobText.more(chosenKinds.length - 1)}</summary>
          <div className="sheet-order-kinds">
            {others.map((one) => (
              <CheckField
                key={one}
                label={sheetJobText.kinds[one]}
                value={extra.has(one)}
                onChange={(isWanted) => {
                  const after = new Set(extra);
                  if (isWanted) after.add(one);
                  else after.delete(one);
                  setExtra(after);
                }}
              />
            ))}
          </div>
        </details>
      )}
      <div className="sheet-order-actions">
        {button('folder', count > 1 ? sheetJobText.saveMany(count) : sheetsText.save, sheetJobText.saveTip)}
        {button('file', sheetJobText.elsewhere, sheetJobText.elsewhereTip)}
        {button('printer', sheetJobText.print, sheetJobText.printTip)}
        {count > 1 && <CheckField label={sheetJobText.together} value={isJoint} onChange={setIsJoint} />}
      </div>
      <SheetProgressLine />
    </div>
  );
}
