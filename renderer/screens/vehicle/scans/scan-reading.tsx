// What scans say, for reading: the first before against the last after the repair, or else the last scan alone.
import type { Scan } from '../../../../app/domain/diagnosis/scan.ts';
import { scansBeforeAndAfter } from '../../../../app/domain/sheets/scan-summary.ts';
import { sayDay } from '../../../text/say-day.ts';
import { scanText } from '../../../text/vehicle-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { comparisonRows, usedColumns } from './comparison-rows.ts';

function Codes({ codes }: { readonly codes: readonly string[] }) {
  return <span className="code">{codes.join(' ')}</span>;
}

function Comparison({ before, after }: { readonly before: Scan; readonly after: Scan }) {
  const { today } = useVehicle();
  const { rows, quiet } = comparisonRows(before, after);
  const columns = usedColumns(rows);
  return (
    <table className="scan-reading">
      <caption>{scanText.comparison(sayDay(before.takenOn, today), sayDay(after.takenOn, today))}</caption>
      {rows.length > 0 && (
        <thead>
          <tr>
            <th scope="col">{scanText.module}</th>
            {columns.map((kind) => (
              <th key={kind} scope="col">
                {scanText.became[kind]}
              </th>
            ))}
          </tr>
        </thead>
      )}
      <tbody>
        {rows.map(({ module, answer, codes }) => (
          <tr key={module}>
            <th scope="row">
              {module}
              {answer !== null && <span className={`scan-answer is-${answer}`}>{scanText.answer[answer]}</span>}
            </th>
            {columns.map((kind) => (
              <td key={kind} className={`is-${kind}`}>
                <Codes codes={codes[kind]} />
              </td>
            ))}
          </tr>
        ))}
        {quiet > 0 && (
          <tr>
            <td colSpan={columns.length + 1} className="quiet">
              {scanText.unchanged(quiet)}
            </td>
          </tr>
        )}
      </tbody>
    </table>
  );
}

function OneScan({ scan }: { readonly scan: Scan }) {
  const { today } = useVehicle();
  const told = scan.modules.filter((module) => !module.answered || module.codes.length > 0);
  const clean = scan.modules.length - told.length;
  return (
    <table className="scan-reading">
      <caption>{scanText.latest(scanText.kinds[scan.kind], sayDay(scan.takenOn, today))}</caption>
      <tbody>
        {told.map((module) => (
          <tr key={module.name}>
            <th scope="row">
              {module.name}
              {!module.answered && <span className="scan-answer is-silent">{scanText.silent}</span>}
            </th>
            <td>
              {module.codes.map(({ code, status, words }) => (
                <div key={code}>
                  <span className="code">{code}</span> {scanText.status[status]}
                  {words !== '' && <span className="quiet"> {words}</span>}
                </div>
              ))}
            </td>
          </tr>
        ))}
        {clean > 0 && (
          <tr>
            <td colSpan={2} className="quiet">
              {scanText.clean(clean)}
            </td>
          </tr>
        )}
      </tbody>
    </table>
  );
}

export function ScanReading() {
  const { vehicle } = useVehicle();
  const { before, after } = scansBeforeAndAfter(vehicle.scans);
  if (before !== null && after !== null) return <Comparison before={before} after={after} />;
  const last = vehicle.scans.toSorted((a, b) => (a.takenOn < b.takenOn ? -1 : 1)).at(-1);
  return last !== undefined && last.modules.length > 0 ? <OneScan scan={last} /> : null;
}
