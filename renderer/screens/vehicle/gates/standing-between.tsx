// What stands between this vehicle and its sale: the gates that hold it in the order of the way, whose move each is and since when.
import './gates.css';
import type { Gate } from '../../../../app/domain/readiness/gate.ts';
import { daysBetween } from '../../../../app/domain/shared/day.ts';
import { sayDay, sayDaysIn } from '../../../text/say-day.ts';
import { gatesText } from '../../../text/vehicle.ts';
import { SectionHead } from '../../../ui/section-head.tsx';
import { jumpTo } from '../page/jump.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { type GateLine, gateGroups } from './gate-groups.ts';

function Line({ line }: { readonly line: GateLine }) {
  const state = useVehicle();
  const { today } = state;
  const { place, who, since, gateKey } = line;
  const canWrite = 'list' in place ? state.canPut(place.list) : state.canSet(place.section);
  return (
    <li className="gate-item">
      <button
        type="button"
        className="gate-jump"
        onClick={() => jumpTo(place, { vehicleId: state.id, canWrite, gateKey })}
      >
        {sayDaysIn(line.text, today)}
      </button>
      <span className={`gate-who is-${who}`}>{gatesText.actorShort[who]}</span>
      <span className="gate-since">
        {since !== null && (
          <>
            {since < today && <span className="quiet">{sayDay(since, today)} </span>}
            {gatesText.days(Math.max(0, daysBetween(since, today)))}
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
          <li key={gate.key}>{gatesText.notNeeded(gate.title)}</li>
        ))}
      </ul>
    </details>
  );
}

export function StandingBetween() {
  const { view, vehicle } = useVehicle();
  const { gates } = view.readiness;
  const groups = vehicle.sale === null ? gateGroups(gates) : [];
  const count = groups.reduce((sum, group) => sum + group.lines.length, 0);
  return (
    <section className="standing-between" aria-labelledby="standing-between-title">
      <SectionHead id="standing-between-title" title={gatesText.title} {...(count > 0 ? { count } : {})} />
      {groups.length === 0 ? (
        <p className="gates-none">{vehicle.sale === null ? gatesText.nothing : gatesText.sold}</p>
      ) : (
        <ol className="gates">
          {groups.map((group) => (
            <li key={group.key} className="gate">
              <span className="gate-title">{group.title ?? gatesText.toSign}</span>
              <ul>
                {group.lines.map((line, index) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: lines have no identity; the order is that of the record.
                  <Line key={index} line={line} />
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
