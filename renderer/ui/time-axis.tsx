// The common axis over the strips: months, weeks, today. A picture for the eye; the strips say their days in words themselves.
import './hold-strip.css';
import { type Day, dayNumber } from '../../app/domain/shared/day.ts';
import { monthName } from '../../app/domain/shared/show-day.ts';
import { sayMonth } from '../text/say-day.ts';
import { type Axis, scaleOf, ticksOf, xOf } from './strip-geometry.ts';

export type TimeAxisProps = { readonly axis: Axis; readonly width: number; readonly today: Day };

const height = 30;
/** Room a week's number needs, and the room a month's name needs, in pixels. */
const weekRoom = 17;
const monthRoom = 34;
/** Room a month needs with its year. Without it, it keeps its letters in every form: a bare 03 above days in digits would say nothing. */
const yearRoom = 64;

export function TimeAxis({ axis, width, today }: TimeAxisProps) {
  if (width <= 0) return null;
  const scale = scaleOf(axis, width);
  const ticks = ticksOf(axis, width);
  const months = ticks.filter((tick) => tick.kind === 'month');
  const weeks = ticks.filter((tick) => tick.kind === 'week');
  const showsWeekNumbers = scale.dayWidth * 7 >= weekRoom;
  const firstMonthX = months[0]?.x ?? width;
  const todayX = Math.round(xOf(scale, dayNumber(today))) + 0.5;
  return (
    <svg className="time-axis" width={width} height={height} aria-hidden="true" focusable="false">
      {firstMonthX > monthRoom && (
        <text x="2" y="11">
          {monthName(axis.from)}
        </text>
      )}
      {weeks.map(({ x, day }) => (
        <g key={day}>
          <line className="axis-week" x1={Math.round(x) + 0.5} x2={Math.round(x) + 0.5} y1="25" y2={height} />
          {showsWeekNumbers && x + weekRoom < width && (
            <text x={Math.round(x) + 2} y="24">
              {Number(day.slice(8))}
            </text>
          )}
        </g>
      ))}
      {months.map(({ x, day }) => (
        <g key={day}>
          <line className="axis-month" x1={Math.round(x) + 0.5} x2={Math.round(x) + 0.5} y1="2" y2={height} />
          {x + monthRoom < width && (
            <text x={Math.round(x) + 4} y="11">
              {day.slice(5, 7) === '01' && scale.dayWidth * 31 >= yearRoom ? sayMonth(day) : monthName(day)}
            </text>
          )}
        </g>
      ))}
      <path className="axis-today" d={`M${todayX - 4} ${height - 6}H${todayX + 4}L${todayX} ${height}Z`} />
    </svg>
  );
}
