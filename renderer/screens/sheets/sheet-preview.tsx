// A sheet of one vehicle or of many as it would be printed now, drawn for the screen.
import './sheet-head.css';
import { useEffect, useState } from 'react';
import type { AppError } from '../../../app/contract/app-error.ts';
import type { LotRow } from '../../../app/contract/views.ts';
import type { Result } from '../../../app/domain/shared/result.ts';
import type { FleetSheetKind, Sheet, SheetKind } from '../../../app/domain/sheets/sheet.ts';
import { ask } from '../../bridge.ts';
import { logoSource, useLogo } from '../../state/use-logo.ts';
import { errorSentence } from '../../text/errors.ts';
import { showMoment } from '../../text/instant.ts';
import { sheetsText } from '../../text/sheets.ts';
import { EmptyState } from '../../ui/empty-state.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { Block } from './sheet-blocks.tsx';
import { useLetterRequests } from './use-letter-requests.ts';

type Reading = { readonly of: string; readonly answer: Result<Sheet, AppError> };

/** Asks again when another vehicle, another kind, or a changed vehicle is to be seen; the old one stays until the new one is there. */
function useSheet(kind: SheetKind, row: LotRow, factId: string | null): Reading | null {
  const [reading, setReading] = useState<Reading | null>(null);
  // The row is a new value whenever the vehicle changed.
  useEffect(() => {
    let isWanted = true;
    void ask('sheet:preview', { kind, id: row.id, ...(factId === null ? {} : { factId }) }).then((answer) => {
      if (isWanted) setReading({ of: row.id, answer });
    });
    return () => {
      isWanted = false;
    };
  }, [kind, row, factId]);
  return reading;
}

/** A sheet of many vehicles, asked again when the lot or the choice changes. */
export function FleetSheetPreview(props: {
  readonly kind: FleetSheetKind;
  readonly vehicleIds: readonly string[];
  readonly rows: readonly LotRow[];
}) {
  const { kind, vehicleIds, rows } = props;
  const [reading, setReading] = useState<Reading | null>(null);
  // The rows are a new value whenever a vehicle changed.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above.
  useEffect(() => {
    let isWanted = true;
    void ask('sheet:preview-fleet', { kind, vehicleIds: [...vehicleIds] }).then((answer) => {
      if (isWanted) setReading({ of: kind, answer });
    });
    return () => {
      isWanted = false;
    };
  }, [kind, vehicleIds, rows]);
  return <Paper reading={reading?.of === kind ? reading : null} />;
}

export function SheetPreview({ kind, row }: { readonly kind: SheetKind; readonly row: LotRow }) {
  const requests = useLetterRequests(kind, row);
  const [wanted, setWanted] = useState<string | null>(null);
  // Another vehicle has other requests; the first that can be written about is meant until one is chosen.
  const factId = requests.find(({ value }) => value === wanted)?.value ?? requests[0]?.value ?? null;
  const reading = useSheet(kind, row, factId);
  return (
    <>
      {requests.length > 1 && factId !== null && (
        <SelectField label={sheetsText.letterAbout} value={factId} onChange={setWanted} options={requests} />
      )}
      <Paper reading={reading?.of === row.id ? reading : null} />
    </>
  );
}

function Paper({ reading }: { readonly reading: Reading | null }) {
  const logo = useLogo();
  if (reading === null)
    return (
      <p className="quiet" role="status">
        {sheetsText.reading}
      </p>
    );
  if (!reading.answer.ok) return <EmptyState sentence={errorSentence(reading.answer.error)} />;
  const sheet = reading.answer.value;
  return (
    <article
      className={`sheet-paper is-${sheet.paper} is-${sheet.orientation}`}
      aria-label={`${sheet.title}, ${sheet.subject}`}
      lang={sheet.language}
    >
      <header className="sheet-head">
        <h2>{sheet.title}</h2>
        <p className="sheet-dealer">
          {logo !== null && <img className="sheet-logo" src={logoSource(logo)} alt="" />}
          {sheet.dealer.name}
        </p>
      </header>
      {sheet.sampleNotice !== '' && <p className="sheet-sample">{sheet.sampleNotice}</p>}
      {sheet.blocks.map((block, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: blocks of a finished sheet have no identity and never move.
        <Block key={index} block={block} />
      ))}
      <footer className="sheet-foot">
        <p>{sheet.footer}</p>
        <p>{sheetsText.printedBy(sheet.printedBy, showMoment(sheet.printedAt))}</p>
      </footer>
    </article>
  );
}
