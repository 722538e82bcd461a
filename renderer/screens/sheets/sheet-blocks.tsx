// Draws the blocks of a sheet as HTML, for reading on screen. The paper itself is drawn by the printing room, from the same value.
import type { SheetBlock, SheetStep } from '../../../app/domain/sheets/sheet.ts';
import { sheetJobText } from '../../text/sheet-job.ts';
import { sheetsText } from '../../text/sheets.ts';
import { CautionNote } from '../../ui/caution-note.tsx';
import { Figures, LetterHead, Needs, WindowCard } from './large-blocks.tsx';
import { Pictures } from './picture-blocks.tsx';
import { PaperStrip, PaperStripAxis, StripLegend } from './strip-blocks.tsx';

type Of<Kind extends SheetBlock['kind']> = Extract<SheetBlock, { kind: Kind }>;

function emphasised(emphasis: 'none' | 'strong' | 'quiet'): string | undefined {
  return emphasis === 'none' ? undefined : `is-${emphasis}`;
}

function StepLine({ step, hasInitials }: { readonly step: SheetStep; readonly hasInitials: boolean }) {
  return (
    <li className={`sheet-step is-${step.state}`}>
      <span className="sheet-box" role="img" aria-label={sheetsText.stepStates[step.state]}>
        {step.state === 'done' ? '✓' : ''}
      </span>
      <div>
        <span>{step.text}</span>
        {step.marks.map((mark) => (
          <span key={mark.text} className={`sheet-mark ${emphasised(mark.emphasis) ?? ''}`}>
            {mark.text}
          </span>
        ))}
        {step.detail !== '' && <p className="is-quiet">{step.detail}</p>}
        <Needs needs={step.needs ?? []} />
        {(step.blanks.length > 0 || hasInitials) && (
          <p className="sheet-blanks">
            {[...step.blanks, ...(hasInitials ? [sheetsText.initials] : [])].map((blank) => (
              <span key={blank}>
                {blank} <i aria-hidden="true" />
              </span>
            ))}
          </p>
        )}
      </div>
    </li>
  );
}

/** The screen shows the beginning of a long table; the paper holds all of it. */
const mostRows = 120;

function Table({ block }: { readonly block: Of<'table'> }) {
  if (block.rows.length === 0) return <p className="is-quiet">{block.whenEmpty}</p>;
  return (
    <table className={`sheet-table has-room-for-${block.rowRoom}`}>
      <caption className="unseen">{block.caption}</caption>
      <thead>
        <tr>
          {block.columns.map((column) => (
            <th key={column.title} scope="col" className={column.align === 'right' ? 'amount' : undefined}>
              {column.title}
            </th>
          ))}
          {block.strips && (
            <th scope="col" aria-label={block.strips.title}>
              <PaperStripAxis axis={block.strips.axis} />
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {block.rows.slice(0, mostRows).map((row, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows of a finished sheet have no identity and never move.
          <tr key={index}>
            {row.map((cell, column) => (
              <td
                key={block.columns[column]?.title ?? column}
                className={[block.columns[column]?.align === 'right' ? 'amount' : '', emphasised(cell.emphasis) ?? '']
                  .filter((name) => name !== '')
                  .join(' ')}
              >
                {cell.text}
              </td>
            ))}
            {block.strips?.items[index] && (
              <td>
                <PaperStrip strip={block.strips.items[index]} axis={block.strips.axis} />
              </td>
            )}
          </tr>
        ))}
      </tbody>
      {block.rows.length > mostRows && (
        <tfoot>
          <tr>
            <td colSpan={block.columns.length + (block.strips ? 1 : 0)} className="is-quiet">
              {sheetJobText.moreRows(block.rows.length - mostRows)}
            </td>
          </tr>
        </tfoot>
      )}
    </table>
  );
}

function Labelled({ rows, className }: { readonly rows: Of<'facts'>['rows']; readonly className: string }) {
  return (
    <dl className={className}>
      {rows.map((row) => (
        <div key={row.label}>
          <dt>{row.label}</dt>
          <dd>{row.value}</dd>
        </div>
      ))}
    </dl>
  );
}

export function Block({ block }: { readonly block: SheetBlock }) {
  switch (block.kind) {
    case 'masthead':
      return (
        <div className="sheet-masthead">
          <p className="sheet-number code">{block.number}</p>
          <p className="sheet-name">{block.name}</p>
          <Labelled rows={block.tags} className="sheet-tags" />
        </div>
      );
    case 'heading':
      return block.level === 2 ? <h3>{block.text}</h3> : <h4>{block.text}</h4>;
    case 'paragraph':
      return <p className={emphasised(block.emphasis)}>{block.text}</p>;
    case 'verdict':
      return (
        <div className={`sheet-verdict ${block.isGood ? 'is-good' : 'is-not-good'}`}>
          <p>{block.text}</p>
          {block.reasons.length > 0 && (
            <ul>
              {block.reasons.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
          )}
        </div>
      );
    case 'facts':
      return <Labelled rows={block.rows} className="sheet-facts" />;
    case 'figures':
      return <Figures block={block} />;
    case 'window-card':
      return <WindowCard block={block} />;
    case 'letter-head':
      return <LetterHead block={block} />;
    case 'caution':
      return (
        <CautionNote
          title={block.title}
          text={block.text}
          more={block.concerns === '' ? '' : sheetsText.concerns(block.concerns)}
        />
      );
    case 'bullets':
      return (
        <ul className="sheet-bullets">
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case 'steps': {
      const List = block.isNumbered ? 'ol' : 'ul';
      return (
        <List
          className={`sheet-steps${block.isNumbered ? ' is-numbered' : ''}`}
          style={block.isNumbered ? { counterReset: `sheet-step ${(block.firstNumber ?? 1) - 1}` } : undefined}
        >
          {block.items.map((step, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: steps of a finished sheet have no identity and never move.
            <StepLine key={index} step={step} hasInitials={block.hasInitials} />
          ))}
        </List>
      );
    }
    case 'table':
      return <Table block={block} />;
    case 'hold-strip':
      return (
        <div className="sheet-strip">
          <PaperStripAxis axis={block.axis} isWide />
          <PaperStrip strip={block.strip} axis={block.axis} isWide />
        </div>
      );
    case 'strip-legend':
      return <StripLegend block={block} />;
    case 'blank-lines':
      return <p className="sheet-lines">{block.label}</p>;
    case 'signatures':
      return (
        <div className="sheet-signatures">
          {block.labels.map((label) => (
            <span key={label}>{label}</span>
          ))}
        </div>
      );
    case 'barcode':
      return (
        <p className="sheet-barcode">
          {sheetsText.barcode(block.label)} <span className="code">{block.value}</span>
        </p>
      );
    case 'pictures':
      return <Pictures block={block} />;
  }
}
