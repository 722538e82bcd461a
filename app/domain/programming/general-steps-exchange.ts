// Steps of the general rule pack while modules come out and go in, as data. The maker’s service information comes before them.
import { exchanged, fittedKinds, modulesOf, step } from './general-pack-words.ts';
import type { StepTemplate } from './rule-pack.ts';

export const exchangeSteps: readonly StepTemplate[] = [
  step(
    {
      id: 'lead-off',
      stage: 'exchange',
      scope: 'job',
      fits: modulesOf(fittedKinds, exchanged),
      title: 'Ignition off, note stored settings, negative battery lead off',
      detail: 'Before any module is unplugged. No memory keeper. A window or bonnet that needs power: open it first.',
      routes: ['by-hand'],
      typicalMinutes: 10,
      reason: 'Unplugging a module under power can damage it and set off what it controls.',
      source: 'makers’ service texts: negative lead off first',
    },
    { cautions: ['airbag-battery'], gates: ['codes-recorded', 'high-voltage-safe'], meets: ['negative-lead-off'] },
  ),
  step(
    {
      id: 'wait-airbag',
      stage: 'exchange',
      scope: 'job',
      fits: modulesOf(['airbag', 'steering-lock'], exchanged),
      title: 'Wait as long as the maker says before touching airbag parts',
      detail:
        'Write down the wait that the service information gives and when it began. Makers’ texts range from seconds to half an hour.',
      routes: ['by-hand'],
      typicalMinutes: 10,
      reason: 'The airbag module keeps a charge that can fire an airbag after the battery is off.',
      source: 'makers’ service texts; the length of the wait is each maker’s own',
    },
    { cautions: ['airbag-battery'], gates: ['negative-lead-off'], meets: ['airbag-wait-over'] },
  ),
  step(
    {
      id: 'take-out',
      stage: 'exchange',
      scope: 'module',
      fits: modulesOf(fittedKinds, exchanged),
      title: 'Take the old {module} out, label it and keep it',
      detail: 'Stock number and VIN on the label. It stays in the shop until the replacement is proven.',
      routes: ['by-hand'],
      typicalMinutes: 30,
      reason: 'It is the only way back if the replacement does not work.',
    },
    {
      cautions: ['keep-old-module', 'airbag-battery'],
      gates: ['negative-lead-off', 'airbag-wait-over', 'high-voltage-safe'],
    },
  ),
  step(
    {
      id: 'have-repaired',
      stage: 'exchange',
      scope: 'module',
      fits: modulesOf(fittedKinds, ['repaired']),
      title: 'Send {module} to be repaired and have it back',
      detail: 'With a written description of the fault. Ask that its data is left as it is.',
      routes: ['sent-out'],
      typicalMinutes: null,
      reason: 'It can only be fitted once it is back.',
    },
    { meets: ['part-in-hand'] },
  ),
  step(
    {
      id: 'clone-data',
      stage: 'exchange',
      scope: 'module',
      fits: modulesOf(fittedKinds, ['cloned']),
      title: 'Copy the saved data of the old {module} onto the replacement',
      detail: 'Compare part and software numbers first. Read the copy back and compare it.',
      routes: ['bench', 'sent-out'],
      typicalMinutes: 40,
      reason: 'A copy answers like the old module, so nothing has to be matched afterwards.',
    },
    {
      cannotBeUndone: true,
      cautions: ['never-interrupt', 'supply-voltage'],
      gates: ['old-module-saved', 'part-in-hand', 'vins-compared'],
    },
  ),
  step(
    {
      id: 'fit',
      stage: 'exchange',
      scope: 'module',
      fits: modulesOf(fittedKinds, exchanged),
      title: 'Fit {module}',
      detail: 'Compare the part number and the plugs with the old one before it goes in.',
      routes: ['by-hand'],
      typicalMinutes: 30,
      reason: 'What is known of the old module must be safe before the new one takes its place.',
    },
    {
      cautions: ['airbag-battery'],
      gates: [
        'part-in-hand',
        'old-module-saved',
        'used-module-fits',
        'negative-lead-off',
        'airbag-wait-over',
        'high-voltage-safe',
      ],
    },
  ),
  step(
    {
      id: 'lead-on',
      stage: 'exchange',
      scope: 'job',
      fits: modulesOf(fittedKinds, exchanged),
      title: 'Negative battery lead back on',
      detail: 'Every plug in its place, ignition off, nobody inside the vehicle.',
      routes: ['by-hand'],
      typicalMinutes: 10,
      reason: 'A plug left open sets codes, and an airbag that is wrongly connected may fire now.',
    },
    { cautions: ['airbag-battery'], ends: ['negative-lead-off'] },
  ),
  step(
    {
      id: 'look-for-locks',
      stage: 'exchange',
      scope: 'job',
      fits: modulesOf(fittedKinds, exchanged),
      title: 'Look for units that locked while power was off',
      detail: 'Radio first: one that lost power may ask for its own code. Open a code request for each unit that asks.',
      routes: ['by-hand'],
      typicalMinutes: 5,
      reason: 'A second lock found at the end costs days; found now, its code can be asked for meanwhile.',
    },
    { cautions: ['anti-theft-code'] },
  ),
];
