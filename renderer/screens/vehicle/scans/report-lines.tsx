// A report line by line, with what was read from each beside it. A code leaves with one press; a line that was not read can be made the
// name of a module.
import { type ReactNode, useState } from 'react';
import type { ScannerTextReading } from '../../../../app/domain/diagnosis/scanner-reading.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { reportText, scanText } from '../../../text/scans.ts';
import { Button } from '../../../ui/button.tsx';
import { promoteLine, type ReportLine, reportLines } from './report-rows.ts';
import { leftOutKey, type ScanValue, withEmptyRow } from './scan-draft.ts';

const longestName = 60;

type ReportLinesProps = {
  readonly edit: Editing<ScanValue>;
  readonly reading: ScannerTextReading;
  readonly counts: string;
  readonly actions: ReactNode;
};

export function ReportLines({ edit, reading, counts, actions }: ReportLinesProps) {
  const [isOnlyNotRead, setIsOnlyNotRead] = useState(false);
  const { modules, leftOut } = edit.value;
  const lines = reportLines(reading);
  const shown = isOnlyNotRead ? lines.filter((line) => line.use === 'not-understood') : lines;
  const hasNotRead = lines.some((line) => line.use === 'not-understood');
  const rowOf = (line: number, readAs: string) =>
    modules.flatMap((row) => row.codes).find((one) => one.origin?.line === line && one.origin.readAs === readAs);
  const drop = (line: number, readAs: string) =>
    edit.set({
      modules: withEmptyRow(
        modules.map((row) => ({
          ...row,
          codes: row.codes.filter((one) => one.origin?.line !== line || one.origin.readAs !== readAs),
        })),
      ),
      leftOut: [...leftOut, leftOutKey({ line, readAs })],
    });
  const promote = ({ lineNumber, text }: ReportLine) => {
    const next = lines.find((line) => line.lineNumber > lineNumber && line.modules.length > 0);
    const name = text
      .trim()
      .replace(/[\s:;,|–—-]+$/, '')
      .slice(0, longestName);
    edit.set({
      modules: promoteLine(modules, name, { from: lineNumber, before: next?.lineNumber ?? Number.POSITIVE_INFINITY }),
    });
  };
  const isNamed = ({ text }: ReportLine) =>
    modules.some((row) => row.name !== '' && text.trim().toLowerCase().startsWith(row.name.toLowerCase()));
  return (
    <div className="report">
      <div className="report-head">
        <b>{reportText.label}</b>
        <span className="quiet">{counts}</span>
        <span className="report-actions">
          {hasNotRead && (
            <Button isPressed={isOnlyNotRead} onPress={() => setIsOnlyNotRead(!isOnlyNotRead)}>
              {reportText.onlyNotRead}
            </Button>
          )}
          {actions}
        </span>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a place that scrolls is reached by keyboard. */}
      <section className="report-lines" aria-label={reportText.label} tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col" className="amount">
                {reportText.line}
              </th>
              <th scope="col">{reportText.text}</th>
              <th scope="col">{reportText.readAs}</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((line) => (
              <tr key={line.lineNumber} className={`is-${line.use}`}>
                <td className="amount quiet">{line.lineNumber}</td>
                <td className="report-line-text">{line.text}</td>
                <td className="report-read">
                  {line.modules.map((name) => (
                    <span key={name} className="report-module">
                      {name}
                      {line.use === 'silent' && <span className="scan-answer is-silent">{scanText.silent}</span>}
                    </span>
                  ))}
                  {line.codes.map(({ code, wasCorrected, originalText }) => {
                    const row = rowOf(line.lineNumber, code);
                    return (
                      <span key={code} className={row === undefined ? 'report-code is-left-out' : 'report-code'}>
                        <span className="code">{row?.code ?? code}</span>
                        {row !== undefined && <span> {scanText.status[row.status]}</span>}
                        {wasCorrected && <span className="code-slip"> {scanText.slip(originalText)}</span>}
                        {row === undefined ? (
                          <span className="unseen">{reportText.leftOut(code)}</span>
                        ) : (
                          <Button
                            kind="quiet"
                            label={reportText.leaveOut(row.code)}
                            onPress={() => drop(line.lineNumber, code)}
                          >
                            ×
                          </Button>
                        )}
                      </span>
                    );
                  })}
                  {line.codes.length === 0 && line.modules.length === 0 && (
                    <span className={line.use === 'not-understood' ? 'report-not-read' : 'quiet'}>
                      {isNamed(line) && line.use === 'not-understood'
                        ? reportText.uses.module
                        : reportText.uses[line.use]}
                    </span>
                  )}
                  {line.use === 'not-understood' && !isNamed(line) && (
                    <Button
                      kind="quiet"
                      label={reportText.isModuleFor(line.text.trim().slice(0, longestName))}
                      onPress={() => promote(line)}
                    >
                      {reportText.isModule}
                    </Button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}
