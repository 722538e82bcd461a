// The large hold strip with its axis: read with the pointer or day by day with the arrow keys. Under it, the days by cause.
import './strip.css';
import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { addDays, type Day, dayNumber, daysBetween } from '../../../../app/domain/shared/day.ts';
import { causesInOrder } from '../../../../app/domain/time/cause.ts';
import { stripLabel } from '../../../text/strip.ts';
import { stripText } from '../../../text/vehicle.ts';
import { CauseSwatch } from '../../../ui/cause-swatch.tsx';
import { HoldStrip } from '../../../ui/hold-strip.tsx';
import { scaleOf, xOf } from '../../../ui/strip-geometry.ts';
import { TimeAxis } from '../../../ui/time-axis.tsx';
import { useWidth } from '../../../ui/use-width.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { dayOnAxis, moveDay } from './day-on-strip.ts';
import { dayWords } from './day-words.ts';
import { ForecastDetails } from './forecast-details.tsx';
import { stripAxis } from './strip-axis.ts';

const stripHeight = 52;
const cursorInset = 7;

function DaysByCause() {
  const { view } = useVehicle();
  const causes = causesInOrder.filter((cause) => (view.held.byCause[cause] ?? 0) > 0);
  return (
    <ul className="days-by-cause">
      {causes.map((cause) => (
        <li key={cause} className={cause === 'idle' ? 'is-idle' : undefined}>
          <CauseSwatch standing={cause} /> {stripText.causeDays(cause, view.held.byCause[cause] ?? 0)}
        </li>
      ))}
    </ul>
  );
}

export function VehicleStrip() {
  const { view, vehicle, today, desk } = useVehicle();
  const root = useRef<HTMLDivElement>(null);
  const width = useWidth(root);
  const soldOn = vehicle.sale?.soldOn ?? null;
  const { boughtOn } = vehicle.purchase;
  const breakEvenOn = view.costs?.breakEvenOn ?? null;
  const { expectedOn } = view.held.now;
  const ready = view.forecast;
  const axis = stripAxis({ boughtOn, today, soldOn, expectedOn, breakEvenOn, safeOn: ready?.safeOn ?? null });
  const paymentsOn = (view.costs?.payments ?? []).map(({ dueOn }) => dueOn);
  const [chosen, setChosen] = useState<Day>(soldOn ?? today);
  const [hovered, setHovered] = useState<Day | null>(null);
  const day = dayOnAxis(chosen, axis);
  const shown = hovered ?? day;
  const scale = scaleOf(axis, Math.max(1, width));
  const dayAt = (event: PointerEvent): Day => {
    const x = event.clientX - (root.current?.getBoundingClientRect().left ?? 0);
    const last = daysBetween(axis.from, axis.to);
    return addDays(axis.from, Math.min(last, Math.max(0, Math.floor(x / scale.dayWidth))));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || event.metaKey) return;
    const moved = moveDay(day, event.key, {
      ...axis,
      today,
      stretches: view.held.stretches,
      byStretch: event.ctrlKey || event.shiftKey,
    });
    if (moved === null) return;
    event.preventDefault();
    setHovered(null);
    setChosen(moved);
  };
  const markX = xOf(scale, dayNumber(shown));
  return (
    <section className="vehicle-strip" aria-label={stripText.title}>
      <div
        ref={root}
        className="strip-reader"
        role="slider"
        tabIndex={0}
        aria-label={stripText.slider}
        aria-valuemin={0}
        aria-valuemax={daysBetween(axis.from, axis.to)}
        aria-valuenow={daysBetween(axis.from, day)}
        aria-valuetext={dayWords(view, day, desk.shop?.codeKinds)}
        aria-describedby="strip-keys"
        onKeyDown={onKeyDown}
        onPointerMove={(event) => setHovered(dayAt(event))}
        onPointerLeave={() => setHovered(null)}
        onPointerDown={(event) => setChosen(dayAt(event))}
      >
        <TimeAxis axis={axis} width={width} today={today} />
        <HoldStrip
          stretches={view.held.stretches}
          boughtOn={boughtOn}
          today={today}
          soldOn={soldOn}
          expectedOn={expectedOn}
          standing={view.held.now.standing}
          breakEvenOn={breakEvenOn}
          ready={ready}
          paymentsOn={paymentsOn}
          axis={axis}
          width={width}
          height={stripHeight}
          label={stripLabel({ held: view.held, boughtOn, breakEvenOn, ready, paymentsOn, today })}
        />
        {width > 0 && (
          <svg className="strip-cursor" width={width} height={stripHeight} aria-hidden="true">
            <rect
              x={markX + 0.5}
              y={cursorInset + 0.5}
              width={Math.max(3, scale.dayWidth - 1)}
              height={stripHeight - 2 * cursorInset - 1}
            />
          </svg>
        )}
      </div>
      <div className="strip-foot">
        <p className="strip-reading">{dayWords(view, shown, desk.shop?.codeKinds)}</p>
        <DaysByCause />
      </div>
      {ready !== null && <ForecastDetails forecast={ready} course={view.course} />}
      <p id="strip-keys" className="unseen">
        {stripText.keys}
      </p>
    </section>
  );
}
