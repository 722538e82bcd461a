// The hold strip: a cell a day from purchase to today, filled by the cause it was charged to; the forecast hollow; the day on which the
// margin is used up marked on the same axis. One picture with one full text; all numbers come in, nothing is worked out but places.
import './hold-strip.css';
import { addDays, type Day, dayNumber, daysBetween, laterDay } from '../../app/domain/shared/day.ts';
import type { Cause, Standing } from '../../app/domain/time/cause.ts';
import { causeLooks } from '../../app/domain/time/cause-look.ts';
import type { Stretch } from '../../app/domain/time/held-days.ts';
import { hatchUrl } from './hatch-patterns.tsx';
import { type Axis, clipSpan, daysBefore, type Scale, type Span, scaleOf, ticksOf, xOf } from './strip-geometry.ts';

export type HoldStripProps = {
  readonly stretches: readonly Stretch[];
  readonly boughtOn: Day;
  readonly today: Day;
  readonly soldOn?: Day | null;
  readonly expectedOn: Day | null;
  readonly standing: Standing;
  readonly breakEvenOn: Day | null;
  /** The forecast of being ready: by then in half of its runs, and in 80 of 100. */
  readonly ready?: { readonly likelyOn: Day; readonly safeOn: Day } | null;
  /** Days on which a payment to the lender is due. */
  readonly paymentsOn?: readonly Day[];
  readonly axis: Axis;
  readonly width: number;
  readonly height: number;
  /** Everything the picture tells, in words; see stripLabel in text/strip.ts. */
  readonly label: string;
};

/** From this many pixels a day on, the days are told apart by hairlines. */
const separatedFrom = 4;

/** Room above and below the bar, for the marks that reach out of it. */
function marginOf(height: number): number {
  return Math.max(3, Math.round(height * 0.26));
}

function Run({ cause, span, height }: { readonly cause: Cause; readonly span: Span; readonly height: number }) {
  const isOpen = causeLooks[cause].hatch === 'open';
  const margin = marginOf(height);
  const barHeight = height - 2 * margin;
  if (isOpen) {
    const width = Math.max(0, span.width - 1);
    return (
      <rect className="strip-open" x={span.x + 0.5} y={margin + 0.5} width={width} height={barHeight - 1} fill="none" />
    );
  }
  return <rect x={span.x} y={margin} width={span.width} height={barHeight} fill={hatchUrl(cause)} />;
}

function daySeparators(scale: Scale, spans: readonly Span[], height: number): string {
  if (scale.dayWidth < separatedFrom) return '';
  const margin = marginOf(height);
  return spans
    .flatMap((span) =>
      Array.from({ length: span.days - 1 }, (_, index) => {
        const x = Math.round(xOf(scale, span.firstNumber + index + 1)) + 0.5;
        return `M${x} ${margin}V${height - margin}`;
      }),
    )
    .join('');
}

export function HoldStrip(props: HoldStripProps) {
  const {
    stretches,
    boughtOn,
    today,
    soldOn = null,
    expectedOn,
    standing,
    breakEvenOn,
    ready = null,
    paymentsOn = [],
    axis,
    width,
    height,
    label,
  } = props;
  if (width <= 0) return null;
  const scale = scaleOf(axis, width);
  const runs = stretches.flatMap(({ cause, from, days }) => {
    const span = clipSpan(scale, from, days);
    return span === null ? [] : [{ cause, span }];
  });
  const heldDays = stretches.reduce((sum, stretch) => sum + stretch.days, 0);
  const hidden = daysBefore(axis, boughtOn, heldDays);
  const endOfHeld = addDays(boughtOn, heldDays);
  const forecastFrom = laterDay(endOfHeld, today);
  // Hollow until the day on which it is likely ready; before that is known, until what it waits for is promised.
  const likelyOn = ready?.likelyOn ?? expectedOn;
  const hollowUntil = (from: Day, to: Day | null) =>
    soldOn === null && to !== null && to >= from ? clipSpan(scale, from, daysBetween(from, to) + 1) : null;
  const forecast = hollowUntil(forecastFrom, likelyOn);
  const runsOut = likelyOn !== null && likelyOn > axis.to;
  const safeFrom = ready === null ? forecastFrom : laterDay(forecastFrom, addDays(ready.likelyOn, 1));
  const safe = ready === null ? null : hollowUntil(safeFrom, ready.safeOn);
  const safeRunsOut = ready !== null && ready.safeOn > axis.to;
  const margin = marginOf(height);
  const barHeight = height - 2 * margin;
  const months = ticksOf(axis, width).filter((tick) => tick.kind === 'month');
  const todayX = Math.round(xOf(scale, dayNumber(today))) + 0.5;
  const evenX = breakEvenOn === null ? null : Math.round(xOf(scale, dayNumber(breakEvenOn) + 1)) + 0.5;
  const soldX = soldOn === null ? null : Math.round(xOf(scale, dayNumber(soldOn))) + 0.5;
  return (
    <svg className="hold-strip" width={width} height={height} role="img" aria-label={label}>
      <title>{label}</title>
      {months.map(({ x, day }) => (
        <line key={day} className="axis-week" x1={Math.round(x) + 0.5} x2={Math.round(x) + 0.5} y1="0" y2={height} />
      ))}
      {runs.map(({ cause, span }) => (
        <Run key={span.firstNumber} cause={cause} span={span} height={height} />
      ))}
      <path
        className="strip-days"
        d={daySeparators(
          scale,
          runs.map((run) => run.span),
          height,
        )}
      />
      {forecast !== null && (
        <path
          className={`strip-forecast${standing === 'sold' ? '' : ` of-${standing}`}`}
          d={`M${forecast.x} ${margin + 1}H${forecast.x + forecast.width - 1}${runsOut ? 'M' : 'V'}${
            runsOut ? `${forecast.x + forecast.width - 1} ` : ''
          }${height - margin - 1}H${forecast.x}`}
        />
      )}
      {safe !== null && (
        <path
          className="strip-forecast is-safe"
          d={`M${safe.x} ${margin + 0.3 * barHeight}H${safe.x + safe.width - 1}${safeRunsOut ? 'M' : 'V'}${
            safeRunsOut ? `${safe.x + safe.width - 1} ` : ''
          }${height - margin - 0.3 * barHeight}H${safe.x}`}
        />
      )}
      {soldOn === null &&
        paymentsOn.map((day) => {
          const x = Math.round(xOf(scale, dayNumber(day) + 0.5)) + 0.5;
          return x < 0 || x > width ? null : (
            <path
              key={day}
              className="strip-payment"
              d={`M${x} ${height - margin - 1}V${height}M${x - 3} ${height - 0.5}H${x + 3}`}
            />
          );
        })}
      <line className="strip-today" x1={todayX} x2={todayX} y1="0" y2={height} />
      {soldX !== null && soldX >= 0 && (
        <line className="strip-end" x1={soldX} x2={soldX} y1={margin - 2} y2={height - margin + 2} />
      )}
      {evenX !== null && evenX >= 0 && evenX <= width && (
        <path
          className="strip-even"
          d={`M${evenX - 4} ${margin - 6}H${evenX + 4}L${evenX} ${margin}ZM${evenX} ${margin}V${height - margin + 4}`}
        />
      )}
      {hidden > 0 && (
        <g className="strip-hidden">
          <rect x="0" y={margin - 1} width={String(hidden).length * 7 + 13} height={barHeight + 2} />
          <text x="2" y={height / 2 + 4}>{`\u2039 ${hidden}`}</text>
        </g>
      )}
    </svg>
  );
}
