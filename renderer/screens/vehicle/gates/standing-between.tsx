// What stands between this vehicle and its sale: the gates that hold it in the order of the way, whose move each is and since when.
import './gates.css';
import { type Gate, type GateItem, isHolding } from '../../../../app/domain/readiness/gate.ts';
import { daysBetween } from '../../../../app/domain/shared/day.ts';
import { sayDay, sayDaysIn } from '../../../text/say-day.ts';
import { gatesText } from '../../../text/vehicle.ts';
import { SectionHead } from '../../../ui/section-head.tsx';
import { jumpTo } from '../page/jump.ts';
import { useVehicle } from '../page/vehicle-context.ts';

function Item({ gate, item }: { readonly gate: Gate; readonly item: GateItem }) {
  const state = useVehicle();
  const { today } = state;
  const canWrite = 'list' in item.place ? state.canPut(item.place.list) : state.canSet(item.place.section);
  const days = item.since === null ? null : Math.max(0, daysBetween(item.since, today));
  return (
    <li className="gate-item">
      <button
        type="button"
        className="gate-jump"
        onClick={() => jumpTo(item.place, { vehicleId: state.id, canWrite, gateKey: gate.key })}
      >
        {sayDaysIn(item.text, today)}
      </button>
      <span className={`gate-who is-${item.who}`}>{gatesText.actor[item.who]}</span>
      <span className="gate-since">
        {item.since === null || days === null ? (
          ''
        ) : (
          <>
            <span className="quiet">{sayDay(item.since, today)}</span> {gatesText.days(days)}
          </>
        )}
      </span>
    </li>
  );
}

function MetGates({ gates }: { readonly gates: readonly Gate[] }) {
  const { today } = useVehicle();
  const met = gates.filter((gate) => gate.state === 'met');
  const notNeeded = gates.filter((gate) => gate.state === 'not-needed');
  if (met.length + notNeeded.length === 0) return null;
  return (
    <details className="met-gates">
      <summary>{gatesText.met(met.length)}</summary>
      <ul>
        {met.map((gate) => (
          <li key={gate.key}>{gatesText.metOn(gate.title, gate.metOn, today)}</li>
        ))}
        {notNeeded.map((gate) => (
          <li key={gate.key} className="quiet">{`${gate.title}: ${gatesText.notNeeded}`}</li>
        ))}
      </ul>
    </details>
  );
}

export function StandingBetween() {
  const { view, vehicle } = useVehicle();
  const { gates } = view.readiness;
  const holding = vehicle.sale === null ? gates.filter(isHolding) : [];
  const count = holding.reduce((sum, gate) => sum + gate.items.length, 0);
  return (
    <section className="standing-between" aria-labelledby="standing-between-title">
      <SectionHead id="standing-between-title" title={gatesText.title} {...(count > 0 ? { count } : {})} />
      {holding.length === 0 ? (
        <p className="gates-none">{vehicle.sale === null ? gatesText.nothing : gatesText.sold}</p>
      ) : (
        <ol className="gates">
          {holding.map((gate) => (
            <li key={gate.key} className={`gate is-${gate.state}`}>
              <span className="gate-title">
                {gate.title}
                {gate.state === 'stale' && <span className="gate-again">{gatesText.again}</span>}
              </span>
              <ul>
                {gate.items.map((item, index) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: items have no identity; the order is that of the record.
                  <Item key={index} gate={gate} item={item} />
                ))}
              </ul>
            </li>
          ))}
        </ol>
      )}
      <MetGates gates={gates} />
    </section>
  );
}
