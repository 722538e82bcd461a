// A new fact as its form first shows it: sensible defaults, so that Enter is often all that is left. Pure: today, who and identity passed in.
import type { CodeRequestDraft } from '../../../app/domain/codes/code-request.ts';
import { noRequestLife } from '../../../app/domain/codes/request-facts.ts';
import type { FaultDraft } from '../../../app/domain/diagnosis/fault.ts';
import { isOpenRepair } from '../../../app/domain/diagnosis/fault.ts';
import type { ScanKind } from '../../../app/domain/diagnosis/scan.ts';
import type { PartDraft } from '../../../app/domain/parts/part.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import type { SubletDraft } from '../../../app/domain/work/sublet.ts';

export function freshPart(id: string, today: Day): PartDraft {
  return {
    id,
    neededOn: today,
    what: '',
    partNumber: '',
    supplier: '',
    faultId: null,
    quantity: 1,
    priceCents: null,
    coreChargeCents: 0,
    orderedOn: null,
    expectedOn: null,
    receivedOn: null,
    fittedOn: null,
    returnedOn: null,
    coreReturnedOn: null,
    chases: [],
    note: '',
  };
}

export function freshFault(id: string, today: Day): FaultDraft {
  return {
    id,
    foundOn: today,
    what: '',
    area: 'control-module',
    module: '',
    codes: [],
    note: '',
    decision: null,
    doneOn: null,
    tellBuyer: false,
  };
}

export function freshCodeRequest(id: string, today: Day): CodeRequestDraft {
  return {
    id,
    notedOn: today,
    kind: 'immobiliser',
    module: '',
    deviceSerial: '',
    reason: '',
    faultId: null,
    proof: null,
    askedOn: null,
    askedOf: '',
    expectedOn: null,
    answeredOn: null,
    outcome: null,
    feeCents: 0,
    keptWhere: '',
    note: '',
    ...noRequestLife,
  };
}

export function freshSublet(id: string, today: Day): SubletDraft {
  return {
    id,
    notedOn: today,
    what: '',
    supplier: '',
    area: 'other',
    faultId: null,
    sentOn: null,
    expectedOn: null,
    backOn: null,
    quotedCents: null,
    invoicedCents: null,
    chases: [],
    note: '',
  };
}

/** The kind of scan that is most likely being entered now: the first is the one on arrival; one after all work is the proof. */
export function likelyScanKind(vehicle: Pick<Vehicle, 'scans' | 'faults'>): ScanKind {
  if (vehicle.scans.length === 0) return 'pre-repair';
  return vehicle.faults.length > 0 && !vehicle.faults.some((fault) => fault.decision === null || isOpenRepair(fault))
    ? 'post-repair'
    : 'in-between';
}

/** The only open repair, as the fault that work is most likely booked on; null when there is none or more than one. */
export function likelyFault(vehicle: Pick<Vehicle, 'faults'>): Vehicle['faults'][number] | null {
  const open = vehicle.faults.filter(isOpenRepair);
  return open.length === 1 ? (open[0] ?? null) : null;
}
