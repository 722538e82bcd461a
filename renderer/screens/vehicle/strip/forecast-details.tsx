// What the ready day rests on: each open item, how often it decides the day, and how many earlier cases stand behind it.
import type { VehicleView } from '../../../../app/contract/views.ts';
import type { Forecast } from '../../../../app/domain/time/forecast.ts';
import { prospectText as text } from '../../../text/prospect.ts';
import { CauseWord } from '../../../ui/cause-swatch.tsx';
import { useVehicle } from '../page/vehicle-context.ts';

type Shown = { readonly forecast: Forecast; readonly course: VehicleView['course'] };

export function ForecastDetails({ forecast, course }: Shown) {
  const { today } = useVehicle();
  const { runs, items } = forecast;
  const planned = new Map((course?.items ?? []).map((item) => [item.id, item]));
  return (
    <details className="forecast-details">
      <summary>{text.madeOf}</summary>
      <p className="quiet">
        {text.runs(forecast)}
        {course !== null && ` ${text.course(course.readyOn, today)}`}
      </p>
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
            <th scope="col">{text.courseHead}</th>
            <th scope="col" className="amount">
              {text.roomHead}
            </th>
          </tr>
        </thead>
        <tbody>
          {items.map((item) => {
            const plan = planned.get(item.id);
            return (
              <tr key={item.id}>
                <th scope="row">
                  <CauseWord standing={item.cause} /> {item.what}
                </th>
                <td className="amount">{text.share(item.decides, runs)}</td>
                <td className="amount">{text.share(item.onChain, runs)}</td>
                <td>{text.basisWords(item)}</td>
                <td>{plan && text.courseDays(plan.startsOn, plan.endsOn, today)}</td>
                <td className="amount">{plan && text.room(plan)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}
