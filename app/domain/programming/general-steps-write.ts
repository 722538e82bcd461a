// Steps of the general rule pack that write software, VIN and configuration, as data. The maker’s service information comes before them.
import {
  exchanged,
  fittedKinds,
  foreign,
  modulesOf,
  somethingIsWritten,
  step,
  writtenKinds,
} from './general-pack-words.ts';
import type { StepTemplate } from './rule-pack.ts';

export const writeSteps: readonly StepTemplate[] = [
  step(
    {
      id: 'connect-supply',
      stage: 'write',
      scope: 'job',
      fits: modulesOf([...fittedKinds, 'keys']),
      title: 'Connect the supply and write down the volts',
      detail: 'Stabilised, at the maker’s voltage. Consumers off, doors and bonnet as the maker says.',
      routes: ['by-hand'],
      typicalMinutes: 10,
      reason: 'A drop in voltage during a write can leave a module that no longer answers.',
    },
    { when: somethingIsWritten, cautions: ['supply-voltage'], meets: ['supply-connected'] },
  ),
  step(
    {
      id: 'update-software',
      stage: 'write',
      scope: 'module',
      fits: modulesOf(fittedKinds, ['kept']),
      title: 'Write the software of {module} anew',
      detail:
        'The version for this VIN. Nobody touches the vehicle while it runs. Leave it out if the module needs no new software.',
      routes: ['on-vehicle', 'pass-through'],
      typicalMinutes: 45,
      reason: 'Where no module is exchanged, new software in place is what is left to do.',
      source: 'common practice, no source; pass-through: SAE J2534',
    },
    {
      when: { not: { has: modulesOf('any', exchanged) } },
      cannotBeUndone: true,
      cautions: ['never-interrupt', 'supply-voltage'],
      gates: ['codes-recorded', 'supply-connected'],
    },
  ),
  step(
    {
      id: 'write-software',
      stage: 'write',
      scope: 'module',
      fits: modulesOf(writtenKinds, foreign),
      title: 'Write the software of {module}',
      detail: 'The version for this VIN. Nobody touches the vehicle while it runs.',
      routes: ['pass-through', 'on-vehicle', 'bench', 'sent-out'],
      typicalMinutes: 45,
      reason: 'A module from stock or from another vehicle seldom holds the version that this one needs.',
      source: 'common practice, no source; pass-through: SAE J2534',
    },
    {
      cannotBeUndone: true,
      cautions: ['never-interrupt', 'supply-voltage'],
      gates: ['part-in-hand', 'supply-connected'],
    },
  ),
  step(
    {
      id: 'write-vin',
      stage: 'write',
      scope: 'module',
      fits: modulesOf(writtenKinds, foreign),
      title: 'Write the VIN into {module}',
      detail: 'Read it from the vehicle and from the screen, character by character, before you confirm.',
      routes: ['on-vehicle', 'pass-through', 'bench'],
      typicalMinutes: 10,
      reason: 'Modules that tell different VINs do not work together, and the VIN stays written.',
    },
    {
      cannotBeUndone: true,
      cautions: ['vin-permanent', 'never-interrupt', 'supply-voltage'],
      gates: ['part-in-hand', 'vins-compared', 'supply-connected'],
    },
  ),
  step(
    {
      id: 'compare-vin-inside',
      stage: 'write',
      scope: 'module',
      fits: modulesOf(writtenKinds, ['repaired', 'cloned']),
      title: 'Read the VIN out of {module} and compare it',
      detail: 'With the one on the vehicle, character by character.',
      routes: ['on-vehicle', 'pass-through', 'bench'],
      typicalMinutes: 5,
      reason: 'Shows that the right unit came back and that the copy holds.',
    },
    { gates: ['supply-connected'] },
  ),
  step(
    {
      id: 'write-config',
      stage: 'write',
      scope: 'module',
      fits: modulesOf(fittedKinds, foreign),
      title: 'Write the configuration of {module}',
      detail: 'The equipment of this vehicle: from the saved data, or as the maker lists it for this VIN.',
      routes: ['on-vehicle', 'pass-through', 'bench'],
      typicalMinutes: 25,
      reason: 'Until then the module does not know what is fitted.',
    },
    { cautions: ['never-interrupt', 'supply-voltage'], gates: ['part-in-hand', 'supply-connected'] },
  ),
];
