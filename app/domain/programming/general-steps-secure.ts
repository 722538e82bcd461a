// Steps of the general rule pack before anything is touched, as data. The maker’s service information comes before them.
import { exchanged, fittedKinds, modulesOf, step } from './general-pack-words.ts';
import type { StepTemplate } from './rule-pack.ts';

export const secureSteps: readonly StepTemplate[] = [
  step(
    {
      id: 'scan-before',
      stage: 'secure',
      scope: 'job',
      fits: modulesOf('any'),
      title: 'Scan every module and keep the result',
      detail: 'Before anything is unplugged. Write down the modules that do not answer as well.',
      routes: ['on-vehicle', 'pass-through'],
      typicalMinutes: 20,
      reason: 'Afterwards nobody can tell which codes were there before the work.',
    },
    { meets: ['codes-recorded'] },
  ),
  step(
    {
      id: 'compare-vins',
      stage: 'secure',
      scope: 'job',
      fits: modulesOf(fittedKinds, exchanged),
      title: 'Compare the VIN on the vehicle with the papers and with every module that tells one',
      detail:
        'Character by character. A module that tells another VIN came from another vehicle: find out before you go on.',
      routes: ['by-hand'],
      typicalMinutes: 10,
      reason: 'A module that takes a VIN usually keeps it for good, and codes are given for one VIN.',
    },
    { cautions: ['vin-permanent'], meets: ['vins-compared'] },
  ),
  step(
    {
      id: 'hv-refer-out',
      stage: 'secure',
      scope: 'module',
      fits: modulesOf(['high-voltage'], exchanged),
      title: 'Hand {module} over to people qualified for high voltage',
      detail: 'They isolate it, lock it off, prove it dead and exchange it. Nobody else works on it.',
      routes: ['sent-out'],
      typicalMinutes: null,
      reason: 'Orange cables carry a voltage that kills, and some of it stays after switching off.',
      source: 'HSE (Great Britain) guidance on electric and hybrid vehicles, as reprinted in the trade press; UN R100',
    },
    { cautions: ['high-voltage'], gates: ['codes-recorded'] },
  ),
  step(
    {
      id: 'hv-release',
      stage: 'secure',
      scope: 'module',
      fits: modulesOf(['high-voltage']),
      title: 'Get the qualified person’s written release for {module}',
      detail: 'Says whether it is isolated and proved dead, or finished and safe; with name and day.',
      routes: ['by-hand'],
      typicalMinutes: null,
      reason: 'Others may only work beside the system once somebody qualified has answered for it.',
      source: 'HSE (Great Britain) guidance on electric and hybrid vehicles, as reprinted in the trade press',
    },
    { cautions: ['high-voltage'], meets: ['high-voltage-safe'] },
  ),
  step(
    {
      id: 'open-gateway',
      stage: 'secure',
      scope: 'module',
      fits: modulesOf(['gateway'], ['kept']),
      title: 'Get access through {module}',
      detail: 'Write down who unlocked it and when. It may ask again after power was off.',
      routes: ['on-vehicle', 'pass-through'],
      typicalMinutes: 15,
      reason: 'Behind a secured gateway nothing can be cleared, coded or written without it.',
    },
    { cautions: ['anti-theft-code'], gates: ['ownership-proven', 'code-in-hand'] },
  ),
  step(
    {
      id: 'save-old',
      stage: 'secure',
      scope: 'module',
      fits: modulesOf(fittedKinds, exchanged),
      title: 'Read and save the data of the old {module}',
      detail:
        'VIN, software and part numbers, configuration, mileage where it holds one. If a route fails, go on to the next one; do not repeat it.',
      routes: ['on-vehicle', 'pass-through', 'bench', 'sent-out'],
      typicalMinutes: 30,
      reason: 'Once the old module has left the vehicle, what it knew may be gone.',
    },
    { cautions: ['keep-old-module', 'supply-voltage'], meets: ['old-module-saved'] },
  ),
  step(
    {
      id: 'check-used',
      stage: 'secure',
      scope: 'module',
      fits: modulesOf([...fittedKinds, 'keys'], ['used']),
      title: 'Find out whether the used {module} can be matched to this vehicle',
      detail: 'Same part number and software family, not locked to its old vehicle. Do it while it can still go back.',
      routes: ['by-hand', 'bench'],
      typicalMinutes: 20,
      reason: 'Some units lock themselves to their first vehicle for good.',
    },
    { gates: ['part-in-hand'], meets: ['used-module-fits'] },
  ),
];
