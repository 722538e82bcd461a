// Takes a scanner's report as text: pasted, or dropped as a marked passage or a text file. What was read stands beside it line by line,
// with every line that was not; nothing is dropped in silence.
import { type ClipboardEvent, type DragEvent, useState } from 'react';
import { longestReport } from '../../../../app/domain/diagnosis/scan.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { reportText } from '../../../text/scans.ts';
import { Button } from '../../../ui/button.tsx';
import { LiveRegion } from '../../../ui/live-region.tsx';
import { ParagraphField } from '../../../ui/text-field.tsx';
import { FieldPlace } from '../ledger/field-place.tsx';
import { readReport } from './read-report.ts';
import { ReportLines } from './report-lines.tsx';
import { addRows, countReading, plainReport, rowsOf } from './report-rows.ts';
import { decodeReport, largestFile } from './report-text-file.ts';
import type { ScanValue } from './scan-draft.ts';

export function ReportBox({ edit }: { readonly edit: Editing<ScanValue> }) {
  const text = edit.value.reportText;
  const [isTyping, setIsTyping] = useState(text === '');
  const [isOver, setIsOver] = useState(false);
  const [trouble, setTrouble] = useState('');
  const reading = readReport(text);
  const counts = countReading(reading);
  /** Reads the text into the rows below: at once where it was pasted or dropped, on a press where it was typed. */
  const take = (report: string) => {
    setTrouble('');
    const plain = plainReport(report);
    const rows = addRows(edit.value.modules, rowsOf(readReport(plain)), edit.value.leftOut);
    edit.set({ reportText: plain, modules: rows });
    setIsTyping(plain.trim() === '');
  };
  const onPaste = (event: ClipboardEvent<HTMLDivElement>) => {
    const pasted = event.clipboardData.getData('text/plain');
    const field = event.target;
    if (pasted.trim() === '' || !(field instanceof HTMLTextAreaElement)) return;
    event.preventDefault();
    take(`${text.slice(0, field.selectionStart)}${pasted}${text.slice(field.selectionEnd)}`);
  };
  const onDrop = async (event: DragEvent) => {
    event.preventDefault();
    setIsOver(false);
    const [file] = event.dataTransfer.files;
    const marked = event.dataTransfer.getData('text/plain');
    if (file === undefined) {
      if (marked.trim() === '') setTrouble(reportText.notText);
      else take(text === '' ? marked : `${text}\n${marked}`);
      return;
    }
    if (file.size > largestFile) {
      setTrouble(reportText.tooLarge);
      return;
    }
    const read = decodeReport(new Uint8Array(await file.arrayBuffer()));
    if (read === null) setTrouble(reportText.notText);
    else take(text === '' ? read : `${text}\n${read}`);
  };
  const problem = text.length > longestReport ? reportText.tooLong(text.length, longestReport) : '';
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a place to drop text on; the field inside takes the same by keyboard.
    <div
      className={isOver ? 'report-box is-over' : 'report-box'}
      onDragOver={(event) => {
        event.preventDefault();
        setIsOver(true);
      }}
      onDragLeave={() => setIsOver(false)}
      onDrop={(event) => void onDrop(event)}
    >
      <LiveRegion text={text === '' ? '' : reportText.counts(counts)} />
      {isTyping ? (
        <FieldPlace name="reportText">
          <div className="report-typing" onPaste={onPaste}>
            <ParagraphField
              label={reportText.label}
              value={text}
              onChange={(typed) => edit.set({ reportText: typed })}
              rows={text === '' ? 2 : 12}
              hint={reportText.hint}
              problem={trouble || problem || edit.problemAt('reportText')}
            />
            {text.trim() !== '' && <Button onPress={() => take(text)}>{reportText.readAgain}</Button>}
          </div>
        </FieldPlace>
      ) : (
        <>
          <ReportLines
            edit={edit}
            reading={reading}
            counts={reportText.counts(counts)}
            actions={
              <>
                <Button kind="quiet" onPress={() => setIsTyping(true)}>
                  {reportText.change}
                </Button>
                <Button
                  kind="quiet"
                  onPress={() => {
                    edit.set({ reportText: '' });
                    setIsTyping(true);
                  }}
                >
                  {reportText.takeOut}
                </Button>
              </>
            }
          />
          {(trouble || problem) !== '' && (
            <p className="field-problem" role="alert">
              {trouble || problem}
            </p>
          )}
        </>
      )}
    </div>
  );
}
