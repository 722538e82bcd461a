// A small square filled as the cause is filled in the strips. Never alone: its word stands beside it, written by the caller or by CauseWord.
import './hold-strip.css';
import { type Standing, standingMeanings, standingNames } from '../../app/domain/time/cause.ts';
import { causeLooks } from '../../app/domain/time/cause-look.ts';
import { hatchUrl } from './hatch-patterns.tsx';

export function CauseSwatch({ standing }: { readonly standing: Standing }) {
  const isOpen = standing !== 'sold' && causeLooks[standing].hatch === 'open';
  return (
    <svg className="cause-swatch" width="14" height="14" aria-hidden="true" focusable="false">
      {standing === 'sold' ? (
        <rect className="strip-sold" x="1" y="1" width="12" height="12" />
      ) : (
        <rect
          className={isOpen ? 'strip-open' : 'strip-edge'}
          x="1.5"
          y="1.5"
          width="11"
          height="11"
          fill={isOpen ? 'none' : hatchUrl(standing)}
        />
      )}
    </svg>
  );
}

/** The swatch and its word; the meaning of the word as the tip. */
export function CauseWord({ standing }: { readonly standing: Standing }) {
  return (
    <span className="cause-word" title={standingMeanings[standing]}>
      <CauseSwatch standing={standing} />
      <span>{standingNames[standing]}</span>
    </span>
  );
}
