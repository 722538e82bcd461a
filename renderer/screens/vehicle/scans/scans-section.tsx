// Scans: which modules answered, which codes they held, before and after.
import './scans.css';
import { nothingElseRead, type ScanDraft, scanDraftSchema } from '../../../../app/domain/diagnosis/scan.ts';
import { byTimeTaken } from '../../../../app/domain/diagnosis/scan-order.ts';
import { sayDay } from '../../../text/say-day.ts';
import { scanText } from '../../../text/scans.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { likelyScanKind } from '../fresh-facts.ts';
import type { FactKind } from '../ledger/fact-kind.ts';
import { Ledger } from '../ledger/ledger.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { finishScan, type ScanValue, scanValue } from './scan-draft.ts';
import { ScanForm } from './scan-form.tsx';
import { ScanReading } from './scan-reading.tsx';

const scanFactKind: FactKind<ScanDraft, ScanValue> = {
  list: 'scans',
  schema: scanDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'scans', item }),
  toValue: scanValue,
  finish: finishScan,
};

function codeSummary(scan: ScanDraft): string {
  const codes = scan.modules.flatMap((module) => module.codes.map(({ code }) => code));
  const unique = [...new Set(codes)];
  if (unique.length === 0) return scan.modules.some((module) => module.answered) ? scanText.noCodes : '';
  return `${unique.slice(0, 6).join(' ')}${unique.length > 6 ? ` + ${unique.length - 6}` : ''}`;
}

export function ScansSection() {
  const { vehicle, today } = useVehicle();
  const scans = vehicle.scans.toSorted(byTimeTaken).reverse();
  const nameOf = (scan: ScanDraft) => scanText.name(scanText.kinds[scan.kind], sayDay(scan.takenOn, today));
  return (
    <Ledger
      section="scans"
      title={sectionNames.scans}
      kind={scanFactKind}
      facts={scans}
      nameOf={nameOf}
      addLabel={scanText.add}
      emptySentence={scanText.empty}
      makeNew={(id) => ({
        ...nothingElseRead,
        id,
        takenOn: today,
        kind: likelyScanKind(vehicle),
        device: scans[0]?.device ?? '',
        modules: [],
        note: '',
      })}
      columns={[
        { title: scanText.kind, cell: (scan) => scanText.kinds[scan.kind] },
        { title: scanText.takenOn, cell: (scan) => sayDay(scan.takenOn, today), isTight: true },
        { title: scanText.device, cell: (scan) => scan.device },
        { title: scanText.modules, align: 'right', cell: (scan) => scan.modules.length },
        {
          title: scanText.silentModules,
          cell: (scan) => scan.modules.flatMap((module) => (module.answered ? [] : [module.name])).join(', '),
        },
        { title: scanText.codes, cell: (scan) => <span className="code">{codeSummary(scan)}</span> },
      ]}
      form={(edit) => <ScanForm edit={edit} />}
      reading={<ScanReading />}
    />
  );
}
