// The shop's own notebook: what a module and its codes came to on earlier vehicles. Asked of this desk's own fleet; nothing is sent.
import './notebook.css';
import { useEffect, useState } from 'react';
import type { CaseSummary } from '../../../../app/contract/case-summary.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import { ask } from '../../../bridge.ts';
import { routeWords } from '../../../text/programming.ts';
import { notebookText } from '../../../text/scans.ts';
import { useVehicle } from '../page/vehicle-context.ts';

/** Not before a person has stopped typing for this long. */
const pauseMs = 250;

type NotebookProps = { readonly module: string; readonly codes: readonly string[]; readonly vehicleId: string };

function useCases({ module, codes, vehicleId }: NotebookProps): CaseSummary | null {
  const [found, setFound] = useState<CaseSummary | null>(null);
  const wanted = codes.join(' ');
  useEffect(() => {
    let isCurrent = true;
    if (module.trim() === '' && wanted === '') {
      setFound(null);
      return;
    }
    const timer = setTimeout(() => {
      const list = wanted === '' ? [] : wanted.split(' ');
      void ask('cases:find', { module: module.trim(), codes: list, exceptVehicleId: vehicleId }).then((answer) => {
        if (isCurrent) setFound(answer.ok ? answer.value : null);
      });
    }, pauseMs);
    return () => {
      isCurrent = false;
      clearTimeout(timer);
    };
  }, [module, wanted, vehicleId]);
  return found;
}

function Fixes({ summary }: { readonly summary: CaseSummary }) {
  const { currency } = useVehicle();
  return (
    <table className="notebook-fixes">
      <tbody>
        {summary.fixes.map(({ fix, count, medianCents, medianDays }) => (
          <tr key={fix}>
            <td className="amount">{notebookText.times(count)}</td>
            <td>{fix}</td>
            <td>{notebookText.usuallyDays(medianDays)}</td>
            <td>{medianCents !== null && notebookText.usually(`${showCents(medianCents)} ${currency}`)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function Notebook(props: NotebookProps) {
  const { currency } = useVehicle();
  const summary = useCases(props);
  if (summary === null) return null;
  const { match, count, routes, cases, leftAsTheyWere } = summary;
  return (
    <section className="notebook" aria-label={notebookText.title} aria-live="polite">
      <p>
        <b>{notebookText.title}:</b> {match === null ? notebookText.none : notebookText.match[match](count)}
      </p>
      {match !== null && <Fixes summary={summary} />}
      {routes.length > 0 && (
        <p>
          {notebookText.routes}:{' '}
          {routes.map(({ route, worked, tried }) => notebookText.route(routeWords[route], worked, tried)).join('; ')}
        </p>
      )}
      {leftAsTheyWere > 0 && <p className="quiet">{notebookText.left(leftAsTheyWere)}</p>}
      {cases.length > 0 && (
        <details>
          <summary>{notebookText.cases}</summary>
          <ul>
            {cases.map((one) => (
              <li key={`${one.vehicleId} ${one.what} ${one.doneOn}`}>
                {one.stockNumber} {one.title}: {one.what}; {one.fix}; {notebookText.days(one.days)}
                {one.totalCents !== null && `; ${showCents(one.totalCents)} ${currency}`}
                {one.totalCents !== null && one.isIncomplete && ` ${notebookText.incomplete}`}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
