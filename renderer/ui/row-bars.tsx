// A chart of level bars, one row each, with the words at its left and the figure at its end. Draws what it is given; sums nothing.
import './row-bars.css';
import { useRef } from 'react';
import { useWidth } from './use-width.ts';

export type BarSegment = {
  readonly key: string;
  readonly value: number;
  readonly fill: string;
  readonly isOpen?: boolean;
};
export type BarRow = {
  readonly key: string;
  readonly label: string;
  /** Negative values go left of nought. */
  readonly segments: readonly BarSegment[];
  /** Drawn as an upright mark on the same scale. */
  readonly mark?: number | null;
  readonly figure: string;
};

const rowHeight = 24;
const barHeight = 14;
const labelRoom = 130;
const figureRoom = 110;

export function RowBars({ rows, label }: { readonly rows: readonly BarRow[]; readonly label: string }) {
  const root = useRef<HTMLDivElement>(null);
  const width = useWidth(root);
  const sums = rows.map(({ segments }) => segments.reduce((sum, { value }) => sum + value, 0));
  const values = [0, ...sums, ...rows.flatMap(({ mark }) => mark ?? [])];
  const least = Math.min(...values);
  const span = Math.max(1, Math.max(...values) - least);
  const room = Math.max(10, width - labelRoom - figureRoom);
  const xOf = (value: number) => labelRoom + ((value - least) / span) * room;
  const height = rows.length * rowHeight + 4;
  return (
    <div ref={root} className="row-bars">
      {width > 0 && (
        <svg width={width} height={height} role="img" aria-label={label}>
          <title>{label}</title>
          {rows.map((row, index) => {
            const top = index * rowHeight + (rowHeight - barHeight) / 2;
            let reached = 0;
            return (
              <g key={row.key}>
                <text className="bar-label" x={labelRoom - 8} y={top + 11} textAnchor="end">
                  {row.label}
                </text>
                {row.segments.map(({ key, value, fill, isOpen = false }) => {
                  const from = Math.min(reached, reached + value);
                  reached += value;
                  return (
                    <rect
                      key={key}
                      className={isOpen ? 'bar-open' : 'bar-fill'}
                      x={xOf(from)}
                      y={top}
                      width={Math.max(0, (Math.abs(value) / span) * room)}
                      height={barHeight}
                      fill={isOpen ? 'none' : fill}
                    />
                  );
                })}
                {row.mark !== undefined && row.mark !== null && (
                  <path className="bar-mark" d={`M${xOf(row.mark)} ${top - 3}V${top + barHeight + 3}`} />
                )}
                <text
                  className="bar-figure"
                  x={Math.max(xOf(Math.max(0, sums[index] ?? 0, row.mark ?? 0)), xOf(0)) + 6}
                  y={top + 11}
                >
                  {row.figure}
                </text>
              </g>
            );
          })}
          <line className="bar-nought" x1={xOf(0)} x2={xOf(0)} y1="0" y2={height} />
        </svg>
      )}
    </div>
  );
}
