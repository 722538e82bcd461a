// What scans say, for reading: any two of the vehicle against each other, or the only one alone; where to look first; the monitors.
import { useState } from 'react';
import { readinessResets } from '../../../../app/domain/diagnosis/readiness-resets.ts';
import type { Scan } from '../../../../app/domain/diagnosis/scan.ts';
import { byTimeTaken, scansBeforeAndAfter } from '../../../../app/domain/diagnosis/scan-order.ts';
import { sayDay } from '../../../text/say-day.ts';
import { comparisonText, scanText } from '../../../text/scans.ts';
import { maySeeCodes } from '../may-change.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { CodeLine } from './code-line.tsx';
import { readComparison } from './comparison-rows.ts';
import { LikelyRoots } from './likely-roots-lines.tsx';
import { MonitorJudgementLines } from './monitor-judgement.tsx';

function Comparison({ before, after }: { readonly before: Scan; readonly after: Scan }) {
  const { role } = useVehicle();
  const { modules, groups } = readComparison(before, after);
  if (modules.length === 0 && groups.length === 0) return <p className="section-note">{comparisonText.nothing}</p>;
  return (
    <table className="scan-reading">
      <tbody>
        {modules.map(({ module, change }) => (
          <tr key={module}>
            <td className={`became is-${change}`}>{comparisonText.answer[change]}</td>
            <td />
            <td>{module}</td>
            <td colSpan={3} />
          </tr>
        ))}
        {groups.flatMap(({ kind, codes }) =>
          codes.map(({ code, module, listed, ...change }) => (
            <CodeLine
              key={`${module} ${code}`}
              code={code}
              module={module}
              words={listed?.words ?? ''}
              statusByte={listed?.statusByte ?? null}
              first={<span className={`became is-${kind}`}>{comparisonText.became[kind]}</span>}
              sentence={comparisonText.how(change)}
              maySeeCases={maySeeCodes(role)}
              foundOn={change.after === null ? before.takenOn : after.takenOn}
            />
          )),
        )}
      </tbody>
    </table>
  );
}

function OneScan({ scan }: { readonly scan: Scan }) {
  const { role } = useVehicle();
  const silent = scan.modules.filter((module) => !module.answered);
  const clean = scan.modules.filter((module) => module.answered && module.codes.length === 0).length;
  return (
    <table className="scan-reading">
      <tbody>
        {silent.map((module) => (
          <tr key={module.name}>
            <td className="became is-fell-silent">{scanText.silent}</td>
            <td />
            <td>{module.name}</td>
            <td colSpan={3} />
          </tr>
        ))}
        {scan.modules.flatMap((module) =>
          module.codes.map(({ code, status, words, statusByte, isUnproven }) => (
            <CodeLine
              key={`${module.name} ${code} ${status}`}
              code={code}
              module={module.name}
              words={words}
              statusByte={statusByte}
              first={scanText.status[status]}
              sentence={isUnproven ? <span className="quiet">{scanText.untestedTip}</span> : null}
              maySeeCases={maySeeCodes(role)}
              foundOn={scan.takenOn}
            />
          )),
        )}
        {clean > 0 && (
          <tr>
            <td colSpan={6} className="quiet">
              {scanText.clean(clean)}
            </td>
          </tr>
        )}
      </tbody>
    </table>
  );
}

type ScanSelectProps = {
  readonly label: string;
  readonly value: string;
  readonly scans: readonly Scan[];
  readonly onChange: (id: string) => void;
};

function ScanSelect({ label, value, scans, onChange }: ScanSelectProps) {
  const { today } = useVehicle();
  return (
    <select
      className="field-input"
      aria-label={label}
      value={value}
      onChange={(event) => onChange(event.currentTarget.value)}
    >
      {scans.map((scan) => (
        <option key={scan.id} value={scan.id}>
          {scanText.name(scanText.kinds[scan.kind], sayDay(scan.takenOn, today))}
        </option>
      ))}
    </select>
  );
}

/** The pair that matters most without being asked: arrival against the proof of the repair, else the first against the last. */
function likelyPair(scans: readonly Scan[]): { readonly before: Scan | undefined; readonly after: Scan | undefined } {
  const { before, after } = scansBeforeAndAfter(scans);
  return { before: before ?? scans[0], after: after ?? scans[scans.length - 1] };
}

export function ScanReading() {
  const { vehicle, today } = useVehicle();
  const [chosen, setChosen] = useState<{ readonly before?: string; readonly after?: string }>({});
  const scans = vehicle.scans.toSorted(byTimeTaken);
  const likely = likelyPair(scans);
  const last = scans[scans.length - 1];
  if (last === undefined) return null;
  const before = scans.find((scan) => scan.id === chosen.before) ?? likely.before ?? last;
  const after = scans.find((scan) => scan.id === chosen.after) ?? likely.after ?? last;
  const isPair = scans.length > 1 && before.id !== after.id;
  const told = isPair ? after : last;
  return (
    <div className="reading">
      {scans.length > 1 ? (
        <div className="reading-head">
          <h3>{comparisonText.title}</h3>
          <ScanSelect
            label={comparisonText.before}
            value={before.id}
            scans={scans}
            onChange={(id) => setChosen({ ...chosen, before: id })}
          />
          <span className="quiet">{comparisonText.against}</span>
          <ScanSelect
            label={comparisonText.after}
            value={after.id}
            scans={scans}
            onChange={(id) => setChosen({ ...chosen, after: id })}
          />
        </div>
      ) : (
        <h3>{scanText.latest(scanText.kinds[last.kind], sayDay(last.takenOn, today))}</h3>
      )}
      <LikelyRoots scan={told} />
      {isPair ? <Comparison before={before} after={after} /> : <OneScan scan={told} />}
      <MonitorJudgementLines scan={told} resets={readinessResets(vehicle, told)} />
    </div>
  );
}
