// The vehicle screen: one vehicle with everything known of it. Reads it, and puts the parts in their places; each part is its own file.
import './page/vehicle.css';
import { useEffect, useMemo } from 'react';
import type { VehicleView } from '../../../app/contract/views.ts';
import { useDesk } from '../../state/desk-store.ts';
import { goTo, type VehiclePlace } from '../../state/route-store.ts';
import { useStore } from '../../state/store.ts';
import { changeVehicle, followVehicle, openVehicle, vehicleStore } from '../../state/vehicle-store.ts';
import { errorSentence } from '../../text/errors.ts';
import { vehicleText } from '../../text/vehicle.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { AttachmentsSection } from './attachments/attachments-section.tsx';
import { DropArea } from './attachments/drop-area.tsx';
import { BatterySection } from './battery/battery-section.tsx';
import { ChecksSection } from './checks/checks-section.tsx';
import { CodesSection } from './codes/codes-section.tsx';
import { CostsSection } from './costs/costs-section.tsx';
import { DetailsSection } from './details/details-section.tsx';
import { FaultsSection } from './faults/faults-section.tsx';
import { StandingBetween } from './gates/standing-between.tsx';
import { WhatChanged } from './history/what-changed.tsx';
import { LabourSection } from './labour/labour-section.tsx';
import { maySeeCodes } from './may-change.ts';
import { MoneySection } from './money/money-section.tsx';
import { MoneySummary } from './money/money-summary.tsx';
import { NotesSection } from './notes/notes-section.tsx';
import { jumpTo } from './page/jump.ts';
import { SectionList } from './page/section-list.tsx';
import { readPlace, type SectionKey, visibleSections } from './page/sections.ts';
import { StandingRow } from './page/standing-row.tsx';
import { screenStateOf, VehicleContext } from './page/vehicle-context.ts';
import { VehicleHead } from './page/vehicle-head.tsx';
import { PartsSection } from './parts/parts-section.tsx';
import { ProgrammingSection } from './programming/programming-section.tsx';
import { PurchaseSection } from './purchase/purchase-section.tsx';
import { SaleSection } from './sale/sale-section.tsx';
import { ScansSection } from './scans/scans-section.tsx';
import { VehicleStrip } from './strip/vehicle-strip.tsx';
import { SubletSection } from './sublet/sublet-section.tsx';

function Section({ section, view }: { readonly section: SectionKey; readonly view: VehicleView }) {
  switch (section) {
    case 'details':
      return <DetailsSection />;
    case 'purchase':
      return <PurchaseSection />;
    case 'money':
      return view.costs === null ? null : <MoneySection costs={view.costs} />;
    case 'scans':
      return <ScansSection />;
    case 'faults':
      return <FaultsSection />;
    case 'parts':
      return <PartsSection />;
    case 'codes':
      return <CodesSection />;
    case 'battery':
      return <BatterySection />;
    case 'programming':
      return <ProgrammingSection />;
    case 'labour':
      return <LabourSection />;
    case 'sublet':
      return <SubletSection />;
    case 'costs':
      return <CostsSection />;
    case 'checks':
      return <ChecksSection />;
    case 'attachments':
      return <AttachmentsSection />;
    case 'notes':
      return <NotesSection />;
    case 'sale':
      return <SaleSection />;
  }
}

function OpenVehicle({
  id,
  view,
  place,
}: {
  readonly id: string;
  readonly view: VehicleView;
  readonly place?: VehiclePlace | undefined;
}) {
  const desk = useDesk();
  const state = useMemo(() => screenStateOf(id, view, desk, (change) => changeVehicle(id, change)), [id, view, desk]);
  const sections = visibleSections(view, { seesCodes: maySeeCodes(state.role) });
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each place that was asked for, not for each change of the vehicle.
  useEffect(() => {
    const wanted = place === undefined ? null : readPlace(place);
    if (wanted === null) return;
    const canWrite = 'list' in wanted ? wanted.id !== null && state.canPut(wanted.list) : false;
    jumpTo(wanted, { vehicleId: id, canWrite, gateKey: '' });
  }, [place]);
  return (
    <VehicleContext value={state}>
      <div className="vehicle">
        <VehicleHead />
        <div className="vehicle-body">
          <SectionList keys={sections} />
          <div className="vehicle-content">
            <ScreenPurpose screen="vehicle" />
            <StandingRow />
            <VehicleStrip />
            <div className="vehicle-top">
              <StandingBetween />
              {view.costs !== null && <MoneySummary costs={view.costs} />}
            </div>
            {sections.map((section) => (
              <Section key={section} section={section} view={view} />
            ))}
            {state.role !== 'sales' && <WhatChanged />}
          </div>
        </div>
        <DropArea />
      </div>
    </VehicleContext>
  );
}

export function VehicleScreen({ id, place }: { readonly id: string; readonly place?: VehiclePlace }) {
  const open = useStore(vehicleStore);
  useEffect(() => {
    void openVehicle(id);
  }, [id]);
  useEffect(followVehicle, []);
  if (open.state === 'here' && open.id === id) return <OpenVehicle id={id} view={open.view} place={place} />;
  if (open.state === 'failed' && open.id === id)
    return (
      <EmptyState
        sentence={errorSentence(open.error)}
        action={<Button onPress={() => goTo({ screen: 'lot' })}>{vehicleText.backToLotTip}</Button>}
      />
    );
  return (
    <p className="vehicle-opening" role="status">
      {vehicleText.reading}
    </p>
  );
}
