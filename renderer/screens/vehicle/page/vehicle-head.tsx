// The head line: which vehicle this is, back to the Lot, and its sheets.

import type { SheetKind } from '../../../../app/domain/sheets/sheet.ts';
import { vehicleTitle } from '../../../../app/domain/vehicle/identity.ts';
import { printSheets } from '../../../state/print-sheets.ts';
import { goTo } from '../../../state/route-store.ts';
import { tableText } from '../../../text/tables.ts';
import { vehicleText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { CsvButton } from '../../../ui/csv-button.tsx';
import { showNumber } from '../../../ui/read-number.ts';
import { groupVin } from '../../../ui/vin-field.tsx';
import { mayPrint } from '../may-change.ts';
import { useVehicle } from './vehicle-context.ts';

/** What everybody prints all day; the other sheets are on the screen of sheets. */
const sheetsAtHand = ['job-sheet', 'readiness-sheet'] as const satisfies readonly SheetKind[];

export function VehicleHead() {
  const { id, vehicle, view, role } = useVehicle();
  const { identity } = vehicle;
  const { odometer } = identity;
  const asides = [
    identity.colour,
    odometer === null ? '' : `${showNumber(odometer.reading)} ${odometer.unit}`,
    identity.location,
    identity.keyTag === '' ? '' : `${identity.keyTag}`,
  ].filter((word) => word !== '');
  const print = (kind: SheetKind) => void printSheets(kind, [id]);
  return (
    <header className="vehicle-head">
      <Button kind="quiet" tip={vehicleText.backToLotTip} shortcut="Esc" onPress={() => goTo({ screen: 'lot' })}>
        ← {vehicleText.backToLot}
      </Button>
      <h1>
        <span className="vehicle-stock code" title={vehicleText.stockNumber}>
          {identity.stockNumber}
        </span>{' '}
        {vehicleTitle(identity)}
      </h1>
      <span className="vehicle-vin code" title={vehicleText.vin}>
        {identity.vin === '' ? vehicleText.noVin : groupVin(identity.vin)}
      </span>
      <span className="vehicle-aside">{asides.join(' · ')}</span>
      {view.isReadOnly && <span className="vehicle-read-only">{vehicleText.readOnly}</span>}
      <span className="vehicle-sheets">
        {role !== 'sales' && <CsvButton what={tableText.ledger} table={() => ({ table: 'ledger', id })} />}
        {sheetsAtHand
          .filter((kind) => mayPrint(role, kind))
          .map((kind) => (
            <Button key={kind} onPress={() => print(kind)}>
              {vehicleText.sheet[kind]}
            </Button>
          ))}
        <Button kind="quiet" tip={vehicleText.otherSheetsTip} onPress={() => goTo({ screen: 'sheets', vehicleId: id })}>
          {vehicleText.otherSheets}
        </Button>
      </span>
    </header>
  );
}
