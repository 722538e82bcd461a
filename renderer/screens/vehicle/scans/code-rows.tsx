// The codes of one module in the form, a line each: everything correctable, a line leaves with one press. A code that was read through a
// slip says so until a person has looked at it.
import { type ScanCodeStatus, scanCodeStatusSchema } from '../../../../app/domain/diagnosis/scan.ts';
import { scanText } from '../../../text/scans.ts';
import { Button } from '../../../ui/button.tsx';
import { CodeDetail } from './code-detail.tsx';
import type { CodeRow } from './scan-draft.ts';

type CodeLineProps = {
  readonly code: CodeRow;
  /** Of the module, for a screen reader. */
  readonly where: string;
  readonly onChange: (more: Partial<CodeRow>) => void;
  readonly onRemove: () => void;
};

function CodeLine({ code, where, onChange, onRemove }: CodeLineProps) {
  const named = scanText.codeOf(code.code, where);
  return (
    <li className={code.slip === null ? 'code-line' : 'code-line has-slip'}>
      <input
        type="text"
        className="field-input is-code"
        aria-label={`${scanText.code}: ${named}`}
        value={code.code}
        spellCheck={false}
        autoComplete="off"
        maxLength={8}
        onChange={(event) => onChange({ code: event.currentTarget.value.toUpperCase(), slip: null })}
      />
      <select
        className="field-input"
        aria-label={`${scanText.statusLabel}: ${named}`}
        value={code.status}
        onChange={(event) => onChange({ status: event.currentTarget.value as ScanCodeStatus })}
      >
        {scanCodeStatusSchema.options.map((status) => (
          <option key={status} value={status}>
            {scanText.status[status]}
          </option>
        ))}
      </select>
      <label className="code-untested" title={scanText.untestedTip}>
        <input
          type="checkbox"
          checked={code.isUnproven}
          onChange={(event) => onChange({ isUnproven: event.currentTarget.checked })}
        />
        {scanText.untested}
        <span className="unseen">: {named}</span>
      </label>
      <input
        type="text"
        className="field-input"
        aria-label={`${scanText.words}: ${named}`}
        value={code.words}
        autoComplete="off"
        maxLength={160}
        onChange={(event) => onChange({ words: event.currentTarget.value })}
      />
      <Button kind="quiet" label={scanText.removeCode(named)} onPress={onRemove}>
        ×
      </Button>
      <div className="code-beside">
        {code.slip !== null && (
          <span className="code-slip" role="note">
            {scanText.slip(code.slip)}{' '}
            <Button kind="quiet" label={scanText.slipIsRightFor(code.code)} onPress={() => onChange({ slip: null })}>
              {scanText.slipIsRight}
            </Button>
          </span>
        )}
        <CodeDetail code={code.code} statusByte={code.statusByte} />
      </div>
    </li>
  );
}

export type CodeRowsProps = {
  readonly codes: readonly CodeRow[];
  readonly where: string;
  readonly onChange: (codes: readonly CodeRow[]) => void;
  readonly onRemove: (code: CodeRow) => void;
};

export function CodeRows({ codes, where, onChange, onRemove }: CodeRowsProps) {
  if (codes.length === 0) return null;
  return (
    <ul className="code-lines">
      {codes.map((code, index) => (
        <CodeLine
          // biome-ignore lint/suspicious/noArrayIndexKey: a code being corrected has no identity but its place.
          key={index}
          code={code}
          where={where}
          onChange={(more) => onChange(codes.map((one, at) => (at === index ? { ...one, ...more } : one)))}
          onRemove={() => onRemove(code)}
        />
      ))}
    </ul>
  );
}
