// Blocks of sheets that are more than words and tables, drawn for the screen: large figures, the window card, the head of a letter.
import './large-blocks.css';
import type { SheetBlock, SheetStep } from '../../../app/domain/sheets/sheet.ts';
import { sheetsText } from '../../text/sheets.ts';

type Of<Kind extends SheetBlock['kind']> = Extract<SheetBlock, { kind: Kind }>;

export function Figures({ block }: { readonly block: Of<'figures'> }) {
  return (
    <dl className="sheet-figures">
      {block.items.map((item) => (
        <div key={item.label}>
          <dt>{item.label}</dt>
          <dd>{item.value}</dd>
        </div>
      ))}
    </dl>
  );
}

export function WindowCard({ block }: { readonly block: Of<'window-card'> }) {
  const { told } = block;
  return (
    <div className="sheet-window">
      <p className="sheet-window-number">{block.number}</p>
      <p className="sheet-window-name">{block.name}</p>
      {block.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p className={`sheet-window-verdict ${block.isGood ? 'is-good' : 'is-not-good'}`}>{block.verdict}</p>
      {block.price !== '' && <p className="sheet-window-price">{block.price}</p>}
      {told.items.length > 0 && (
        <>
          <h3>{told.title}</h3>
          <ul className="sheet-bullets">
            {told.items.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </>
      )}
      <p className="is-quiet">{block.more}</p>
    </div>
  );
}

export function LetterHead({ block }: { readonly block: Of<'letter-head'> }) {
  return (
    <div className="sheet-letter">
      <p className="sheet-addressee">{block.addressee}</p>
      <dl>
        {block.rows.map((row) => (
          <div key={row.label}>
            <dt>{row.label}</dt>
            <dd>{row.value}</dd>
          </div>
        ))}
      </dl>
      <h3>{block.about}</h3>
    </div>
  );
}

export function Needs({ needs }: { readonly needs: NonNullable<SheetStep['needs']> }) {
  if (needs.length === 0) return null;
  return (
    <p className="sheet-needs">
      {sheetsText.first}{' '}
      {needs.map((need) => (
        <span key={need.text}>
          <span
            className="sheet-box"
            role="img"
            aria-label={need.isMet ? sheetsText.stepStates.done : sheetsText.stepStates.open}
          >
            {need.isMet ? '✓' : ''}
          </span>
          {need.text}
        </span>
      ))}
    </p>
  );
}
