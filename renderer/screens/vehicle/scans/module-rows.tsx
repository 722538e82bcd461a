// The modules of a scan, one row each: name, answered or silent, its codes. Enter goes to the next module.
import { type KeyboardEvent, useRef, useState } from 'react';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { scanText } from '../../../text/scans.ts';
import { Button } from '../../../ui/button.tsx';
import { CheckField } from '../../../ui/check-field.tsx';
import { ParagraphField, TextField } from '../../../ui/text-field.tsx';
import { usedWords } from '../ledger/choices.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { CodeRows } from './code-rows.tsx';
import {
  type CodeRow,
  isEmpty,
  leftOutKey,
  type ModuleRow,
  rowsLike,
  type ScanValue,
  settleTyped,
  withEmptyRow,
} from './scan-draft.ts';

export function ModuleRows({ edit }: { readonly edit: Editing<ScanValue> }) {
  const { vehicle } = useVehicle();
  const root = useRef<HTMLDivElement>(null);
  const [openAt, setOpenAt] = useState<number | null>(null);
  const rows = edit.value.modules;
  const names = usedWords(vehicle.scans.flatMap((scan) => scan.modules.map((module) => module.name)));
  const isUntouched = rows.length === 1;
  const earlier = vehicle.scans.filter((scan) => scan.id !== edit.value.id);
  const likeLast = rowsLike(earlier.toSorted((a, b) => (a.takenOn < b.takenOn ? -1 : 1)).at(-1)?.modules ?? []);
  const setRow = (index: number, more: Partial<ModuleRow>) =>
    edit.set({ modules: withEmptyRow(rows.map((row, at) => (at === index ? { ...row, ...more } : row))) });
  /** A module that has codes shows the field for more of them when it is asked for. */
  const openCodes = (index: number) => {
    setOpenAt(index);
    requestAnimationFrame(() => root.current?.querySelector<HTMLElement>(`[data-module="${index}"] textarea`)?.focus());
  };
  const settle = (index: number) => {
    setOpenAt(null);
    const row = rows[index];
    if (row === undefined) return;
    const settled = settleTyped(row);
    if (settled !== row) setRow(index, settled);
  };
  const leaveOut = (codes: readonly CodeRow[]) =>
    codes.flatMap(({ origin }) => (origin === null ? [] : [leftOutKey(origin)]));
  const takeOut = (index: number) =>
    edit.set({
      modules: withEmptyRow(rows.filter((_, at) => at !== index)),
      leftOut: [...edit.value.leftOut, ...leaveOut(rows[index]?.codes ?? [])],
    });
  const removeCode = (index: number, code: CodeRow) => {
    const codes = (rows[index]?.codes ?? []).filter((one) => one !== code);
    edit.set({
      modules: withEmptyRow(rows.map((row, at) => (at === index ? { ...row, codes } : row))),
      leftOut: [...edit.value.leftOut, ...leaveOut([code])],
    });
  };
  const onKeyDown = (index: number) => (event: KeyboardEvent) => {
    const isPlainEnter = event.key === 'Enter' && !event.ctrlKey && !event.shiftKey && !event.altKey;
    const field = event.target;
    if (!isPlainEnter || event.nativeEvent.isComposing || !(field instanceof HTMLElement)) return;
    const row = rows[index];
    // An empty last row: there is no next module, so Enter means what it means everywhere.
    if (field.closest('.code-lines') !== null || row === undefined || isEmpty(row)) return;
    if (field instanceof HTMLButtonElement) return;
    event.preventDefault();
    const isName = field instanceof HTMLInputElement && field.type === 'text';
    const next = isName
      ? `[data-module="${index}"] textarea`
      : `[data-module="${index + 1}"] .module-name input[type="text"]`;
    root.current?.querySelector<HTMLElement>(next)?.focus();
  };
  return (
    <div ref={root} className="module-rows">
      <div className="module-hint">
        <p className="field-hint">{scanText.codesHint}</p>
        {isUntouched && likeLast.length > 0 && (
          <Button kind="quiet" onPress={() => edit.set({ modules: withEmptyRow(likeLast) })}>
            {scanText.likeLast(likeLast.length)}
          </Button>
        )}
      </div>
      {rows.map((row, index) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: Enter inside the row's own fields goes to the next one.
        <div
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no identity but their place while they are typed.
          key={index}
          className={row.codes.length > 0 ? 'module-row has-codes' : 'module-row'}
          data-module={index}
          onKeyDown={onKeyDown(index)}
        >
          <div className="module-name">
            <TextField
              label={scanText.module}
              value={row.name}
              onChange={(name) => setRow(index, { name })}
              problem={edit.problemAt(`modules.${index}`)}
              list={names}
              isLabelUnseen={index > 0}
            />
          </div>
          <CheckField
            label={scanText.answered}
            value={row.answered}
            onChange={(answered) => setRow(index, { answered })}
          />
          <div className="module-codes">
            <CodeRows
              codes={row.codes}
              where={row.name}
              onChange={(codes) => setRow(index, { codes })}
              onRemove={(code) => removeCode(index, code)}
            />
            {row.codes.length > 0 && row.typed === '' && openAt !== index && (
              <Button kind="quiet" label={scanText.addCodesTo(row.name)} onPress={() => openCodes(index)}>
                {scanText.addCodes}
              </Button>
            )}
            {/* biome-ignore lint/a11y/noStaticElementInteractions: what was typed becomes rows when the field is left. */}
            <div onBlur={() => settle(index)} hidden={row.codes.length > 0 && row.typed === '' && openAt !== index}>
              <ParagraphField
                label={scanText.codes}
                value={row.typed}
                onChange={(typed) => setRow(index, { typed })}
                rows={Math.min(6, Math.max(1, row.typed.split('\n').length))}
                isLabelUnseen={index > 0}
                isReadOnly={!row.answered}
              />
            </div>
          </div>
          {index < rows.length - 1 ? (
            <Button kind="quiet" label={scanText.removeModule(row.name)} onPress={() => takeOut(index)}>
              {scanText.takeOut}
            </Button>
          ) : (
            <span />
          )}
        </div>
      ))}
    </div>
  );
}
