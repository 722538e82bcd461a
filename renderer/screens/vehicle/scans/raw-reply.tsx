// The raw reply of a module, for those who have the bytes: decoded while it is typed, with every warning, and put into the scan on a press.
import { useState } from 'react';
import { type DiagnosticBus, readReply } from '../../../../app/domain/diagnosis/diagnostic-reply.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { rawText } from '../../../text/scans.ts';
import { Button } from '../../../ui/button.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { codesOfReply, readBytes } from './raw-bytes.ts';
import { addRows } from './report-rows.ts';
import type { ScanValue } from './scan-draft.ts';

const buses = (['can', 'older'] as const).map((value) => ({ value, label: rawText.buses[value] }));

export function RawReply({ edit, onClose }: { readonly edit: Editing<ScanValue>; readonly onClose: () => void }) {
  const [module, setModule] = useState('');
  const [bus, setBus] = useState<DiagnosticBus>('can');
  const [text, setText] = useState('');
  const read = readBytes(text);
  const reply = read.ok && read.bytes.length > 0 ? readReply(read.bytes, bus) : null;
  const codes = reply === null ? [] : codesOfReply(reply);
  const names = edit.value.modules.map((row) => row.name).filter((name) => name !== '');
  const isListing = reply !== null && ['stored', 'pending', 'permanent', 'by-status'].includes(reply.kind);
  const canAdd = isListing && module.trim() !== '';
  const add = () => {
    if (!canAdd) return;
    const row = { name: module.trim(), answered: true, typed: '', codes };
    edit.set({ modules: addRows(edit.value.modules, [row], []) });
    setText('');
  };
  return (
    <fieldset
      className="field-group raw-reply"
      onKeyDown={(event) => {
        // Enter would save the whole scan before the reply is in it.
        if (event.key !== 'Enter' || event.ctrlKey || !(event.target instanceof HTMLInputElement)) return;
        event.preventDefault();
        add();
      }}
    >
      <legend>{rawText.title}</legend>
      <div className="field-grid">
        <TextField label={rawText.module} value={module} onChange={setModule} list={names} />
        <SelectField label={rawText.bus} value={bus} onChange={setBus} options={buses} />
        <TextField
          label={rawText.bytes}
          value={text}
          onChange={setText}
          hint={rawText.hint}
          problem={read.ok ? undefined : rawText.notBytes(read.token)}
          code
          isWide
        />
      </div>
      {reply !== null && (
        <div className="raw-result" role="status">
          <p>
            <b>{isListing ? rawText.found(rawText.kinds[reply.kind], codes.length) : rawText.kinds[reply.kind]}</b>{' '}
            <span className="code">{codes.map(({ code }) => code).join(' ')}</span>
          </p>
          {reply.kind === 'count' && reply.count !== null && <p>{rawText.counted(reply.count)}</p>}
          {reply.warnings.map((warning) => (
            <p key={warning} className="raw-warning">
              {warning}
            </p>
          ))}
        </div>
      )}
      <div className="section-buttons">
        <Button onPress={add} isDisabled={!canAdd} whyDisabled={isListing ? rawText.needsModule : rawText.needsCodes}>
          {rawText.add}
        </Button>
        <Button kind="quiet" onPress={onClose}>
          {rawText.close}
        </Button>
      </div>
    </fieldset>
  );
}
