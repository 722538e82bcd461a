// What is typed while a vehicle is taken in, flat, and how it becomes the four sections of the record. Pure.
import type { Dealer } from '../../../app/domain/fleet/shop.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { ok, type Result } from '../../../app/domain/shared/result.ts';
import type { ChangeProblem } from '../../../app/domain/vehicle/change-problem.ts';
import type { DriveKind } from '../../../app/domain/vehicle/identity.ts';
import type { Market } from '../../../app/domain/vehicle/market.ts';
import { noTargets } from '../../../app/domain/vehicle/purchase.ts';
import { readVin } from '../../../app/domain/vehicle/vin.ts';

export type TakeInDraft = {
  readonly vin: string;
  readonly vinReason: string;
  readonly stockNumber: string;
  readonly modelYear: number | null;
  readonly make: string;
  readonly model: string;
  readonly body: string;
  readonly colour: string;
  readonly drive: DriveKind;
  readonly odometer: number | null;
  readonly odometerUnit: 'km' | 'mi';
  readonly location: string;
  readonly keyTag: string;
  readonly boughtOn: Day | null;
  readonly source: string;
  readonly priceCents: number | null;
  readonly feesCents: number | null;
  readonly transportCents: number | null;
  readonly askingCents: number | null;
  readonly isHere: boolean;
  /** The day it arrived, or is expected. */
  readonly arrivalOn: Day | null;
  readonly paperKind: string;
  readonly paperIsHere: boolean;
  readonly paperExpectedOn: Day | null;
  readonly keysReceived: number | null;
  readonly fundingPlanId: string | null;
};

export function emptyTakeIn(
  today: Day,
  dealer: Pick<Dealer, 'distanceUnit' | 'paperName'> | null,
  stockNumber: string,
): TakeInDraft {
  return {
    vin: '',
    vinReason: '',
    stockNumber,
    modelYear: null,
    make: '',
    model: '',
    body: '',
    colour: '',
    drive: 'combustion',
    odometer: null,
    odometerUnit: dealer?.distanceUnit ?? 'mi',
    location: '',
    keyTag: '',
    boughtOn: today,
    source: '',
    priceCents: null,
    feesCents: null,
    transportCents: null,
    askingCents: null,
    isHere: false,
    arrivalOn: null,
    paperKind: dealer?.paperName ?? '',
    paperIsHere: false,
    paperExpectedOn: null,
    keysReceived: null,
    fundingPlanId: null,
  };
}

function onlyYearOf(vin: string, market: Market): number | null {
  const { modelYears } = readVin(vin, { market });
  return modelYears.length === 1 ? (modelYears[0] ?? null) : null;
}

/**
 * The model year after the VIN was typed: the one it names, where the rule leaves no choice and nobody wrote another year; what was
 * filled in from the VIN before goes with that VIN.
 */
export function yearAfterVin(
  before: Pick<TakeInDraft, 'vin' | 'modelYear'>,
  vin: string,
  market: Market,
): number | null {
  const isOwn = before.modelYear !== null && before.modelYear !== onlyYearOf(before.vin, market);
  return isOwn ? before.modelYear : onlyYearOf(vin, market);
}

/** The sections, to be judged by the record's own schema. Fees and transport left empty are none; a price left empty is not. */
export function finishTakeIn(draft: TakeInDraft, today: Day): Result<unknown, readonly ChangeProblem[]> {
  const { odometer, odometerUnit, isHere, arrivalOn, paperIsHere } = draft;
  return ok({
    identity: {
      stockNumber: draft.stockNumber.trim(),
      vin: draft.vin,
      vinReason: draft.vinReason,
      modelYear: draft.modelYear,
      make: draft.make.trim(),
      model: draft.model.trim(),
      body: draft.body.trim(),
      colour: draft.colour.trim(),
      drive: draft.drive,
      odometer: odometer === null ? null : { reading: odometer, unit: odometerUnit },
      location: draft.location.trim(),
      keyTag: draft.keyTag.trim(),
    },
    purchase: {
      boughtOn: draft.boughtOn,
      source: draft.source.trim(),
      priceCents: draft.priceCents,
      feesCents: draft.feesCents ?? 0,
      transportCents: draft.transportCents ?? 0,
      paperKind: draft.paperKind.trim(),
      paperExpectedOn: paperIsHere ? null : draft.paperExpectedOn,
      paperReceivedOn: paperIsHere ? today : null,
      keysReceived: draft.keysReceived,
      fundingPlanId: draft.fundingPlanId,
    },
    arrival: { arrivedOn: isHere ? (arrivalOn ?? today) : null, expectedOn: isHere ? null : arrivalOn },
    targets: { ...noTargets, askingCents: draft.askingCents },
  });
}

const fieldOfPath: Readonly<Record<string, keyof TakeInDraft>> = {
  'identity.odometer': 'odometer',
  'arrival.arrivedOn': 'arrivalOn',
  'arrival.expectedOn': 'arrivalOn',
  'purchase.paperReceivedOn': 'paperIsHere',
};

/** The field of the form that a path of the record's sections stands for: 'identity.vin' is 'vin'. */
export function fieldOfTakeIn(path: string): string {
  const known = Object.entries(fieldOfPath).find(([prefix]) => path === prefix || path.startsWith(`${prefix}.`));
  return known?.[1] ?? path.replace(/^(identity|purchase|arrival|targets)\./, '');
}
