// A small picture of the partial order: a column for each layer, links between steps, and each step's state by its shape. The list of steps
// says the same in words, so nothing in here can be pressed.
import type { JobProgress, StepProgress } from '../../../../app/domain/programming/job-progress.ts';
import { jobText } from '../../../text/programming.ts';
import { type PicturePlace, type Point, pictureOf } from './plan-picture-places.ts';

const radius = 10;

/** Level where it passes a column, bent between them. */
function curve(points: readonly Point[]): string {
  return points
    .map(({ x, y }, at) => {
      const before = points[at - 1];
      if (before === undefined) return `M${x} ${y}`;
      const start = before.x + radius;
      const end = x - radius;
      const middle = (start + end) / 2;
      return `H${start}C${middle} ${before.y} ${middle} ${y} ${end} ${y}H${x}`;
    })
    .join('');
}

function Shape({ state, x, y }: { readonly state: StepProgress['state']; readonly x: number; readonly y: number }) {
  switch (state) {
    case 'next':
      return <path className="node-shape" d={`M${x - 13} ${y}L${x} ${y - 13}L${x + 13} ${y}L${x} ${y + 13}Z`} />;
    case 'blocked':
      return <rect className="node-shape" x={x - radius} y={y - radius} width={radius * 2} height={radius * 2} />;
    default:
      return <circle className="node-shape" cx={x} cy={y} r={radius} />;
  }
}

function Node({ place }: { readonly place: PicturePlace }) {
  const { x, y, progress } = place;
  const { state, number, step } = progress;
  return (
    <g className={`node is-${state}`}>
      <title>{`${number}. ${step.title}: ${jobText.states[state]}`}</title>
      <Shape state={state} x={x} y={y} />
      {state === 'done' ? (
        <path className="node-tick" d={`M${x - 5} ${y}l4 4 6-8`} />
      ) : (
        <text x={x} y={y + 4} textAnchor="middle">
          {number}
        </text>
      )}
      {state === 'left-out' && <path className="node-strike" d={`M${x - 8} ${y + 8}l16-16`} />}
    </g>
  );
}

function LegendNode({ state }: { readonly state: StepProgress['state'] }) {
  return (
    <li className="plan-legend-entry">
      <svg width="28" height="28" aria-hidden="true" focusable="false">
        <g className={`node is-${state}`}>
          <Shape state={state} x={14} y={14} />
          {state === 'done' && <path className="node-tick" d="M9 14l4 4 6-8" />}
          {state === 'left-out' && <path className="node-strike" d="M6 22l16-16" />}
        </g>
      </svg>
      {jobText.legend[state]}
    </li>
  );
}

export function PlanPicture({ progress }: { readonly progress: JobProgress }) {
  const { steps, next, job } = progress;
  const picture = pictureOf(job.plan, steps);
  const done = steps.filter(({ state }) => state === 'done').length;
  const states = [...new Set(steps.map(({ state }) => state))];
  return (
    <details className="plan-picture" open>
      <summary>{jobText.picture}</summary>
      <div className="plan-picture-scroll">
        <svg
          width={picture.width}
          height={picture.height}
          role="img"
          aria-label={jobText.pictureLabel(
            steps.length,
            picture.columns,
            done,
            next.map(({ number }) => number),
          )}
        >
          {picture.links.map(({ from, to, points }) => (
            <path key={`${from} ${to}`} className="plan-link" d={curve(points)} />
          ))}
          {picture.places.map((place) => (
            <Node key={place.progress.step.id} place={place} />
          ))}
        </svg>
      </div>
      <ul className="plan-legend">
        {states.map((state) => (
          <LegendNode key={state} state={state} />
        ))}
      </ul>
    </details>
  );
}
