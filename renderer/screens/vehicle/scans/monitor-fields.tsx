// The inspection monitors of a scan in its form: four bytes, or ticks that write them. Both show the same reading.
import { useState } from 'react';
import {
  emptyMonitorBytes,
  type MonitorState,
  monitorBytesFrom,
  possibleMonitors,
  withCodeCount,
  withIgnition,
  withLamp,
  withMonitor,
} from '../../../../app/domain/diagnosis/monitor-bytes.ts';
import {
  type MonitorName,
  type MonitorReading,
  monitorWords,
  readMonitors,
} from '../../../../app/domain/diagnosis/readiness-monitors.ts';
import type { MonitorBytes } from '../../../../app/domain/diagnosis/scan.ts';
import { hexByte } from '../../../../app/domain/diagnosis/trouble-code.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { monitorText } from '../../../text/scans.ts';
import { Button } from '../../../ui/button.tsx';
import { CheckField } from '../../../ui/check-field.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { MonitorJudgementLines } from './monitor-judgement.tsx';
import { readBytes } from './raw-bytes.ts';
import type { ScanValue } from './scan-draft.ts';

const stateOptions = (['none', 'complete', 'incomplete'] as const).map((value) => ({
  value,
  label: monitorText.states[value],
}));
const ignitionOptions = (['spark', 'compression'] as const).map((value) => ({
  value,
  label: monitorText.ignitions[value],
}));

function stateOf(reading: MonitorReading, name: MonitorName): MonitorState {
  const monitor = reading.monitors.find((one) => one.name === name);
  if (monitor === undefined) return 'none';
  return monitor.isComplete ? 'complete' : 'incomplete';
}

function showBytes(bytes: MonitorBytes): string {
  return bytes.map(hexByte).join(' ');
}

/** The bytes as text. What is no four bytes stays where it was typed and changes nothing. */
function BytesField({
  bytes,
  onChange,
}: {
  readonly bytes: MonitorBytes;
  readonly onChange: (bytes: MonitorBytes) => void;
}) {
  const [typed, setTyped] = useState<string | null>(null);
  const isRead = (text: string) => {
    const read = readBytes(text);
    return read.ok ? monitorBytesFrom(read.bytes) : null;
  };
  return (
    <TextField
      label={monitorText.bytes}
      value={typed ?? showBytes(bytes)}
      onChange={(text) => {
        const read = isRead(text);
        setTyped(text);
        if (read !== null) onChange(read);
      }}
      onCommit={(text) => {
        if (isRead(text) !== null) setTyped(null);
      }}
      problem={typed !== null && isRead(typed) === null ? monitorText.notFourBytes : undefined}
      hint={monitorText.bytesHint}
      code
    />
  );
}

export function MonitorFields({ edit }: { readonly edit: Editing<ScanValue> }) {
  const { vehicle, desk } = useVehicle();
  const { monitorBytes } = edit.value;
  const set = (bytes: MonitorBytes) => edit.set({ monitorBytes: bytes });
  if (vehicle.identity.drive === 'electric' && monitorBytes === null)
    return <p className="field-hint">{monitorText.notApplicable}</p>;
  const reading = monitorBytes === null ? null : readMonitors(monitorBytes);
  if (monitorBytes === null || reading === null)
    return (
      <div className="section-buttons">
        <Button onPress={() => set(emptyMonitorBytes('spark'))}>{monitorText.enter}</Button>
      </div>
    );
  const unit = desk.shop?.dealer.distanceUnit ?? 'km';
  const distance = edit.value.distanceSinceClear;
  return (
    <fieldset className="field-group">
      <legend>{monitorText.title}</legend>
      <div className="field-grid">
        <BytesField bytes={monitorBytes} onChange={set} />
        <SelectField
          label={monitorText.ignition}
          value={reading.ignition}
          onChange={(ignition) => set(withIgnition(monitorBytes, ignition))}
          options={ignitionOptions}
        />
        <NumberField
          label={monitorText.count}
          value={reading.confirmedCodeCount}
          onChange={(count) => set(withCodeCount(monitorBytes, count ?? 0))}
          maximum={127}
        />
        <NumberField label={monitorText.warmUps} {...edit.at('warmUpsSinceClear')} maximum={255} />
        <NumberField
          label={monitorText.distance}
          value={distance?.reading ?? null}
          onChange={(typed) =>
            edit.set({ distanceSinceClear: typed === null ? null : { reading: typed, unit: distance?.unit ?? unit } })
          }
          problem={edit.problemAt('distanceSinceClear')}
          unit={distance?.unit ?? unit}
        />
        <CheckField
          label={monitorText.lamp}
          value={reading.isLampCommanded}
          onChange={(isOn) => set(withLamp(monitorBytes, isOn))}
        />
      </div>
      <div className="field-grid monitor-grid">
        {possibleMonitors(reading.ignition).map((name) => (
          <SelectField
            key={name}
            label={`${monitorWords[name].charAt(0).toUpperCase()}${monitorWords[name].slice(1)}`}
            value={stateOf(reading, name)}
            onChange={(state) => set(withMonitor(monitorBytes, name, state))}
            options={stateOptions}
          />
        ))}
      </div>
      <MonitorJudgementLines scan={{ ...edit.value, monitorBytes, modules: [] }} />
      <div className="section-buttons">
        <Button
          kind="quiet"
          onPress={() => edit.set({ monitorBytes: null, warmUpsSinceClear: null, distanceSinceClear: null })}
        >
          {monitorText.takeOut}
        </Button>
      </div>
    </fieldset>
  );
}
