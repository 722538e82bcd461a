// The answers a person comes for, in one row: what it waits for, whose move, the days, the money.
import { showCents } from '../../../../app/domain/shared/cents.ts';
import { prospectText } from '../../../text/prospect.ts';
import { sayDay, sayDaysIn } from '../../../text/say-day.ts';
import { gatesText, vehicleText } from '../../../text/vehicle.ts';
import { CauseWord } from '../../../ui/cause-swatch.tsx';
import { Amount } from '../money/margin-facts.tsx';
import { useVehicle } from './vehicle-context.ts';

function Money() {
  const { view, vehicle, today } = useVehicle();
  const { costs } = view;
  if (costs === null) {
    const asking = vehicle.targets.askingCents;
    return asking === null ? null : (
      <div>
        <dt>{vehicleText.askingPrice}</dt>
        <dd>
          <b>{showCents(asking)}</b>
        </dd>
      </div>
    );
  }
  const aside = [
    costs.startingMarginCents === null
      ? vehicleText.noPrice
      : vehicleText.ofStartingMargin(showCents(costs.startingMarginCents)),
    costs.breakEvenOn === null ? '' : vehicleText.usedUp(costs.breakEvenOn, today),
  ].filter((word) => word !== '');
  return (
    <div>
      <dt>{vehicleText.marginExpected}</dt>
      <dd>
        <b>
          <Amount cents={costs.marginExpectedCents} />
        </b>{' '}
        <span className="quiet">{aside.join('; ')}</span>
      </dd>
    </div>
  );
}

export function StandingRow() {
  const { view, vehicle, today } = useVehicle();
  const { held, nextMove } = view;
  const { standing, what, since, expectedOn } = held.now;
  const isSold = vehicle.sale !== null;
  const isWait = standing !== 'sold' && standing !== 'ready' && standing !== 'work';
  return (
    <dl className="standing-row">
      <div>
        <dt>{isWait ? vehicleText.waitsFor : vehicleText.stands}</dt>
        <dd>
          <b>
            <CauseWord standing={standing} />
          </b>{' '}
          <span>
            {isSold
              ? `${vehicleText.soldOn(since, today)}${what === '' ? '' : `, ${what}`}`
              : vehicleText.standingWhat(what, since, expectedOn, today)}
          </span>
        </dd>
      </div>
      <div>
        <dt>{vehicleText.nextMove}</dt>
        <dd>
          {nextMove === null ? (
            vehicleText.nobodysMove
          ) : (
            <>
              <b>{gatesText.actor[nextMove.who]}</b> <span>{sayDaysIn(nextMove.what, today)}</span>
            </>
          )}
        </dd>
      </div>
      <div>
        <dt>{vehicleText.daysHeld}</dt>
        <dd>
          <b>{held.heldDays}</b>{' '}
          <span className="quiet">
            {`${sayDay(vehicle.purchase.boughtOn, today)} – ${vehicle.sale === null ? sayDay(today, today) : sayDay(vehicle.sale.soldOn, today)}; ${vehicleText.idleDays(held.byCause.idle ?? 0)}`}
          </span>
        </dd>
      </div>
      {view.isForecastToCome && !isSold && (
        <div>
          <dt>{prospectText.ready}</dt>
          <dd className="quiet">{prospectText.readyToCome}</dd>
        </div>
      )}
      {view.forecast !== null && (
        <div title={prospectText.likelyTip}>
          <dt>{prospectText.ready}</dt>
          <dd>
            <b>{prospectText.readyWords(view.forecast.likelyOn, view.forecast.safeOn, today)}</b>{' '}
            <span className="quiet">
              {view.forecast.items[0] && prospectText.decides(view.forecast.items[0], view.forecast.runs)}
            </span>
          </dd>
        </div>
      )}
      <Money />
    </dl>
  );
}
