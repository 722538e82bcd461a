// What the ready day rests on: each open item, how often it decides the day, and how many earlier cases stand behind it.
import type { Forecast } from '../../../../app/domain/time/forecast.ts';
import { prospectText as text } from '../../../text/prospect.ts';
import { CauseWord } from '../../../ui/cause-swatch.tsx';

export function ForecastDetails({ forecast }: { readonly forecast: Forecast }) {
  const { runs, items } = forecast;
  return (
    <details className="forecast-details">
      <summary>{text.madeOf}</summary>
      <p className="quiet">{text.runs(forecast)}</p>
      <table>
        <caption className="unseen">{text.madeOf}</caption>
        <thead>
          <tr>
            <th scope="col">{text.item}</th>
            <th scope="col" className="amount">
              {text.decidesHead}
            </th>
            <th scope="col" className="amount">
              {text.onChainHead}
            </th>
            <th scope="col">{text.basisHead}</th>
          </tr>
        </thead>
        <tbody>
          {items.map((item) => (
            <tr key={item.id}>
              <th scope="row">
                <CauseWord standing={item.cause} /> {item.what}
              </th>
              <td className="amount">{text.share(item.decides, runs)}</td>
              <td className="amount">{text.share(item.onChain, runs)}</td>
              <td>{text.basisWords(item)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
