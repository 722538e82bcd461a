// The form of one scan: what it was, the report or bytes it came from, its modules with their codes, the inspection monitors.
import { useState } from 'react';
import { scanKindSchema } from '../../../../app/domain/diagnosis/scan.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { rawText, reportText, scanText } from '../../../text/scans.ts';
import { Button } from '../../../ui/button.tsx';
import { CheckField } from '../../../ui/check-field.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { ParagraphField, TextField } from '../../../ui/text-field.tsx';
import { chooseFrom, usedWords } from '../ledger/choices.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { ModuleRows } from './module-rows.tsx';
import { MonitorFields } from './monitor-fields.tsx';
import { RawReply } from './raw-reply.tsx';
import { ReportBox } from './report-box.tsx';
import type { ScanValue } from './scan-draft.ts';

export function ScanForm({ edit }: { readonly edit: Editing<ScanValue> }) {
  const { vehicle, today } = useVehicle();
  const isFresh = edit.value.modules.length === 1;
  const [isReportOpen, setIsReportOpen] = useState(isFresh || edit.value.reportText !== '');
  const [isRawOpen, setIsRawOpen] = useState(false);
  return (
    <>
      <div className="field-grid">
        <SelectField
          label={scanText.kind}
          {...edit.at('kind')}
          options={chooseFrom(scanKindSchema.options, scanText.kinds)}
        />
        <DayField label={scanText.takenOn} {...edit.at('takenOn')} today={today} isRequired />
        <TextField
          label={scanText.device}
          {...edit.at('device')}
          list={usedWords(vehicle.scans.map((scan) => scan.device))}
        />
        <CheckField label={scanText.clearedBefore} {...edit.at('clearedBefore')} />
      </div>
      {isReportOpen && <ReportBox edit={edit} />}
      {isRawOpen && <RawReply edit={edit} onClose={() => setIsRawOpen(false)} />}
      {(!isReportOpen || !isRawOpen) && (
        <div className="section-buttons">
          {!isReportOpen && (
            <Button kind="quiet" onPress={() => setIsReportOpen(true)}>
              {reportText.paste}
            </Button>
          )}
          {!isRawOpen && (
            <Button kind="quiet" onPress={() => setIsRawOpen(true)}>
              {rawText.open}
            </Button>
          )}
        </div>
      )}
      <ModuleRows edit={edit} />
      <MonitorFields edit={edit} />
      <ParagraphField label={scanText.note} {...edit.at('note')} rows={1} />
    </>
  );
}
