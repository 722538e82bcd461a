// Sheets: which vehicles on the left, the sheet beside it as it would be printed, and the PDF files that were written.
import './sheets.css';
import { useMemo, useState } from 'react';
import type { Role } from '../../../app/domain/fleet/shop.ts';
import { rightsOf } from '../../../app/domain/people/role-rights.ts';
import type { SheetKind } from '../../../app/domain/sheets/sheet.ts';
import { useDesk } from '../../state/desk-store.ts';
import { lotStore } from '../../state/lot-store.ts';
import { openPrinted, type Printed, printSheets, showSheetsFolder } from '../../state/print-sheets.ts';
import { useStore } from '../../state/store.ts';
import { sheetsText } from '../../text/sheets.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { findVehicles, toggled } from './find-vehicles.ts';
import { SheetPreview } from './sheet-preview.tsx';
import { VehicleChoice } from './vehicle-choice.tsx';

/** The main process decides who may print what; this only does not offer the other. */
function kindsFor(role: Role): readonly SheetKind[] {
  return rightsOf(role).prints;
}

function PrintedFiles({ files }: { readonly files: readonly Printed[] }) {
  if (files.length === 0) return null;
  return (
    <section className="printed" aria-label={sheetsText.writtenTitle}>
      <SectionHead
        title={sheetsText.writtenTitle}
        count={files.length}
        action={
          <Button kind="quiet" onPress={() => void showSheetsFolder()}>
            {sheetsText.showFolder}
          </Button>
        }
      />
      <ul>
        {files.map(({ fileName, pages }) => (
          <li key={fileName}>
            <span className="printed-name">{fileName}</span>
            <span className="quiet">{sheetsText.pages(pages)}</span>
            <Button kind="quiet" label={sheetsText.openFile(fileName)} onPress={() => void openPrinted(fileName)}>
              {sheetsText.open}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function SheetsScreen({ vehicleId }: { readonly vehicleId?: string }) {
  const desk = useDesk();
  const { rows, state, trouble } = useStore(lotStore);
  const kinds = kindsFor(desk.person.role);
  const [wantedKind, setKind] = useState<SheetKind>('job-sheet');
  const kind = kinds.includes(wantedKind) ? wantedKind : (kinds[0] ?? 'readiness-sheet');
  const [typed, setTyped] = useState('');
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [seenId, setSeenId] = useState<string | null>(vehicleId ?? null);
  const [isWriting, setIsWriting] = useState(false);
  const [files, setFiles] = useState<readonly Printed[]>([]);
  const found = useMemo(() => findVehicles(rows, typed), [rows, typed]);
  const seen = rows.find((row) => row.id === seenId) ?? null;
  // Vehicles may have left the lot since they were chosen. Without a choice, the one that is seen is meant.
  const chosenHere = rows.filter((row) => chosen.has(row.id)).map((row) => row.id);
  const wanted = chosenHere.length > 0 ? chosenHere : seen === null ? [] : [seen.id];
  const print = async () => {
    setIsWriting(true);
    const written = await printSheets(kind, wanted);
    setIsWriting(false);
    const names = new Set(written.map(({ fileName }) => fileName));
    setFiles((before) => [...written, ...before.filter(({ fileName }) => !names.has(fileName))].slice(0, 60));
  };
  if (state === 'failed') return <EmptyState sentence={trouble} />;
  return (
    <div className="sheets">
      <h1 className="unseen">{sheetsText.title}</h1>
      <div className="sheets-choice">
        <TextField label={sheetsText.search} value={typed} onChange={setTyped} placeholder={sheetsText.searchTip} />
        <div className="sheets-choice-line">
          <span className="quiet">{sheetsText.chosen(chosenHere.length)}</span>
          <Button kind="quiet" onPress={() => setChosen(new Set([...chosenHere, ...found.map((row) => row.id)]))}>
            {sheetsText.chooseShown}
          </Button>
          <Button kind="quiet" onPress={() => setChosen(new Set())}>
            {sheetsText.chooseNone}
          </Button>
        </div>
        {found.length === 0 ? (
          <EmptyState sentence={rows.length === 0 ? sheetsText.noVehicles : sheetsText.none} />
        ) : (
          <VehicleChoice
            rows={found}
            chosen={chosen}
            seenId={seenId}
            onSee={setSeenId}
            onToggle={(id) => setChosen((before) => toggled(before, id))}
          />
        )}
      </div>
      <div className="sheets-paper">
        <div className="sheets-tools">
          <SelectField
            label={sheetsText.kind}
            value={kind}
            onChange={setKind}
            options={kinds.map((value) => ({ value, label: sheetsText.kinds[value] }))}
          />
          <p className="quiet">{sheetsText.kindsFor[kind]}</p>
          <Button
            kind="main"
            onPress={() => void print()}
            isDisabled={wanted.length === 0 || isWriting}
            whyDisabled={isWriting ? sheetsText.writing : sheetsText.whyNothing}
          >
            {wanted.length > 1 ? sheetsText.saveMany(wanted.length) : sheetsText.save}
          </Button>
        </div>
        <PrintedFiles files={files} />
        {seen === null ? <EmptyState sentence={sheetsText.pickOne} /> : <SheetPreview kind={kind} row={seen} />}
      </div>
    </div>
  );
}
