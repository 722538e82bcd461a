// The modules of a scan, one row each: name, answered or silent, codes typed or pasted. Enter goes to the next module.
import { type KeyboardEvent, useRef } from 'react';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { scanText } from '../../../text/vehicle-entries.ts';
import { Button } from '../../../ui/button.tsx';
import { CheckField } from '../../../ui/check-field.tsx';
import { ParagraphField, TextField } from '../../../ui/text-field.tsx';
import { usedWords } from '../ledger/choices.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { type ModuleRow, rowsLike, type ScanValue, withEmptyRow } from './scan-draft.ts';

export function ModuleRows({ edit }: { readonly edit: Editing<ScanValue> }) {
  const { vehicle } = useVehicle();
  const root = useRef<HTMLDivElement>(null);
  const rows = edit.value.modules;
  const names = usedWords(vehicle.scans.flatMap((scan) => scan.modules.map((module) => module.name)));
  const isUntouched = rows.length === 1;
  const earlier = vehicle.scans.filter((scan) => scan.id !== edit.value.id);
  const likeLast = rowsLike(earlier.toSorted((a, b) => (a.takenOn < b.takenOn ? -1 : 1)).at(-1)?.modules ?? []);
  const setRow = (index: number, more: Partial<ModuleRow>) =>
    edit.set({ modules: withEmptyRow(rows.map((row, at) => (at === index ? { ...row, ...more } : row))) });
  const takeOut = (index: number) => edit.set({ modules: withEmptyRow(rows.filter((_, at) => at !== index)) });
  const onKeyDown = (index: number) => (event: KeyboardEvent) => {
    const isPlainEnter = event.key === 'Enter' && !event.ctrlKey && !event.shiftKey && !event.altKey;
    if (!isPlainEnter || event.nativeEvent.isComposing || event.target instanceof HTMLButtonElement) return;
    const isName = event.target instanceof HTMLInputElement && event.target.type === 'text';
    // An empty last row: there is no next module, so Enter means what it means everywhere.
    if (isName && rows[index]?.name.trim() === '') return;
    event.preventDefault();
    const next = isName ? `[data-module="${index}"] textarea` : `[data-module="${index + 1}"] input[type="text"]`;
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
          className="module-row"
          data-module={index}
          onKeyDown={onKeyDown(index)}
        >
          <TextField
            label={scanText.module}
            value={row.name}
            onChange={(name) => setRow(index, { name })}
            problem={edit.problemAt(`modules.${index}`)}
            list={names}
            isLabelUnseen={index > 0}
          />
          <CheckField
            label={scanText.answered}
            value={row.answered}
            onChange={(answered) => setRow(index, { answered })}
          />
          <ParagraphField
            label={scanText.codes}
            value={row.codes}
            onChange={(codes) => setRow(index, { codes })}
            rows={Math.min(6, Math.max(1, row.codes.split('\n').length))}
            isLabelUnseen={index > 0}
            isReadOnly={!row.answered}
          />
          {index < rows.length - 1 ? (
            <Button kind="quiet" label={scanText.removeModule(row.name)} onPress={() => takeOut(index)}>
              ×
            </Button>
          ) : (
            <span />
          )}
        </div>
      ))}
    </div>
  );
}
