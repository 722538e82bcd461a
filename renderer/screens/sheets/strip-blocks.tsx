// The hold strips of a sheet on the screen, with the screen's own strip: one over the whole width, or a column of them in a table.
import './strip-blocks.css';
import type { SheetBlock } from '../../../app/domain/sheets/sheet.ts';
import { legendWords, type StripAxis, type StripOfDays } from '../../../app/domain/sheets/strip-of-days.ts';
import { CauseSwatch } from '../../ui/cause-swatch.tsx';
import { HoldStrip } from '../../ui/hold-strip.tsx';
import { TimeAxis } from '../../ui/time-axis.tsx';

type Legend = Extract<SheetBlock, { kind: 'strip-legend' }>;

/** The paper has one width on the screen, so its strips have one as well. */
const widths = { wide: 738, column: 270 };

export function PaperStripAxis({ axis, isWide = false }: { readonly axis: StripAxis; readonly isWide?: boolean }) {
  return <TimeAxis axis={axis} width={isWide ? widths.wide : widths.column} today={axis.today} />;
}

export function PaperStrip(props: {
  readonly strip: StripOfDays;
  readonly axis: StripAxis;
  readonly isWide?: boolean;
}) {
  const { strip, axis, isWide = false } = props;
  const { likelyOn, safeOn } = strip;
  return (
    <HoldStrip
      stretches={strip.stretches.map((stretch) => ({ ...stretch, what: '' }))}
      boughtOn={strip.boughtOn}
      today={axis.today}
      soldOn={strip.soldOn}
      expectedOn={likelyOn}
      standing={strip.soldOn === null ? (strip.stretches.at(-1)?.cause ?? 'idle') : 'sold'}
      breakEvenOn={strip.breakEvenOn}
      ready={likelyOn !== null && safeOn !== null ? { likelyOn, safeOn } : null}
      axis={axis}
      width={isWide ? widths.wide : widths.column}
      height={isWide ? 32 : 20}
      label={strip.alternateText}
    />
  );
}

export function StripLegend({ block }: { readonly block: Legend }) {
  return (
    <ul className="sheet-legend">
      {legendWords.causes
        .filter(({ cause }) => block.causes.includes(cause))
        .map(({ cause, name }) => (
          <li key={cause}>
            <CauseSwatch standing={cause} /> {name}
          </li>
        ))}
      {block.marks.map((mark) => (
        <li key={mark} className="is-quiet">
          {legendWords[mark]}
        </li>
      ))}
    </ul>
  );
}
