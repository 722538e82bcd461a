// Whether a vehicle's inspection monitors would pass a given inspection. Looks at the reading only: the lamp bulb, the connector and
// everything else an inspector looks at is not known here.
import { plural } from '../shared/text.ts';
import type { InspectionFuel, InspectionRule, InspectionScheme } from './inspection-schemes.ts';
import { type MonitorName, type MonitorReading, monitorWords } from './readiness-monitors.ts';

export type MonitorJudgement = {
  /** 'no-rule': the scheme says nothing for this year and fuel. 'not-applicable': battery-electric vehicles have no such monitors. */
  readonly verdict: 'passes' | 'fails' | 'no-rule' | 'not-applicable';
  readonly reasons: readonly string[];
  /** Incomplete monitors that the scheme counts: the continuous ones are left out (the usual way of counting, common practice). */
  readonly counted: readonly MonitorName[];
  readonly rule: InspectionRule | null;
};

/**
 * A commanded lamp fails everywhere, whatever the monitors say (40 CFR 85.2207; 16 CCR 3340.42.2(c); MOT inspection manual 8.2).
 * `permanentCodeCount` is null where it was not read.
 */
export function judgeMonitors(
  reading: MonitorReading,
  vehicle: {
    readonly scheme: InspectionScheme;
    readonly modelYear: number;
    readonly fuel: InspectionFuel;
    readonly permanentCodeCount?: number | null;
    readonly warmUpsSinceClear?: number | null;
    readonly milesSinceClear?: number | null;
  },
): MonitorJudgement {
  const { scheme, modelYear, fuel } = vehicle;
  const counted = reading.monitors.filter((one) => !one.isComplete && !one.isContinuous).map((one) => one.name);
  if (fuel === 'electric') {
    const reason = 'A battery-electric vehicle has no emission monitors.';
    return { verdict: 'not-applicable', reasons: [reason], counted: [], rule: null };
  }
  const rule =
    scheme.rules.find(
      (one) =>
        one.fuels.includes(fuel) &&
        one.fromModelYear <= modelYear &&
        (one.toModelYear === null || modelYear <= one.toModelYear),
    ) ?? null;
  const failures = [
    ...(reading.isLampCommanded
      ? ['The engine warning lamp is commanded on; that fails whatever the monitors say.']
      : []),
    ...(rule === null ? [] : failuresByRule(rule, counted)),
    ...failuresByPermanentCodes(vehicle, reading.isLampCommanded),
  ];
  const cautions = cautionsAbout(reading, fuel, rule);
  if (failures.length > 0) return { verdict: 'fails', reasons: [...failures, ...cautions], counted, rule };
  if (rule === null) {
    const reason = `${scheme.name} has no rule here for model year ${modelYear} and ${fuel}. Look it up before relying on it.`;
    return { verdict: 'no-rule', reasons: [reason, ...cautions], counted, rule };
  }
  return { verdict: 'passes', reasons: cautions, counted, rule };
}

function failuresByRule(rule: InspectionRule, counted: readonly MonitorName[]): readonly string[] {
  const { allowance } = rule;
  if (allowance.kind === 'not-looked-at') return [];
  if (allowance.kind === 'any') {
    if (counted.length <= allowance.most) return [];
    const amount = plural(counted.length, 'monitor is', 'monitors are');
    return [`${amount} incomplete (${listMonitors(counted)}); at most ${allowance.most} may be. Drive and read again.`];
  }
  const refused = counted.filter((name) => !allowance.monitors.includes(name));
  if (refused.length === 0) return [];
  const allowed = allowance.monitors.length === 0 ? 'None' : `Only ${listMonitors(allowance.monitors)}`;
  return [`Incomplete: ${listMonitors(refused)}. ${allowed} may be. Drive and read again.`];
}

function failuresByPermanentCodes(
  vehicle: Parameters<typeof judgeMonitors>[1],
  isLampCommanded: boolean,
): readonly string[] {
  const { permanentCodes } = vehicle.scheme;
  const count = vehicle.permanentCodeCount ?? 0;
  if (permanentCodes === null || count === 0 || vehicle.modelYear < permanentCodes.fromModelYear) return [];
  const isDrivenEnough =
    !isLampCommanded &&
    (vehicle.warmUpsSinceClear ?? 0) >= permanentCodes.warmUps &&
    (vehicle.milesSinceClear ?? 0) >= permanentCodes.distanceMiles;
  return isDrivenEnough
    ? []
    : [`${plural(count, 'permanent code is', 'permanent codes are')} stored, which fails here.`];
}

function cautionsAbout(reading: MonitorReading, fuel: InspectionFuel, rule: InspectionRule | null): readonly string[] {
  const isDieselReading = reading.ignition === 'compression';
  const contradiction = `The reading is of a ${reading.ignition}-ignition engine but the vehicle is entered as ${fuel}. Check which is right.`;
  return [
    ...(isDieselReading !== (fuel === 'diesel') && fuel !== 'hybrid' ? [contradiction] : []),
    ...(rule !== null && rule.remark !== '' ? [rule.remark] : []),
  ];
}

function listMonitors(names: readonly MonitorName[]): string {
  return names.map((name) => monitorWords[name]).join(', ');
}
