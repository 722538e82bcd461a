// Steps of programming as the invented shop wrote them into its jobs. Not the program's own list of usual steps, which may change freely.
import type { ModuleOrigin, ProgrammingStep } from '../../domain/programming/programming-job.ts';

type Step = Omit<ProgrammingStep, 'id'>;

function step(title: string, typicalMinutes: number, more: Partial<Step> = {}): Step {
  return {
    title,
    detail: '',
    cautions: [],
    cannotBeUndone: false,
    needsPart: false,
    needsCode: false,
    typicalMinutes,
    leftOutReason: '',
    ...more,
  };
}

const readOld = step('Read the old module and save its data', 25, {
  detail: 'If it does not answer, write that down and take the data from the maker’s list.',
  cautions: ['keep-old-module', 'supply-voltage'],
});
const write = step('Write software and configuration', 45, {
  needsPart: true,
  cannotBeUndone: true,
  cautions: ['never-interrupt', 'supply-voltage'],
});
const writeVin = step('Write the VIN', 10, {
  detail: 'Compare with the plate, character by character, before confirming.',
  needsPart: true,
  cannotBeUndone: true,
  cautions: ['vin-permanent', 'never-interrupt', 'supply-voltage'],
});
const teachKeys = step('Match to the immobiliser and teach every key', 30, {
  needsCode: true,
  cautions: ['anti-theft-code', 'supply-voltage'],
});
const tryAll = step('Sleep, wake, clear codes, try every function standing', 25);

function fitted(cautions: Step['cautions']): Step {
  return step('Fit it', 45, { needsPart: true, cautions });
}

/** A body control module, with or without the keys being taught by a code. */
export function bodySteps(origin: ModuleOrigin, needsCode: boolean): readonly Step[] {
  const fitting = fitted(['airbag-battery', 'moving-vehicle', 'keep-old-module']);
  const keys = needsCode ? teachKeys : { ...teachKeys, needsCode: false };
  return origin === 'new' || origin === 'used'
    ? [readOld, fitting, write, writeVin, keys, tryAll]
    : [readOld, fitting, write, tryAll];
}

export function engineSteps(origin: ModuleOrigin): readonly Step[] {
  if (origin === 'kept') return [write, tryAll];
  const clone = step('Copy the saved data onto the replacement on the bench', 40, {
    needsPart: true,
    cannotBeUndone: true,
    cautions: ['never-interrupt', 'supply-voltage'],
  });
  return origin === 'cloned'
    ? [readOld, clone, fitted(['keep-old-module']), tryAll]
    : [readOld, fitted(['keep-old-module']), write, writeVin, teachKeys, tryAll];
}

export const clusterSteps: readonly Step[] = [
  readOld,
  fitted(['airbag-battery', 'keep-old-module']),
  step('Write configuration and mileage as the maker and the law allow', 30, {
    detail: 'Note the reading of both units before; the odometer statement depends on it.',
    needsPart: true,
    cannotBeUndone: true,
    cautions: ['never-interrupt', 'supply-voltage'],
  }),
  tryAll,
];

export const keySteps: readonly Step[] = [
  step('Check what the immobiliser says about each key', 15),
  { ...teachKeys, title: 'Teach every key with the code' },
  step('Lock it, let it sleep, start it with each key', 15),
];

export const radioSteps: readonly Step[] = [
  step('Read the serial number off the unit', 20),
  step('Enter the unlock code', 10, { needsCode: true, cautions: ['anti-theft-code'] }),
];

export const airbagSteps: readonly Step[] = [
  step('Battery off, wait as the maker says, fit it', 60, { needsPart: true, cautions: ['airbag-battery'] }),
  step('Configure it for this VIN', 20, {
    needsPart: true,
    cannotBeUndone: true,
    cautions: ['vin-permanent', 'supply-voltage'],
  }),
  step('Clear the crash memory and see the lamp go out', 10, { cautions: ['supply-voltage'] }),
];

export const gatewaySteps: readonly Step[] = [
  step('Log in at the gateway', 10, { needsCode: true, cautions: ['anti-theft-code'] }),
  step('Clear the codes and set the steering angle zero', 20, { cautions: ['supply-voltage'] }),
];
