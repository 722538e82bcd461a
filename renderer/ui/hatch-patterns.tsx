// The fill of each cause as an SVG pattern, drawn once for the whole page. Colours and hatches come from the domain, none is chosen here.
import { type Cause, causesInOrder } from '../../app/domain/time/cause.ts';
import { causeLooks, type Hatch, okabeIto } from '../../app/domain/time/cause-look.ts';

/** Side of the tile after which a hatch repeats, in pixels. Even, so that upright and level lines fall on whole pixels. */
const tile = 6;

const hatchPaths: Readonly<Record<Hatch, string>> = {
  plain: '',
  open: '',
  rising: 'M-1.5 1.5 L1.5 -1.5 M-1 7 L7 -1 M4.5 7.5 L7.5 4.5',
  falling: 'M-1.5 4.5 L1.5 7.5 M-1 -1 L7 7 M4.5 -1.5 L7.5 1.5',
  crossed: 'M-1 7 L7 -1 M-1 -1 L7 7',
  level: 'M0 1.5 H6 M0 4.5 H6',
  upright: 'M1.5 0 V6 M4.5 0 V6',
  grid: 'M0 1.5 H6 M0 4.5 H6 M1.5 0 V6 M4.5 0 V6',
  dotted: '',
};

/** The one dark colour of the set takes light lines, all others dark ones. */
function lineClass(cause: Cause): string {
  return causeLooks[cause].colour === okabeIto.blue ? 'hatch-line is-light' : 'hatch-line';
}

export function hatchUrl(cause: Cause): string {
  return `url(#hatch-${cause})`;
}

export function HatchPatterns() {
  return (
    <svg className="hatch-patterns" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        {causesInOrder.map((cause) => {
          const { colour, hatch } = causeLooks[cause];
          return (
            <pattern key={cause} id={`hatch-${cause}`} width={tile} height={tile} patternUnits="userSpaceOnUse">
              {hatch !== 'open' && <rect width={tile} height={tile} fill={colour} />}
              {hatchPaths[hatch] !== '' && <path className={lineClass(cause)} d={hatchPaths[hatch]} />}
              {hatch === 'dotted' && (
                <>
                  <circle className="hatch-dot" cx="1.5" cy="1.5" r="1" />
                  <circle className="hatch-dot" cx="4.5" cy="4.5" r="1" />
                </>
              )}
            </pattern>
          );
        })}
      </defs>
    </svg>
  );
}
