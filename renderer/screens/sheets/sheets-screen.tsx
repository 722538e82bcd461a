// Sheets: which vehicles on the left, the sheet beside it as it would be printed, and the PDF files that were written.
import './sheets.css';
import { useEffect, useMemo, useState } from 'react';
import type { Role } from '../../../app/domain/fleet/shop.ts';
import { rightsOf } from '../../../app/domain/people/role-rights.ts';
import { type AnySheetKind, fleetSheetKindSchema, sheetKindSchema } from '../../../app/domain/sheets/sheet.ts';
import { useDesk } from '../../state/desk-store.ts';
import { lotStore } from '../../state/lot-store.ts';
import { useStore } from '../../state/store.ts';
import { sheetJobText } from '../../text/sheet-job.ts';
import { sheetsText } from '../../text/sheets.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyFleet, useIsFleetEmpty } from '../../ui/empty-fleet.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { findVehicles, toggled, type VehicleFilter, vehicleFilters } from './find-vehicles.ts';
import { MarkLookup } from './mark-lookup.tsx';
import { SheetOrder } from './sheet-order.tsx';
import { FleetSheetPreview, SheetPreview } from './sheet-preview.tsx';
import { VehicleChoice } from './vehicle-choice.tsx';
import { WrittenFiles } from './written-files.tsx';

/** The main process decides who may print what; this only does not offer the other. */
function kindsFor(role: Role): readonly AnySheetKind[] {
  const { prints, printsOfFleet } = rightsOf(role);
  return [...prints, ...printsOfFleet];
}

/** Which vehicle and sheet somebody was led to; another object when it happens again. */
export type LedToSheet = { readonly vehicleId?: string; readonly kind?: AnySheetKind };

export function SheetsScreen({ led }: { readonly led: LedToSheet }) {
  const desk = useDesk();
  const { rows, state, trouble } = useStore(lotStore);
  const isEmpty = useIsFleetEmpty();
  const kinds = kindsFor(desk.person.role);
  const [wantedKind, setKind] = useState<AnySheetKind>(led.kind ?? 'job-sheet');
  const kind = kinds.includes(wantedKind) ? wantedKind : (kinds[0] ?? 'readiness-sheet');
  const [typed, setTyped] = useState('');
  const [filter, setFilter] = useState<VehicleFilter>('stock');
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [seenId, setSeenId] = useState<string | null>(led.vehicleId ?? null);
  useEffect(() => {
    if (led.kind !== undefined) setKind(led.kind);
    if (led.vehicleId !== undefined) setSeenId(led.vehicleId);
  }, [led]);
  const found = useMemo(() => findVehicles(rows, typed, filter), [rows, typed, filter]);
  const seen = rows.find((row) => row.id === seenId) ?? null;
  // Vehicles may have left the lot since they were chosen. Without a choice, the one that is seen is meant; of the fleet, all.
  const chosenHere = useMemo(() => rows.filter((row) => chosen.has(row.id)).map((row) => row.id), [rows, chosen]);
  const ofFleet = fleetSheetKindSchema.safeParse(kind);
  const ofVehicle = sheetKindSchema.safeParse(kind);
  const wanted = chosenHere.length > 0 || ofFleet.success || seen === null ? chosenHere : [seen.id];
  if (state === 'failed') return <EmptyState sentence={trouble} />;
  return (
    <div className="sheets">
      <h1 className="unseen">{sheetsText.title}</h1>
      <ScreenPurpose screen="sheets" />
      <div className="sheets-choice">
        <div className="sheets-find">
          <TextField label={sheetsText.search} value={typed} onChange={setTyped} placeholder={sheetsText.searchTip} />
          <SelectField
            label={sheetJobText.filter}
            value={filter}
            onChange={setFilter}
            options={vehicleFilters.map((value) => ({ value, label: sheetJobText.filters[value] }))}
          />
        </div>
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
        <MarkLookup
          onShow={(sheet) => {
            setKind(sheet.kind);
            if (sheet.vehicleId !== null) setSeenId(sheet.vehicleId);
          }}
        />
      </div>
      <div className="sheets-paper">
        <SheetOrder kinds={kinds} kind={kind} onKind={setKind} vehicleIds={wanted} />
        <WrittenFiles />
        {ofFleet.success && <FleetSheetPreview kind={ofFleet.data} vehicleIds={chosenHere} rows={rows} />}
        {ofVehicle.success &&
          (seen === null ? (
            isEmpty ? (
              <EmptyFleet />
            ) : (
              <EmptyState sentence={sheetsText.pickOne} />
            )
          ) : (
            <SheetPreview kind={ofVehicle.data} row={seen} />
          ))}
      </div>
    </div>
  );
}
